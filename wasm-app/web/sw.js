// Service worker: one build, whole or not yet in use. `kBuild` and `kFiles` (path → sha256, hex) are put in by
// make_dist.mjs. A new build is fetched beside the one in use and waits until the page asks for it. What is lost from
// the cache is fetched again when there is a network, and told when there is none.

const kFolder = new URL(self.registration.scope).pathname;  // an origin may hold the app in several folders
const kPrefix = `bentbook${kFolder === '/' ? '' : kFolder}-`;
const kCache = kPrefix + kBuild;
const kHome = 'index.html';

const hex = (buffer) => Array.from(new Uint8Array(buffer), (b) => b.toString(16).padStart(2, '0')).join('');
const otherBuild = (words) => Object.assign(new Error(words), {why: 'build'});

/** The file as this build has it, or an error: a file of another build must not slip in during a deployment. */
async function fetchChecked(path) {
  const response = await fetch(path, {cache: 'reload'});
  if (!response.ok) throw otherBuild(`${path}: ${response.status}`);
  const bytes = await response.arrayBuffer();
  if (hex(await crypto.subtle.digest('SHA-256', bytes)) !== kFiles[path]) throw otherBuild(`${path}: not of this build`);
  const headers = new Headers(response.headers);
  headers.delete('content-encoding');  // the bytes are plain now
  headers.delete('content-length');
  return new Response(bytes, {headers});
}

async function bring(cache, path) {
  const response = await fetchChecked(path);
  await cache.put(path, response.clone());
  return response;
}

/** Fetches what the cache lacks; each file that has come stays, whatever becomes of the others. */
async function complete() {
  const cache = await caches.open(kCache);
  const there = new Set((await cache.keys()).map((request) => request.url));
  const lacking = Object.keys(kFiles).filter((path) => !there.has(new URL(path, self.registration.scope).href));
  const brought = await Promise.allSettled(lacking.map((path) => bring(cache, path)));
  const failed = brought.find((one) => one.status === 'rejected');
  if (failed) throw failed.reason;
}

/** Says to this folder's pages that they cannot be opened with no signal, and why. */
async function tell(error) {
  const why = error.name === 'QuotaExceededError' ? 'room' : error.why ?? 'signal';
  for (const client of await clients.matchAll({includeUncontrolled: true, type: 'window'})) {
    if (client.url.startsWith(self.registration.scope)) client.postMessage({notUsableOffline: why});
  }
}

async function activate() {
  const names = await caches.keys();
  await Promise.all(names.filter((n) => n.startsWith(kPrefix) && n !== kCache).map((n) => caches.delete(n)));
  await clients.claim();
}

/** A request's path in the list; undefined for what is none of this build's: another folder's, another origin's. */
function pathOf(request) {
  const {origin, pathname} = new URL(request.url);
  if (request.method !== 'GET' || origin !== location.origin || !pathname.startsWith(kFolder)) return undefined;
  const path = pathname.slice(kFolder.length) || kHome;
  return Object.hasOwn(kFiles, path) ? path : undefined;
}

async function answer(path, request) {
  try {
    const cache = await caches.open(kCache);
    return await cache.match(path, {ignoreSearch: true}) ?? await bring(cache, path);
  } catch {
    return fetch(request);  // what the network has is another build's, or the cache cannot be had
  }
}

self.addEventListener('install', (event) => event.waitUntil(complete().catch(async (error) => {
  if (!self.registration.active) await tell(error);
  throw error;
})));
self.addEventListener('activate', (event) => event.waitUntil(activate()));
self.addEventListener('message', (event) => {
  if (event.data === 'use-new-version') self.skipWaiting();
  if (event.data === 'complete') event.waitUntil(complete().catch(tell));
});
self.addEventListener('fetch', (event) => {
  const path = pathOf(event.request);
  if (path === undefined) return;
  event.respondWith(answer(path, event.request));
  if (event.request.mode === 'navigate') event.waitUntil(complete().catch(tell));
});
