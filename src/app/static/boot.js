// Starts the app, keeps it up to date, and shows what was typed if it cannot go on.
// Nothing here needs the app's wasm: a release that does not start can still be replaced.
//
// The app tells this file three things, as events on `window`:
//   reckoner-started              the first page is on the screen
//   reckoner-complete             the parts for all other pages were fetched, as far as that was possible
//   reckoner-stopped (detail)     it panicked; the detail is the reason in words
// and finds here what wasm cannot do itself: window.reckonerLoad, which loads a module by its address.

const STORED = "reckoner.";
const KEPT = "reckoner-kept.";
const find = (id) => document.getElementById(id);

// The theme of the settings, before the app is there to put it on.
try {
  const theme = new URLSearchParams(localStorage.getItem(`${STORED}settings`) ?? "").get("theme");
  if (/^[a-z]{1,12}$/.test(theme ?? "")) document.documentElement.dataset.theme = theme;
} catch { /* Storage is forbidden: the theme of the system will do. */ }

let started = false;
let stopped = false;

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
    return Object.keys(localStorage).filter((key) => key.startsWith(STORED)).sort();
  } catch {
    return [];
  }
}

function recover(reason) {
  if (stopped) return;
  stopped = true;
  find("app").hidden = true;
  const list = find("recovery-typed");
  for (const [heading, text] of whatWasTyped()) {
    const title = document.createElement("h3");
    title.textContent = heading;
    const body = document.createElement("pre");
    body.textContent = text;
    list.append(title, body);
  }
  if (!list.hasChildNodes()) list.textContent = "Nothing was typed yet.";
  find("recovery-reason").textContent = String(reason?.stack ?? reason);
  find("recovery").hidden = false;
  find("recovery").querySelector("h1").focus();
  navigator.serviceWorker?.getRegistration().then((known) => known?.update()).catch(() => {});
}

find("recovery-again").addEventListener("click", () => location.reload());

find("recovery-fresh").addEventListener("click", () => {
  const when = new Date().toISOString();
  try {
    for (const key of storedKeys()) {
      localStorage.setItem(`${KEPT}${when}.${key}`, localStorage.getItem(key));
    }
    if (location.hash) localStorage.setItem(`${KEPT}${when}.address`, location.hash);
  } catch {
    const trouble = find("recovery-trouble");
    trouble.textContent = "There is no room to keep a copy, so nothing was cleared. Write down what you need first.";
    trouble.hidden = false;
    return;
  }
  for (const key of storedKeys()) localStorage.removeItem(key);
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

async function keepUpToDate() {
  const { serviceWorker } = navigator;
  // Absent where the page is not served over https or from this machine itself.
  if (!serviceWorker) return;
  const isFirstVisit = !serviceWorker.controller;
  let hasWorker = !isFirstVisit;
  let asked = false;

  const offer = () => {
    find("update").hidden = false;
  };
  const watch = (worker) => worker?.addEventListener("statechange", () => {
    if (worker.state === "installed" && serviceWorker.controller) offer();
  });

  serviceWorker.addEventListener("controllerchange", () => {
    if (asked) {
      location.reload();
    } else if (hasWorker) {
      // Another window took the new version. This one goes on with what it has loaded.
      find("update-words").textContent = "A new version was started in another window. Load this one again when it suits you.";
      offer();
    }
    hasWorker = true;
  });

  const registration = await serviceWorker.register("./sw.js", { updateViaCache: "none" });
  if (registration.waiting && serviceWorker.controller) offer();
  watch(registration.installing);
  registration.addEventListener("updatefound", () => watch(registration.installing));

  find("update-later").addEventListener("click", () => { find("update").hidden = true; });
  find("update-take").addEventListener("click", () => {
    asked = true;
    if (registration.waiting) registration.waiting.postMessage("take-over");
    else location.reload();
  });

  await serviceWorker.ready;
  find("offline-ready").hidden = !isFirstVisit;
  document.documentElement.dataset.offline = "ready";
  // An installed app may stay open for days.
  addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") registration.update().catch(() => {});
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
  const wasm = document.querySelector("link[rel=preload][as=fetch]").href;
  const { default: start } = await import(document.querySelector("link[rel=modulepreload]").href);
  await start({ module_or_path: wasm });
} catch (reason) {
  recover(reason);
}

if (!stopped) await complete;
keepUpToDate().catch((reason) => console.warn("offline use is not available:", reason));
