// One cache for each release, filled all or nothing, every file checked by its hash. A new release
// waits until the owner says so. build.py puts in the release and the list of its files.
const RELEASE = "{{release}}";
const FILES = "{{files}}"; // { name: SHA-256 in hex }

// Other pages may share this origin, and with it the cache storage: keep to names of our own.
const OURS = `ohmward ${self.registration.scope} `;
const CACHE = OURS + RELEASE;
const PAGE = "index.html";

const addressOf = (name) => new URL(name === PAGE ? "./" : name, self.registration.scope).href;

async function digest(bytes) {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

async function ourCaches() {
  return (await caches.keys()).filter((name) => name.startsWith(OURS));
}

// From an earlier release if the file is the same, else from the host; past a stale copy, if any.
async function fetchChecked(name, earlier) {
  const sources = [
    ...earlier.map((cache) => () => cache.match(addressOf(name))),
    () => fetch(addressOf(name), { cache: "no-cache" }),
    () => fetch(addressOf(name), { cache: "reload" }),
  ];
  for (const source of sources) {
    const response = await source();
    if (!response?.ok) continue;
    const bytes = await response.arrayBuffer();
    if ((await digest(bytes)) !== FILES[name]) continue;
    return new Response(bytes, { headers: { "content-type": response.headers.get("content-type") } });
  }
  throw new Error(`${name} is not the file of this release`);
}

async function install() {
  const earlier = await Promise.all((await ourCaches()).map((name) => caches.open(name)));
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(Object.keys(FILES).map(async (name) => {
      await cache.put(addressOf(name), await fetchChecked(name, earlier));
    }));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

async function activate() {
  for (const name of await ourCaches()) if (name !== CACHE) await caches.delete(name);
  await self.clients.claim(); // so that the first visit, too, can check itself from the cache
}

async function verify() {
  const cache = await caches.open(CACHE);
  const missing = [];
  for (const [name, hash] of Object.entries(FILES)) {
    const response = await cache.match(addressOf(name));
    if (!response || (await digest(await response.arrayBuffer())) !== hash) missing.push(name);
  }
  return missing.length ? { ok: false, missing } : { ok: true, files: Object.keys(FILES).length };
}

async function answer(request, name) {
  const cache = await caches.open(CACHE);
  return (await cache.match(addressOf(name))) ?? fetch(request);
}

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));

self.addEventListener("message", (event) => {
  if (event.data.kind === "update") self.skipWaiting();
  if (event.data.kind === "verify") {
    const reply = verify().catch((error) => ({ ok: false, missing: [String(error)] }));
    event.waitUntil(reply.then((result) => event.ports[0].postMessage(result)));
  }
});

self.addEventListener("fetch", (event) => {
  const { method, mode, url } = event.request;
  if (method !== "GET" || !url.startsWith(self.registration.scope)) return;
  const asked = new URL(url).href.slice(self.registration.scope.length).split(/[?#]/)[0];
  const isPage = mode === "navigate" && !asked.includes("/");
  const name = isPage ? PAGE : decodeURIComponent(asked);
  if (Object.hasOwn(FILES, name)) event.respondWith(answer(event.request, name));
});
