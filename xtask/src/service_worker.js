// Keeps Meniscus working without a network. Written by `cargo xtask`: the list and the version are
// made from the files of this build.
const VERSION = "__VERSION__";
// Of each file its SHA-256 and its type. The start page has no name.
const FILES = new Map(__FILES__);
const SCOPE = self.registration.scope;
// Named after the folder too: another copy on this host keeps its own. No address holds a space.
const OURS = `meniscus ${SCOPE} `;
const CACHE = OURS + VERSION;
// What a host may say about a file. All else, its type above all, is known from the build.
const TOLD = ["content-security-policy", "cross-origin-opener-policy", "permissions-policy", "referrer-policy", "x-content-type-options"];

// A file from the network, never from the browser's own cache. Whatever else a host, a cache on the way or
// the login page of a network answers is an error: no byte of it is kept.
async function checked(name) {
  const [sum, type] = FILES.get(name);
  const answer = await fetch(SCOPE + name, { cache: "reload" });
  const body = await answer.arrayBuffer();
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", body));
  if (btoa(String.fromCharCode(...digest)) !== sum) throw new Error(`not as it was built: ${name || "the start page"}`);
  // While a host goes from one build to the next, the policy of one with the page of the other would stop it for good.
  const policy = (!name && answer.headers.get("content-security-policy")) || "";
  const sums = (text) => text.match(/'sha256-[^']+'/g) ?? [];
  if (sums(policy).length && sums(new TextDecoder().decode(body)).some((sum) => !policy.includes(sum))) throw new Error("with the policy of another build");
  const headers = new Headers({ "content-type": type });
  for (const header of TOLD) if (answer.headers.has(header)) headers.set(header, answer.headers.get(header));
  // Made anew, because browsers refuse to open a page with an answer that was redirected.
  return new Response(body, { headers });
}

async function keep(names) {
  const files = await Promise.all(names.map(async (name) => [SCOPE + name, await checked(name)]));
  const cache = await caches.open(CACHE);
  await Promise.all(files.map(([address, file]) => cache.put(address, file)));
}

// All or nothing: one file that fails and the old version stays. The cache of this very version may be in use
// already, after a step back: it then gets the same bytes again, and is never deleted.
self.addEventListener("install", (event) => event.waitUntil(install()));

async function install() {
  const wasThere = await caches.has(CACHE);
  try {
    await keep([...FILES.keys()]);
  } catch (problem) {
    if (!wasThere) await caches.delete(CACHE);
    throw problem;
  }
  // The browser has dropped the version before: there is nothing to go on with until a tap.
  if (!wasThere && !(await startPages()).some((name) => name !== CACHE)) self.skipWaiting();
}

// The caches that hold a start page of this folder. (The first versions named theirs after none.)
async function startPages() {
  const names = (await caches.keys()).filter((name) => name.startsWith("meniscus"));
  const pages = await Promise.all(names.map((cacheName) => caches.match(SCOPE, { cacheName })));
  return names.filter((_, at) => pages[at]);
}

// Only now that this version is in charge do older caches of this folder go.
self.addEventListener("activate", (event) => event.waitUntil(dropOlder().then(() => self.clients.claim())));

async function dropOlder() {
  const whole = await startPages();
  for (const name of await caches.keys())
    if (name !== CACHE && (name.startsWith(OURS) || whole.includes(name))) await caches.delete(name);
}

// The page asks for this when the person taps Update.
self.addEventListener("message", (event) => {
  if (event.data === "take over") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = request.url.split("#")[0].split("?")[0];
  // Repair asks for what the host has, past all caches: a browser keeps some in its memory too.
  if (request.method !== "GET" || request.cache === "reload" || !address.startsWith(SCOPE)) return;
  const name = address.slice(SCOPE.length);
  const file = name === "index.html" ? "" : name;
  if (FILES.has(file)) event.respondWith(answer(file, request));
});

// The cache first, so a network that hangs is never waited for.
async function answer(name, request) {
  const kept = await caches.match(SCOPE + name, { cacheName: CACHE }).catch(() => {});
  if (kept) return kept;
  // The browser has dropped it, to make room: it comes back as it was.
  try {
    const file = await checked(name);
    const copy = file.clone();
    await caches.open(CACHE).then((cache) => cache.put(SCOPE + name, copy)).catch(() => {});
    return file;
  } catch (problem) {
    // The host has a newer version by now, whose page brings its own files; or a page of the network's own.
    if (request.mode === "navigate") return fetch(request);
    throw problem;
  }
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
