// The package as a program for Node uses it: through its name and its exports, with whatever a caller may hand in.
//
//   cargo xtask test package
import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import { copyFileSync, existsSync, mkdtempSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";

const folder = process.env.RECKONER_PACKAGE;
const project = mkdtempSync(join(tmpdir(), "reckoner-"));
mkdirSync(join(project, "node_modules"));
symlinkSync(folder, join(project, "node_modules", "sawdust-reckoner"));
after(() => rmSync(project, { recursive: true }));

/** Runs a program that has the package, and gives what it prints. */
function printed(program) {
  const file = join(project, "program.mjs");
  writeFileSync(file, program);
  return execFileSync(process.execPath, [file], { encoding: "utf8" });
}

const reckoner = await import(join(folder, "node.js"));
const { default: init, tape } = reckoner;

test("before init a call says what to do", async (t) => {
  assert.throws(() => tape({ strip: "3" }), { name: "Error", message: /tape was called before init.*await init\(\)/ });
  await init();
  assert.equal(tape({ strip: "3" }).ok, true);
  await t.test("and init may be called again", () => init());
});

test("the example of the readme prints what the readme says", () => {
  const readme = readFileSync(join(folder, "README.md"), "utf8");
  const block = (kind) => readme.split("```" + kind + "\n")[1].split("```")[0];
  assert.equal(printed(block("js")), block("text"));
});

test("every file that the package names is in it, the licence and the notices too", () => {
  const { files, exports } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const named = [...files.filter((name) => !name.includes("*")), ...Object.values(exports["."]), exports["./reckoner_js_bg.wasm"]];
  for (const name of named) assert.ok(existsSync(join(folder, name)), name);
  assert.ok(files.includes("notices.txt") && files.includes("LICENSE"));
  const licence = readFileSync(join(folder, "LICENSE"), "utf8");
  assert.match(licence, /Permission is hereby granted/);
  assert.match(licence, /Apache License/);
  const notices = readFileSync(join(folder, "notices.txt"), "utf8");
  // The program is made with these, and each under a licence whose text must go with it.
  for (const crate of ["wasm-bindgen", "js-sys", "libm"]) assert.match(notices, new RegExp(`\\b${crate} \\d`), crate);
  assert.match(notices, /Permission is hereby granted/);
});

test("init that failed can be tried again, and initSync takes bytes", () => {
  const program = `
    import { readFileSync } from "node:fs";
    import init, { initSync, tape } from "sawdust-reckoner";
    await init(new Uint8Array([1, 2, 3])).catch(() => console.log("failed"));
    await init();
    console.log(tape({ strip: "3" }).ok);
    initSync(readFileSync(new URL(import.meta.resolve("sawdust-reckoner/reckoner_js_bg.wasm"))));
    console.log(tape({ strip: "3" }).ok);`;
  assert.equal(printed(program), "failed\ntrue\ntrue\n");
});

test("a browser and a bundler get modules without anything of Node", () => {
  const { exports } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  assert.equal(Object.keys(exports["."]).at(-1), "default");
  const read = new Set();
  const follow = (name) => {
    if (read.has(name)) return;
    read.add(name);
    const text = readFileSync(join(folder, name), "utf8");
    for (const [, from] of text.matchAll(/(?:from|import)\s+["']([^"']+)["']/g)) {
      assert.match(from, /^\.\//, `${name} imports ${from}`);
      follow(from.slice(2));
    }
  };
  follow(exports["."].default.slice(2));
  assert.ok(read.has("reckoner_js.js"));
  const bindings = readFileSync(join(folder, "reckoner_js.js"), "utf8");
  assert.match(bindings, /new URL\('reckoner_js_bg\.wasm', import\.meta\.url\)/);
});

test("a bundler packs the example for a browser and for Node, with the program put beside it", () => {
  const readme = readFileSync(join(folder, "README.md"), "utf8");
  const block = (kind) => readme.split("```" + kind + "\n")[1].split("```")[0];
  writeFileSync(join(project, "example.mjs"), block("js"));
  const program = "reckoner_js_bg.wasm";
  copyFileSync(join(folder, program), join(project, program));
  for (const platform of ["browser", "node"]) {
    const packed = join(project, `${platform}.mjs`);
    const words = ["--bundle", "--format=esm", `--platform=${platform}`, `--outfile=${packed}`, "--log-level=warning"];
    execFileSync(process.execPath, [process.env.RECKONER_BUNDLER, "example.mjs", ...words], { cwd: project });
    assert.doesNotMatch(readFileSync(packed, "utf8"), /from\s+["']sawdust-reckoner/);
    // Node fetches no address of a file, as a browser does of a server: what is fetched is read from the disk.
    const fetched = `
      import { readFile } from "node:fs/promises";
      globalThis.fetch = async (address) => new Response(await readFile(address), { headers: { "content-type": "application/wasm" } });
      await import("./browser.mjs");`;
    assert.equal(printed(platform === "node" ? 'import "./node.mjs"' : fetched), block("text"), platform);
  }
});

test("the types need no browser, and tell what is no code, no note and no field", () => {
  copyFileSync(new URL("typed.mts", import.meta.url), join(project, "typed.mts"));
  const compilerOptions = { strict: true, noEmit: true, target: "es2022", lib: ["es2022"], types: [], module: "nodenext" };
  writeFileSync(join(project, "tsconfig.json"), JSON.stringify({ compilerOptions, files: ["typed.mts"] }));
  const { status, stdout } = spawnSync(process.execPath, [process.env.RECKONER_TYPESCRIPT, "--project", project], { encoding: "utf8" });
  assert.equal(stdout, "");
  assert.equal(status, 0);
});

/** An object with a getter that throws. */
const throwing = (name) => Object.defineProperty({}, name, { enumerable: true, get() { throw new TypeError("no"); } });
const inItself = [];
inItself.push(inItself);
const around = { strip: "3" };
around.around = around;
let levels = [];
for (let level = 0; level < 8000; level++) levels = [levels];
let objects = {};
for (let level = 0; level < 8000; level++) objects = { strip: objects };
const gone = () => {
  const { proxy, revoke } = Proxy.revocable([], {});
  revoke();
  return proxy;
};
const hostile = new Proxy({}, { ownKeys() { throw new Error("no"); } });
const ofNames = (count) => Object.fromEntries(Array.from({ length: count }, (_, n) => [`name${n}`, 1]));

const STRANGE = [
  ["a list that holds itself", { strip: inItself }, "strip", "wrong-type"],
  ["an object that holds itself", around, "around", "bad-call"],
  ["8,000 lists in lists", { strip: levels }, "strip", "wrong-type"],
  ["8,000 objects in objects", objects, "strip", "wrong-type"],
  ["8,000 brackets", { strip: "(".repeat(8000) + "3" + ")".repeat(8000) }, "strip", "cannot-read"],
  ["a list of a million", { strip: new Array(1e6).fill("3") }, "strip", "too-much"],
  ["a list of a million holes", { strip: new Array(1e6) }, "strip", "too-much"],
  ["a text of a million", { strip: "3".repeat(1e6) }, "strip", "too-much"],
  ["texts that are too much together", { strip: new Array(900).fill("3".repeat(400)) }, "strip", "too-much"],
  ["ten thousand names", ofNames(1e4), "", "too-much"],
  ["a name of a million", { ["x".repeat(1e6)]: 1 }, "x".repeat(100) + "…", "bad-call"],
  ["a getter that throws", throwing("strip"), "strip", "unreadable"],
  ["a list with a getter that throws", { strip: throwing(0) }, "strip", "wrong-type"],
  ["a list that is gone", { strip: gone() }, "strip", "unreadable"],
  ["an object that is gone", gone(), "", "unreadable"],
  ["an object that does not say its names", hostile, "", "unreadable"],
  ["a number that is none", { strip: NaN }, "strip", "wrong-type"],
  ["a number without end", { strip: Infinity }, "strip", "wrong-type"],
  ["a large whole number", { strip: 5n }, "strip", "wrong-type"],
  ["a symbol", { strip: Symbol("3") }, "strip", "wrong-type"],
  ["a function", { strip: () => "3" }, "strip", "wrong-type"],
  ["a date", { strip: new Date(0) }, "strip", "wrong-type"],
  ["nothing", { strip: undefined }, "strip", "wrong-type"],
  ["half a letter", { strip: "\ud800" }, "strip", "cannot-read"],
  ["a name of the language", JSON.parse('{"__proto__":"3"}'), "__proto__", "bad-call"],
  ["null as the unit", { strip: "3", unit: null }, "unit", "wrong-type"],
  ["null for the whole", null, "", "wrong-type"],
  ["a text for the whole", "3", "", "bad-call"],
  ["a list for the whole", ["3"], "", "bad-call"],
  ["a function for the whole", () => {}, "", "bad-call"],
];

for (const [what, input, field, code] of STRANGE) {
  test(`${what} is a problem, and the next call works`, async () => {
    await init();
    const asked = tape(input);
    assert.equal(asked.ok, false);
    assert.deepEqual([asked.problems[0].field, asked.problems[0].code], [field, code]);
    assert.equal(tape({ strip: "3" }, input).ok, false, "as a bench");
    assert.equal(tape({ strip: "3 3/8" }).results.read.exact, "27/8");
  });
}

/** Every field of every function, from the types. */
const types = readFileSync(join(folder, "index.d.ts"), "utf8");
const functions = [...types.matchAll(/^export function (\w+)\(input\?: (\w+)/gm)].map(([, name, input]) => {
  const body = types.split(`export interface ${input} {\n`)[1].split("\n}")[0];
  return [name, [...body.matchAll(/^ {2}(\w+)\?: /gm)].map(([, field]) => field)];
});

test("the largest call that is taken is answered by every function in every field", async () => {
  await init();
  assert.equal(functions.length, 14);
  const large = ["4 @ 3\n".repeat(3300), "(".repeat(20000), new Array(1000).fill("3 @ 1 1/2")];
  for (const [name, fields] of functions) {
    for (const field of fields) {
      for (const text of large) {
        const said = reckoner[name]({ [field]: text });
        assert.equal(said.ok, false, `${name} ${field}`);
        assert.notEqual(said.problems[0].code, "failed", `${name} ${field}`);
      }
    }
  }
  assert.equal(tape({ strip: "3 3/8" }).results.read.exact, "27/8");
});
