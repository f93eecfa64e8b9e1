// Service worker: one cache holds exactly one build, installed whole or not at all.
// `cargo xtask precache DIR` fills the two blanks below from the files of that build.
const VERSION = "";
const FILES = [];

const SCOPE = self.registration.scope;
// Two copies of the app on one origin share its caches: a copy knows its own by its scope.
const OURS = `reckoner-build ${SCOPE} `;
const CACHE = OURS + VERSION;
// Builds of before had no scope in the name of their cache; ours holds our page.
const OURS_BEFORE = "reckoner-build-";
const SHELL = new URL("./", SCOPE).href;
// Published beside the page, but no part of it: the package for other people's scripts.
const APART = new URL("./js/", SCOPE).href;
// A window that has not answered for so long (ms) is asleep, or cannot.
const PATIENCE = 3000;

// The browser checks each file against its digest. A sign-in page of some shop's wireless in
// place of a file, or half a new release, fails the whole install; the next visit tries again.
// Names with a hash in them may come from the browser's own cache, which has them already.
const request = ([path, integrity, hashed]) =>
  new Request(path, { integrity, cache: hashed ? "default" : "reload", redirect: "error" });

self.addEventListener("install", (event) => {
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(FILES.map(request))));
});

self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("message", (event) => {
  // The new build waits until a person says so.
  if (event.data === "take-over") self.skipWaiting();
  // Every window asks when it starts and when it is looked at again.
  if (event.data === "check") {
    event.waitUntil((async () => {
      event.ports[0].postMessage({ missing: await mend() });
      await sweep();
    })());
  }
});

/** Puts back what was lost from the cache; the number of files that are still not there. */
async function mend() {
  const cache = await caches.open(CACHE);
  const kept = new Set((await cache.keys()).map((known) => known.url));
  const lost = FILES.filter(([path]) => !kept.has(new URL(path, SCOPE).href));
  const tried = await Promise.allSettled(
    lost.map((file) => cache.add(new Request(request(file), { cache: "reload" }))));
  return tried.filter(({ status }) => status === "rejected").length;
}

/** Deletes older builds, except what a window of one may still ask for. */
async function sweep() {
  const isChanging = () => self.registration.installing || self.registration.waiting;
  if (isChanging()) return;
  const older = [];
  for (const name of await caches.keys()) {
    const cache = await caches.open(name);
    const isOurs = name.startsWith(OURS)
      || (name.startsWith(OURS_BEFORE) && await cache.match(SHELL));
    if (isOurs && name !== CACHE) older.push([name, cache]);
  }
  if (older.length === 0) return;
  const windows = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  const answers = await Promise.all(windows
    .filter(({ url }) => url.startsWith(SCOPE) && !url.startsWith(APART))
    .map(filesOf));
  // A window that did not answer may need any of them.
  if (answers.includes(null) || isChanging()) return;
  const current = await caches.open(CACHE);
  const needed = [];
  for (const url of new Set(answers.flat())) if (!await current.match(url)) needed.push(url);
  for (const [name, cache] of older) {
    const held = await Promise.all(needed.map((url) => cache.match(url)));
    if (!held.some(Boolean)) await caches.delete(name);
  }
}

/** The addresses of the files that a window is made of; null if it does not say. */
const filesOf = (client) => new Promise((tell) => {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = ({ data }) => tell(data);
  setTimeout(() => tell(null), PATIENCE);
  client.postMessage("which-files", [port2]);
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin) return;
  if (url.href.startsWith(APART)) return;
  event.respondWith((async () => {
    const cache = await caches.open(CACHE);
    // Every page is the shell; its address, query and fragment stay as they are.
    if (request.mode === "navigate") return (await cache.match(SHELL)) ?? fetch(request);
    // What is not of this build is of an older one, whose window goes on.
    return (await cache.match(request)) ?? (await caches.match(request)) ?? fetch(request);
  })());
});
