// The first visit: the app draws, answers and is stored whole; afterwards nothing goes over the network.
import assert from 'node:assert/strict';
import {readdirSync} from 'node:fs';
import {test} from 'node:test';

import * as h from './harness.mjs';
import {enterSpan} from './roof.mjs';

/** Waits until the service worker holds the build. */
const stored = (page) => page.evaluate(() => navigator.serviceWorker.ready.then(() => true));

test('a first visit draws the app, with no error and no violation of the policy', async (t) => {
  const site = await h.server(t);
  const app = await h.open(await h.phone(t, h.scratch()), site.url);
  const drawn = await app.drawn();
  assert.ok(drawn.live, 'a WebGL 2 context lives');
  assert.ok(drawn.colours > 20, `${drawn.colours} colours: the canvas is not flat`);
  assert.equal(drawn.image.width, 390 * 3, 'a pixel of the canvas for each of the display');
  assert.deepEqual(await app.page.evaluate(() => {
    const {width, height} = document.getElementById('canvas');
    return [width, height];
  }), [390 * 3, 844 * 3]);
  await app.shot('first_visit');
  assert.deepEqual(await app.violations(), []);
  assert.deepEqual(app.trouble, []);
});

test('every file of the build is stored, checked, under the name of the build', async (t) => {
  const site = await h.server(t);
  const app = await h.open(await h.phone(t, h.scratch()), site.url);
  await stored(app.page);
  const [caches, files] = await app.page.evaluate(async () => {
    const names = await window.caches.keys();
    const cache = await window.caches.open(names[0]);
    return [names, (await cache.keys()).map((r) => new URL(r.url).pathname.slice(1))];
  });
  assert.deepEqual(caches, [`bentbook-${await app.page.evaluate(() => window.__bentbook.build)}`]);
  assert.deepEqual(files.sort(), readdirSync(h.dist).filter((f) => f !== 'sw.js').sort());
});

test('after the load the app makes no request', async (t) => {
  const site = await h.server(t);
  const context = await h.phone(t, h.scratch());
  const app = await h.open(context, site.url);
  await stored(app.page);
  await app.still();
  site.requests.length = 0;
  const outside = [];
  context.on('request', (request) => !request.url().startsWith('blob:') && outside.push(request.url()));
  await enterSpan(app, '30');
  await app.page.waitForTimeout(2000);
  assert.deepEqual(site.requests, []);
  assert.deepEqual(outside, []);
});

test('the server sends the whole policy, and what the page needs to be installed', async (t) => {
  const site = await h.server(t);
  const app = await h.open(await h.phone(t, h.scratch()), site.url);
  const policy = (await fetch(site.url)).headers.get('content-security-policy');
  assert.match(policy, /default-src 'self'/);
  assert.match(policy, /frame-ancestors 'none'/);
  assert.doesNotMatch(policy, /'unsafe-inline'|'unsafe-eval'/);
  const wasm = await app.page.evaluate(() => document.documentElement.dataset.wasm);
  assert.equal((await fetch(site.url + wasm)).headers.get('content-type'), 'application/wasm');
  const cdp = await app.page.context().newCDPSession(app.page);
  const {errors, data} = await cdp.send('Page.getAppManifest');
  assert.deepEqual(errors, []);
  const manifest = JSON.parse(data);
  assert.equal(manifest.display, 'standalone');
  for (const size of ['192x192', '512x512']) {
    assert.ok(manifest.icons.some((i) => i.sizes === size && i.purpose === 'any'), `an icon of ${size}`);
    assert.ok(manifest.icons.some((i) => i.sizes === size && i.purpose === 'maskable'), `a maskable icon of ${size}`);
  }
  const {installabilityErrors} = await cdp.send('Page.getInstallabilityErrors');
  assert.deepEqual(installabilityErrors.filter((e) => e.errorId !== 'in-incognito'), []);
});

test('a browser without WebGL 2 is told so in words', async (t) => {
  const site = await h.server(t);
  const context = await h.phone(t, h.scratch());
  const page = await context.newPage();
  await page.addInitScript(() => {
    HTMLCanvasElement.prototype.getContext = () => null;
  });
  await page.goto(site.url);
  await page.waitForSelector('html[data-state="failed"]', {state: 'attached'});
  assert.match(await page.locator('#notice').innerText(), /WebGL 2/);
});
