// Made from the list of calculators. Do not edit.
import { call } from "./call.js";

export const tape = (input, bench) => call("tape", input, bench);
export const lumber = (input, bench) => call("lumber", input, bench);
export const moisture = (input, bench) => call("moisture", input, bench);
export const resaw_rip = (input, bench) => call("resaw_rip", input, bench);
export const crosscut = (input, bench) => call("crosscut", input, bench);
export const frame = (input, bench) => call("frame", input, bench);
export const dowel = (input, bench) => call("dowel", input, bench);
export const screws = (input, bench) => call("screws", input, bench);
export const spacing = (input, bench) => call("spacing", input, bench);
export const top = (input, bench) => call("top", input, bench);
export const curve = (input, bench) => call("curve", input, bench);
export const angles = (input, bench) => call("angles", input, bench);
export const strength = (input, bench) => call("strength", input, bench);
export const finish = (input, bench) => call("finish", input, bench);
