// The package in Node, which cannot fetch the address of a file: the program is read from the disk.
import { readFile } from "node:fs/promises";
import load from "./reckoner_js.js";
import { begun } from "./call.js";

export * from "./functions.js";
export { initSync } from "./call.js";

/** Loads the program: from its place beside this file, or from what is handed in. */
export default function init(program) {
  return begun(async () => {
    const beside = () => readFile(new URL("reckoner_js_bg.wasm", import.meta.url));
    await load({ module_or_path: program ?? (await beside()) });
  });
}
