// Keeps one whole release for use without signal.
// The build puts RELEASE = {build, files, onDemand} in front of this file.
/* global RELEASE */

const PREFIX = "rebrace-";
const CACHE = PREFIX + RELEASE.build;
const SLOW_MS = 4000; // after this a page from the cache beats waiting for the network
const FULL_ENGINE = /\/assets\/engine\/pyodide-/;
const NOT_FOUND = "404.html";
const IMMUTABLE = /-[0-9a-f]{12}[./]/; // names by content

// All files or none: if one is missing the former release stays as it is.
self.addEventListener("install", (event) => event.waitUntil(install()));

async function install() {
  const fresh = RELEASE.files.map((file) => new Request(addressOf(file), { cache: "no-cache" }));
  const asked = (await wasAskedFor()) ? RELEASE.onDemand.map(addressOf) : [];
  const cache = await caches.open(CACHE);
  await cache.addAll([...fresh, ...asked]);
  // Some hosts send the page for what is not found as not found, which addAll would take for a fault.
  const missing = addressOf(NOT_FOUND);
  await cache.put(missing, await fetch(missing, { cache: "no-cache" }));
}

/** Has the reader of the former release started the full engine? Then this release brings it too. */
async function wasAskedFor() {
  const names = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  const kept = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
  return kept.flat().some(({ url }) => FULL_ENGINE.test(url));
}

function addressOf(file) {
  return new URL(file, self.registration.scope);
}

// Runs once no page of the former release is open.
self.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => names.filter((name) => name.startsWith(PREFIX) && name !== CACHE))
      .then((old) => Promise.all(old.map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== "GET" || !address.href.startsWith(self.registration.scope)) return;
  event.respondWith(IMMUTABLE.test(address.pathname) ? cacheFirst(request) : networkFirst(request));
});

/** Files whose name changes with their content. What was not kept at install is kept when first asked for. */
async function cacheFirst(request) {
  const kept = await caches.match(request, { cacheName: CACHE });
  if (kept) return kept;
  const response = await fetch(request);
  if (response.status === 200 && response.type === "basic") await keep(request, response.clone());
  return response;
}

/** Not once the reader has turned the copy off: the last page goes on asking, and nothing may come back. */
async function keep(request, response) {
  if (await caches.has(CACHE)) await (await caches.open(CACHE)).put(request, response);
}

async function networkFirst(request) {
  const kept = await caches.match(request, { cacheName: CACHE, ignoreSearch: true });
  const answer = fetch(request);
  if (!kept) return request.mode === "navigate" ? answer.catch(() => elsewhere(request)) : answer;
  const slow = new Promise((resolve) => setTimeout(() => resolve(kept), SLOW_MS));
  return Promise.race([answer.catch(() => kept), slow]);
}

/** Without a connection, at an address that nobody keeps: the page that it means, or that there is none. */
async function elsewhere(request) {
  const { pathname } = new URL(request.url);
  const meant = new URL(pathname.replace(/(?:\/index\.html|\/)?$/, "/"), request.url).href;
  if (await caches.match(meant, { cacheName: CACHE })) return Response.redirect(meant);
  const page = await caches.match(addressOf(NOT_FOUND), { cacheName: CACHE });
  return page ? new Response(page.body, { status: 404, headers: page.headers }) : Response.error();
}

// A page may ask whether what is fetched on demand is kept, or ask for it ahead.
self.addEventListener("message", (event) => {
  if (event.data === "ahead?" || event.data === "ahead") event.waitUntil(answerAhead(event));
});

async function answerAhead({ data, ports: [port] }) {
  const cache = await caches.open(CACHE);
  try {
    if (data === "ahead") await cache.addAll(RELEASE.onDemand.map(addressOf));
    const kept = await Promise.all(RELEASE.onDemand.map((file) => cache.match(addressOf(file))));
    port.postMessage(kept.every(Boolean) ? "kept" : "not kept");
  } catch {
    port.postMessage("failed");
  }
}
