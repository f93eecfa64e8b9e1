// Service worker: one cache holds exactly one build, whole or not at all.
// `cargo xtask precache DIR` fills the two blanks below from the files of that build.
const VERSION = "";
const FILES = [];

const OURS = "reckoner-build-";
const CACHE = OURS + VERSION;
const SHELL = new URL("./", self.registration.scope).href;
// Published beside the page, but no part of it: the package for other people's scripts.
const APART = new URL("./js/", self.registration.scope).href;

// The browser checks each file against its digest. A sign-in page of some shop's wireless in
// place of a file, or half a new release, fails the whole install; the next visit tries again.
// Names with a hash in them may come from the browser's own cache, which has them already.
self.addEventListener("install", (event) => {
  const requests = FILES.map(([path, integrity, hashed]) =>
    new Request(path, { integrity, cache: hashed ? "default" : "reload", redirect: "error" }));
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(requests)));
});

self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    for (const name of await caches.keys()) {
      if (name.startsWith(OURS) && name !== CACHE) await caches.delete(name);
    }
    await self.clients.claim();
  })());
});

// The new build waits until a person says so.
self.addEventListener("message", (event) => {
  if (event.data === "take-over") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin) return;
  if (url.href.startsWith(APART)) return;
  // Every page is the shell; its address, query and fragment stay as they are.
  const wanted = request.mode === "navigate" ? SHELL : request;
  event.respondWith((async () => {
    const cache = await caches.open(CACHE);
    return (await cache.match(wanted)) ?? fetch(request);
  })());
});
