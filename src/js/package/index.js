// The package in a browser or behind a bundler: the program lies beside this file and is fetched by its address.
import load from "./reckoner_js.js";
import { begun } from "./call.js";

export * from "./functions.js";
export { initSync } from "./call.js";

/** Loads the program: from its place beside this file, or from what is handed in. */
export default function init(program) {
  return begun(() => load(program === undefined ? undefined : { module_or_path: program }));
}
