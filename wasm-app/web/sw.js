// Service worker: one build, whole or not at all. `kBuild` and `kFiles` (path → sha256, hex) are put in by
// make_dist.mjs. A new build is fetched beside the one in use and waits until the page asks for it.

const kPrefix = 'bentbook-';
const kCache = kPrefix + kBuild;
const kHome = 'index.html';

const hex = (buffer) => Array.from(new Uint8Array(buffer), (b) => b.toString(16).padStart(2, '0')).join('');

/** The file as this build has it, or an error: a file of another build must not slip in during a deployment. */
async function fetchChecked(path, sha256) {
  const response = await fetch(path, {cache: 'reload'});
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  const bytes = await response.arrayBuffer();
  if (hex(await crypto.subtle.digest('SHA-256', bytes)) !== sha256) throw new Error(`${path}: not of this build`);
  const headers = new Headers(response.headers);
  headers.delete('content-encoding');  // the bytes are plain now
  headers.delete('content-length');
  return new Response(bytes, {headers});
}

async function install() {
  const cache = await caches.open(kCache);
  const files = Object.entries(kFiles);
  const responses = await Promise.all(files.map(([path, sha256]) => fetchChecked(path, sha256)));
  await Promise.all(files.map(([path], i) => cache.put(path, responses[i])));
}

async function activate() {
  const names = await caches.keys();
  await Promise.all(names.filter((n) => n.startsWith(kPrefix) && n !== kCache).map((n) => caches.delete(n)));
  await clients.claim();
}

async function answer(request) {
  const cache = await caches.open(kCache);
  const stored = await cache.match(request.mode === 'navigate' ? kHome : request, {ignoreSearch: true});
  return stored ?? fetch(request);
}

self.addEventListener('install', (event) => event.waitUntil(install().catch(async (error) => {
  await caches.delete(kCache);
  throw error;
})));
self.addEventListener('activate', (event) => event.waitUntil(activate()));
self.addEventListener('message', (event) => {
  if (event.data === 'use-new-version') self.skipWaiting();
});
self.addEventListener('fetch', (event) => {
  if (event.request.method === 'GET' && new URL(event.request.url).origin === location.origin) {
    event.respondWith(answer(event.request));
  }
});
