// Keeps Meniscus working without a network. Written by `cargo xtask`: the list and the version are
// made from the files of this build.
const VERSION = "__VERSION__";
const FILES = __FILES__;
const PREFIX = "meniscus-";
const CACHE = PREFIX + VERSION;

// All or nothing: one file that fails and the old version stays.
self.addEventListener("install", (event) => {
  const fresh = FILES.map((file) => new Request(file, { cache: "reload" }));
  event.waitUntil(
    caches.open(CACHE).then((cache) =>
      cache.addAll(fresh).catch(async (problem) => {
        await caches.delete(CACHE);
        throw problem;
      }),
    ),
  );
});

// Only now that this version is in charge do our own older caches go.
self.addEventListener("activate", (event) => {
  const drop = (names) => names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name));
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(drop(names)))
      .then(() => self.clients.claim()),
  );
});

// The page asks for this when the person taps Update.
self.addEventListener("message", (event) => {
  if (event.data === "take over") self.skipWaiting();
});

// The cache first, so a network that hangs is never waited for.
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(answer(request));
});

async function answer(request) {
  const cache = await caches.open(CACHE);
  const wanted = request.mode === "navigate" && isOurPage(request.url) ? "./" : request;
  return (await cache.match(wanted, { ignoreSearch: true })) ?? fetch(request);
}

function isOurPage(url) {
  const path = new URL(url).pathname;
  const scope = new URL(self.registration.scope).pathname;
  return path === scope || path === scope + "index.html";
}

// A timer's notice leads back to its step.
self.addEventListener("notificationclick", (event) => {
  event.notification.close();
  const to = self.registration.scope + (event.notification.data ?? "");
  event.waitUntil(
    self.clients.matchAll({ type: "window" }).then(async (pages) => {
      const page = pages[0];
      if (!page) return self.clients.openWindow(to);
      await page.focus();
      return page.navigate(to).catch(() => {});
    }),
  );
});
