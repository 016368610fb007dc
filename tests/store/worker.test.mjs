// The service worker without a browser: an install that is cut off, entries that are lost, two folders on one origin.
import assert from 'node:assert/strict';
import {createHash, webcrypto} from 'node:crypto';
import {readFileSync} from 'node:fs';
import {test} from 'node:test';
import {createContext, runInContext} from 'node:vm';

const source = readFileSync(new URL('../../wasm-app/web/sw.js', import.meta.url), 'utf8');
const sha = (text) => createHash('sha256').update(text).digest('hex');
const kOrigin = 'https://bentbook.example';

/** A build's files, path → text. */
const build = (mark) => Object.fromEntries(
  ['index.html', ...Array.from({length: 11}, (_, n) => `part-${mark}-${n}.js`)].map((path) => [path, `${mark} ${path}`]));

/** What a browser keeps for an origin, over workers and restarts. */
class Origin {
  caches = new Map();
  served = new Map();  // url → text
  online = true;
  fetched = [];
  clients = [];  // {url, told}

  serve(folder, files) {
    for (const [path, text] of Object.entries(files)) this.served.set(kOrigin + folder + path, text);
  }

  page(url) {
    const client = {url, told: [], postMessage: (said) => client.told.push(said.notUsableOffline)};
    this.clients.push(client);
    return client;
  }

  entries(name) {
    if (!this.caches.has(name)) this.caches.set(name, new Map());
    return this.caches.get(name);
  }

  cacheStorage(base, alive) {
    const whole = (of) => new URL(typeof of === 'string' ? of : of.url, base).href.replace(/\?.*/, '');
    return {
      keys: async () => [...this.caches.keys()],
      delete: async (name) => this.caches.delete(name),
      open: async (name) => ({
        keys: async () => [...this.entries(name).keys()].map((url) => ({url})),
        match: async (of) => {
          const text = this.entries(name).get(whole(of));
          return text === undefined ? undefined : new Response(text);
        },
        put: async (of, response) => {
          const text = await response.text();
          alive();
          this.entries(name).set(whole(of), text);
        },
      }),
    };
  }
}

/** A running worker of a build. @param steps after which it is killed */
function worker(origin, folder, files, steps = Infinity) {
  const scope = kOrigin + folder;
  const handlers = {};
  const alive = () => {
    if (--steps < 0) throw new Error('killed');
  };
  const self = {
    registration: {scope, active: null}, addEventListener: (name, handler) => { handlers[name] = handler; }, skipWaiting() {},
  };
  const context = createContext({
    self, URL, Response, Headers, Object, Promise, Set, Error, Array, Uint8Array, crypto: webcrypto,
    location: new URL(`${scope}sw.js`), caches: origin.cacheStorage(scope, alive),
    clients: {claim: async () => {}, matchAll: async () => origin.clients},
    async fetch(of) {
      const url = new URL(typeof of === 'string' ? of : of.url, scope).href.replace(/\?.*/, '');
      alive();
      if (!origin.online) throw new TypeError('no network');
      origin.fetched.push(url);
      const text = origin.served.get(url.endsWith('/') ? `${url}index.html` : url);
      return text === undefined ? new Response('', {status: 404}) : new Response(text);
    },
  });
  const list = Object.fromEntries(Object.entries(files).map(([path, text]) => [path, sha(text)]));
  runInContext(`const kBuild="${sha(JSON.stringify(list)).slice(0, 16)}",kFiles=${JSON.stringify(list)};${source}`, context);
  const send = async (name, event = {}) => {
    const waits = [];
    let answer = null;
    handlers[name]({...event, waitUntil: (p) => waits.push(p), respondWith: (p) => { answer = p; }});
    const response = await answer;
    await Promise.all(waits);
    return response && (await response.text());
  };
  return {
    self,
    install: () => send('install'),
    async activate() {
      self.registration.active = {};
      await send('activate');
    },
    get: (path, mode = 'cors') => send('fetch', {request: {url: scope + path, method: 'GET', mode}}),
    complete: () => send('message', {data: 'complete'}),
  };
}

async function installed(folder = '/', mark = 'one') {
  const origin = new Origin(), files = build(mark);
  origin.serve(folder, files);
  const running = worker(origin, folder, files);
  await running.install();
  await running.activate();
  return {origin, files, running};
}

