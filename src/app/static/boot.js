// Starts the app, keeps it up to date, and shows what was typed if it cannot go on.
// Nothing here needs the app's wasm: a release that does not start can still be replaced.
//
// The app tells this file three things, as events on `window`:
//   reckoner-started              the first page is on the screen
//   reckoner-complete             the parts for all other pages were fetched, as far as that was possible
//   reckoner-stopped (detail)     it panicked; the detail is the reason in words
// and finds here what wasm cannot do itself: window.reckonerLoad, which loads a module by its address.
// This file tells the app whether the page opens without a signal, in `data-offline` of the page:
//   none, getting, failed (the next visit tries again), missing (how many: `data-missing`) or ready;
//   absent until it is known
// and says each change with the event reckoner-offline.

const STORED = "reckoner.";
// Which jobs were saved as a file, where somebody was last, what was read there and answered: nothing that was typed.
const MARKS = ["saved.", "field.", "read.", "answer."].map((mark) => STORED + mark);
const KEPT = "reckoner-kept.";
// When it was cleared, in milliseconds.
const CLEARED = "reckoner-cleared";
const find = (id) => document.getElementById(id);

// The theme of the settings, before the app is there to put it on.
try {
  const theme = new URLSearchParams(localStorage.getItem(`${STORED}settings`) ?? "").get("theme");
  if (/^[a-z]{1,12}$/.test(theme ?? "")) document.documentElement.dataset.theme = theme;
} catch { /* Storage is forbidden: the theme of the system will do. */ }

// The first page stands in the shell itself; of any other page, only that it is on its way.
document.documentElement.dataset.first = location.hash.length > 2 ? "other" : "home";

let started = false;
let stopped = false;

/** Old browsers have no WebAssembly; one that locks itself down may take it away or refuse to run it. */
const runsPrograms = (() => {
  try {
    return Boolean(new WebAssembly.Module(Uint8Array.of(0, 97, 115, 109, 1, 0, 0, 0)));
  } catch {
    return false;
  }
})();

/** The addresses of what this window is made of; all else is loaded by one of these. */
function ownFiles() {
  const made = [...document.querySelectorAll("link[href], script[src]")];
  return made.map((element) => element.href || element.src);
}

// A service worker asks before it deletes an older build. It is told even while the app starts.
navigator.serviceWorker?.addEventListener("message", ({ data, ports }) => {
  if (data === "which-files") ports[0]?.postMessage(ownFiles());
});

// ---- Recovery ---------------------------------------------------------------------------------

/** Lines "name: text" for any stored value; what is not JSON is shown as it is. */
function inWords(text) {
  const lines = [];
  const walk = (value, name) => {
    if (value !== null && typeof value === "object") {
      for (const [key, inner] of Object.entries(value)) walk(inner, name ? `${name} ${key}` : key);
    } else {
      lines.push(name ? `${name}: ${value}` : String(value));
    }
  };
  try {
    walk(JSON.parse(text), "");
  } catch {
    return text;
  }
  return lines.join("\n");
}

