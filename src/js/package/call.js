// How a function is called: what the caller wrote is copied into plain values first, so that nothing of it runs
// inside the program, and whatever is wrong with it comes back as a problem.
import * as program from "./reckoner_js.js";

/** The most that a call may hold. */
const MOST = { names: 200, name: 100, items: 1000, text: 20000 };

let isReady = false;
let beginning;

/** Loads the program once, however often it is asked to; what failed can be tried again. */
export function begun(load) {
  beginning ??= load().then(
    () => {
      isReady = true;
    },
    (error) => {
      beginning = undefined;
      throw error;
    },
  );
  return beginning;
}

/** Loads the program from its bytes or its compiled module, at once. */
export function initSync(bytesOrModule) {
  if (!isReady) {
    program.initSync({ module: bytesOrModule });
    isReady = true;
    beginning = Promise.resolve();
  }
}

/** What the program's function of this name answers. */
export function call(name, input, bench) {
  if (!isReady) {
    throw new Error(`${name} was called before init: write “await init()” first.`);
  }
  try {
    return program[name](plain(input), plain(bench));
  } catch (error) {
    const trouble = error instanceof Trouble ? error : new Trouble("", "failed", "This could not be worked out.");
    const { field, code, message } = trouble;
    return { ok: false, problems: [{ field, code, message, at: null, way_out: null }] };
  }
}

class Trouble extends Error {
  constructor(field, code, message) {
    super(message);
    this.field = field;
    this.code = code;
  }
}

/** Runs what may run the caller's own code. */
function careful(field, read) {
  try {
    return read();
  } catch (error) {
    if (error instanceof Trouble) throw error;
    throw new Trouble(field, "unreadable", "This cannot be read: reading it throws.");
  }
}

/** A copy of a plain object of which nothing is deeper than a list. */
function plain(given) {
  if (given === undefined) return undefined;
  if (given === null) throw new Trouble("", "wrong-type", "This takes an object with the fields by name, not null.");
  const isList = careful("", () => Array.isArray(given));
  if (typeof given !== "object" || isList) {
    throw new Trouble("", "bad-call", "This takes an object with the fields by name.");
  }
  const names = careful("", () => Object.keys(given));
  if (names.length > MOST.names) {
    throw new Trouble("", "too-much", `A call has at most ${MOST.names} names.`);
  }
  let left = MOST.text;
  const counted = (field, text) => {
    left -= text.length;
    if (left < 0) throw new Trouble(field, "too-much", `A call has at most ${MOST.text} letters.`);
    return text;
  };
  return Object.fromEntries(
    names.map((name) => {
      if (name.length > MOST.name) {
        throw new Trouble(`${name.slice(0, MOST.name)}…`, "bad-call", "There is no field with so long a name.");
      }
      return [name, careful(name, () => one(name, given[name], counted))];
    }),
  );
}

/** A value of a field: a text, a number, yes or no, or a list of these. */
function one(name, value, counted) {
  if (!Array.isArray(value)) return item(name, value, counted);
  const { length } = value;
  if (!(length <= MOST.items)) {
    throw new Trouble(name, "too-much", `A list has at most ${MOST.items} items.`);
  }
  return Array.from({ length }, (_, place) => item(name, value[place], counted));
}

/** A value that is no list; whatever no field takes becomes an empty object, which the program refuses by name. */
function item(name, value, counted) {
  switch (typeof value) {
    case "string":
      return counted(name, value);
    case "number":
    case "boolean":
      return value;
    default:
      return value === undefined || value === null ? null : {};
  }
}