async function allThere(origin, running, files) {
  origin.online = false;
  for (const [path, text] of Object.entries(files)) assert.equal(await running.get(path), text);
  assert.equal(await running.get('', 'navigate'), files['index.html']);
  origin.online = true;
}

test('an install that is killed says so, keeps what it has, and goes on from there', async () => {
  for (let steps = 2; steps <= 20; steps += 2) {
    const origin = new Origin(), files = build('one'), page = origin.page(`${kOrigin}/`);
    origin.serve('/', files);
    await assert.rejects(worker(origin, '/', files, steps).install());
    assert.deepEqual(page.told, ['signal'], `${steps}`);
    const kept = [...origin.caches.values()].reduce((n, entries) => n + entries.size, 0);
    origin.fetched.length = 0;
    const again = worker(origin, '/', files);
    await again.install();
    await again.activate();
    assert.equal(origin.fetched.length, 12 - kept, 'what it has is not fetched again');
    await allThere(origin, again, files);
  }
});

test('why it is not usable with no signal: the network, another build, no room', async () => {
  const origin = new Origin(), files = build('one'), page = origin.page(`${kOrigin}/`);
  origin.serve('/', {...files, 'part-one-3.js': 'of another build'});
  await assert.rejects(worker(origin, '/', files).install());
  origin.online = false;
  await assert.rejects(worker(origin, '/', files).install());
  origin.online = true;
  origin.serve('/', files);
  origin.entries = () => { throw new DOMException('full', 'QuotaExceededError'); };
  await assert.rejects(worker(origin, '/', files).install());
  assert.deepEqual(page.told, ['build', 'signal', 'room']);
});

test('each entry that is lost, and all of them, is healed when there is a network', async () => {
  const {origin, files, running} = await installed();
  const [entries] = origin.caches.values();
  const page = origin.page(`${kOrigin}/`);
  for (const url of [...entries.keys()]) {
    entries.delete(url);
    await running.get('', 'navigate');
    await allThere(origin, running, files);
  }
  origin.caches.clear();
  assert.equal(await running.get('', 'navigate'), files['index.html']);
  await allThere(origin, running, files);
  assert.deepEqual(page.told, []);
});

test('a lost entry that cannot be healed is told; the page is the network\'s', async () => {
  const {origin, files, running} = await installed();
  const [entries] = origin.caches.values();
  const page = origin.page(`${kOrigin}/`);
  entries.delete(`${kOrigin}/part-one-4.js`);
  origin.online = false;
  assert.equal(await running.get('', 'navigate'), files['index.html']);
  assert.deepEqual(page.told, ['signal']);
  await assert.rejects(running.get('part-one-4.js'));
  origin.online = true;
  await running.complete();
  await allThere(origin, running, files);
  entries.delete(`${kOrigin}/index.html`);
  origin.serve('/', {'index.html': 'the next build'});
  assert.equal(await running.get('', 'navigate'), 'the next build');
  assert.deepEqual(page.told, ['signal', 'build']);
  assert.equal(entries.size, 11, 'it is not taken for this build\'s');
});

test('two folders on one origin leave each other alone', async () => {
  const {origin, files, running} = await installed('/');
  const other = build('two'), inside = build('three');
  origin.serve('/other/', other);
  origin.serve('/other/inside/', inside);
  const page = origin.page(`${kOrigin}/`);
  const workers = [[running, files]];
  for (const [folder, theirs] of [['/other/', other], ['/other/inside/', inside]]) {
    const one = worker(origin, folder, theirs);
    await one.install();
    await one.activate();
    workers.push([one, theirs]);
  }
  for (const [one, theirs] of workers) {
    await one.activate();
    await allThere(origin, one, theirs);
  }
  assert.equal(origin.caches.size, 3);
  assert.equal(await running.get('other/', 'navigate'), null, 'the one above does not answer for the one inside');
  const next = build('four');
  origin.serve('/other/', next);
  const newer = worker(origin, '/other/', next);
  await newer.install();
  await newer.activate();
  assert.equal(origin.caches.size, 3, 'the folder\'s old build is gone, and that alone');
  await allThere(origin, running, files);
  origin.online = false;
  await assert.rejects(worker(origin, '/other/', build('five')).install());
  assert.deepEqual(page.told, [], 'what fails in one folder is not said in another');
});