/** What the link says and what is stored, as [heading, text] pairs. */
function whatWasTyped() {
  const typed = [];
  const [place, query] = location.hash.replace(/^#\/?/, "").split("?");
  if (query) {
    const fields = [...new URLSearchParams(query)].map(([name, text]) => `${name}: ${text}`);
    typed.push([`In the address, ${place}`, fields.join("\n")]);
  }
  for (const key of storedKeys()) {
    typed.push([key.slice(STORED.length), inWords(localStorage.getItem(key))]);
  }
  return typed;
}

/** Empty when the browser forbids storage. */
function storedKeys() {
  try {
    const isTyped = (key) => key.startsWith(STORED) && !MARKS.some((mark) => key.startsWith(mark));
    return Object.keys(localStorage).filter(isTyped).sort();
  } catch {
    return [];
  }
}

/** What this window keeps for itself. */
function ownKeys() {
  try {
    return Object.keys(sessionStorage).filter((key) => key.startsWith(STORED));
  } catch {
    return [];
  }
}

function recover(reason) {
  if (stopped) return;
  stopped = true;
  find("app").hidden = true;
  find("offline-ready").hidden = true;
  const list = find("recovery-typed");
  for (const [heading, text] of whatWasTyped()) {
    const title = document.createElement("h3");
    title.textContent = heading;
    const body = document.createElement("pre");
    body.textContent = text;
    list.append(title, body);
  }
  if (!list.hasChildNodes()) list.textContent = "Nothing was typed yet.";
  if (!runsPrograms) {
    find("recovery-title").textContent = "This browser cannot run the reckoner";
    find("recovery-words").textContent = "The reckoner is a WebAssembly program, and this browser runs none. "
      + "Update the browser, or open this page in another one. On an iPhone, iPad or Mac in Lockdown Mode, "
      + "switch Lockdown Mode off for this website alone, in the browser's menu for the page. "
      + "What you typed before is below, and it is still stored on this device.";
    // It is not what was typed that stands in the way.
    find("recovery-fresh").remove();
  }
  find("recovery-reason").textContent = String(reason?.stack ?? reason);
  find("recovery").hidden = false;
  find("recovery").querySelector("h1").focus();
  navigator.serviceWorker?.getRegistration().then((known) => known?.update()).catch(() => {});
}

// What the browser has kept of a file that was spoiled on its way would stop the next start as well.
find("recovery-again").addEventListener("click", async () => {
  const patience = new Promise((done) => { setTimeout(done, 3000); });
  const fresh = ownFiles().map((address) => fetch(address, { cache: "reload" }));
  await Promise.race([Promise.allSettled(fresh), patience]);
  location.reload();
});

find("recovery-fresh").addEventListener("click", () => {
  const when = new Date().toISOString();
  try {
    for (const key of storedKeys()) {
      localStorage.setItem(`${KEPT}${when}.${key}`, localStorage.getItem(key));
    }
    for (const key of ownKeys()) {
      localStorage.setItem(`${KEPT}${when}.window.${key}`, sessionStorage.getItem(key));
    }
    if (location.hash) localStorage.setItem(`${KEPT}${when}.address`, location.hash);
    // The database has it too: from there it does not come back.
    localStorage.setItem(CLEARED, String(Date.parse(when)));
  } catch {
    const trouble = find("recovery-trouble");
    trouble.textContent = "There is no room to keep a copy, so nothing was cleared. Write down what you need first.";
    trouble.hidden = false;
    return;
  }
  for (const key of storedKeys()) localStorage.removeItem(key);
  for (const key of ownKeys()) sessionStorage.removeItem(key);
  history.replaceState(null, "", location.pathname + location.search);
  location.reload();
});

addEventListener("reckoner-started", () => {
  started = true;
  performance.mark("reckoner-started");
  document.documentElement.dataset.app = "started";
});
addEventListener("reckoner-stopped", (event) => recover(event.detail));
// Once running, only a fault inside the wasm means that the app cannot go on.
const isFatal = (reason) => !started || reason instanceof WebAssembly.RuntimeError;
addEventListener("error", (event) => { if (isFatal(event.error)) recover(event.error ?? event.message); });
addEventListener("unhandledrejection", (event) => { if (isFatal(event.reason)) recover(event.reason); });

// ---- Offline and updates ----------------------------------------------------------------------

/** Says what is so about use without a signal: to the app, and where it matters to the reader. */
function tellOffline(state, missing = 0) {
  const { dataset } = document.documentElement;
  // It is news only to those who were told otherwise, or nothing, before.
  const isNews = dataset.offline === "getting" || dataset.offline === "missing";
  dataset.offline = state;
  dataset.missing = missing;
  dispatchEvent(new CustomEvent("reckoner-offline"));
  const lost = missing === 1 ? "1 file is not kept yet" : `${missing} files are not kept yet`;
  const line = find("offline-ready");
  if (state === "missing" && stopped && !started) {
    find("recovery-words").textContent = `${lost} on this device, and the reckoner cannot start without. `
      + "Open this page once with a signal. What you typed is below, and it is still stored on this device.";
  }
  if (state === "missing") line.textContent = `${lost}; open this page once with a signal.`;
  if (state === "ready" && isNews) line.textContent = "Ready to work without a signal.";
  line.hidden = stopped || !(state === "missing" || (state === "ready" && (isNews || !line.hidden)));
}

async function keepUpToDate() {
  const { serviceWorker } = navigator;
  // Absent where the page is not served over https or from this machine itself, and in some private windows.
  if (!serviceWorker) throw new Error("no service worker here");
  let hasWorker = Boolean(serviceWorker.controller);
  let asked = false;
  if (!hasWorker) tellOffline("getting");

  const offer = () => {
    find("update").hidden = false;
  };
  const watch = (worker) => worker?.addEventListener("statechange", () => {
    if (worker.state === "installed" && serviceWorker.controller) offer();
    // A file of the first one did not come.
    if (worker.state === "redundant" && !registration.active) tellOffline("failed");
  });

  serviceWorker.addEventListener("controllerchange", () => {
    if (asked) {
      location.reload();
    } else if (hasWorker) {
      // Another window took the new version. This one goes on: the worker keeps what it is made of.
      find("update-words").textContent = "A new version was started in another window. Load this one again when it suits you.";
      offer();
    }
    hasWorker = true;
  });

  const registration = await serviceWorker.register("./sw.js", { updateViaCache: "none" });
  if (registration.waiting && serviceWorker.controller) offer();
  watch(registration.installing);
  if (!registration.installing && !registration.waiting && !registration.active) tellOffline("failed");
  registration.addEventListener("updatefound", () => watch(registration.installing));

  find("update-later").addEventListener("click", () => { find("update").hidden = true; });
  find("update-take").addEventListener("click", () => {
    asked = true;
    if (registration.waiting) registration.waiting.postMessage("take-over");
    else location.reload();
  });

  /** The worker looks at every file and fetches what is missing. */
  const check = () => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data: { missing } }) => tellOffline(missing ? "missing" : "ready", missing);
    registration.active?.postMessage("check", [port2]);
  };

  await serviceWorker.ready;
  check();
  // An installed app may stay open for days.
  addEventListener("visibilitychange", () => {
    if (document.visibilityState !== "visible") return;
    registration.update().catch(() => {});
    check();
  });
}

// ---- Start ------------------------------------------------------------------------------------

window.reckonerLoad = (address) => import(address);

// The pages have the line to themselves first; but whatever becomes of them, a new version must be able to come.
const LONGEST = 10_000;
const complete = new Promise((tell) => {
  addEventListener("reckoner-complete", tell, { once: true });
  setTimeout(tell, LONGEST);
});

try {
  if (!runsPrograms) throw new Error("no WebAssembly here");
  const wasm = document.querySelector("link[rel=preload][as=fetch]").href;
  const { default: start } = await import(document.querySelector("link[rel=modulepreload]").href);
  await start({ module_or_path: wasm });
} catch (reason) {
  recover(reason);
}

if (!stopped) await complete;
// A browser that cannot run the app has no use for its files.
if (runsPrograms) {
  keepUpToDate().catch((reason) => {
    const { serviceWorker } = navigator;
    // One that is there already has the files, and the next visit asks it.
    if (!serviceWorker?.controller) tellOffline(serviceWorker ? "failed" : "none");
    console.info("offline use is not available:", reason);
  });
}
