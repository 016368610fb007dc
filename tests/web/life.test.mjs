// What happens to a page while it lives: rest, rotation, a lost context, hiding, a second tab, a new version.
import assert from 'node:assert/strict';
import {createHash} from 'node:crypto';
import {cpSync, readFileSync, writeFileSync} from 'node:fs';
import {test} from 'node:test';

import * as h from './harness.mjs';
import {enterSpan, reading} from './roof.mjs';

test('while nothing changes no frame is drawn', async (t) => {
  const site = await h.server(t);
  const app = await h.open(await h.phone(t, h.scratch()), site.url);
  await app.rest();
  const before = await app.frames();
  await app.page.waitForTimeout(10_000);
  assert.equal(await app.frames(), before);
});

test('after a rotation the drawing fills the new shape, sharp, with the same answers', async (t) => {
  const site = await h.server(t);
  const app = await h.open(await h.phone(t, h.scratch()), site.url);
  await enterSpan(app, '30');
  const before = await reading(app);
  await app.page.setViewportSize({width: 844, height: 390});
  await app.page.waitForTimeout(400);
  await app.still();
  assert.deepEqual(await app.page.evaluate(() => {
    const {width, height} = document.getElementById('canvas');
    return [width, height];
  }), [844 * 3, 390 * 3]);
  for (const item of await app.registry()) {
    assert.ok(item.x >= -1 && item.x + item.w <= 845, `${item.key} lies within the width`);
  }
  await app.shot('rotated');
  assert.ok((await app.drawn()).colours > 20);
  assert.equal(await reading(app), before);
  await app.page.setViewportSize(h.kPhone);
  await app.page.waitForTimeout(400);
  await app.still();
  assert.equal(await reading(app), before);
});

test('a lost context comes back with the same picture', async (t) => {
  const site = await h.server(t);
  const app = await h.open(await h.phone(t, h.scratch()), site.url);
  await app.rest();
  const before = (await app.drawn()).image;
  const lose = (what) => app.page.evaluate((call) => {
    window.loser ??= document.getElementById('canvas').getContext('webgl2').getExtension('WEBGL_lose_context');
    window.loser[call]();
  }, what);
  await lose('loseContext');
  await app.page.waitForFunction(() => window.__bentbook.lost);
  const lost = await app.frames();
  await app.page.waitForTimeout(300);
  assert.equal(await app.frames(), lost, 'nothing is drawn without a context');
  await lose('restoreContext');
  await app.page.waitForFunction(() => !window.__bentbook.lost);
  await app.still();
  const after = await app.drawn();
  assert.ok(after.live);
  const differing = after.image.colours.reduce((n, c, i) => n + (c !== before.colours[i]), 0);
  assert.equal(differing, 0, 'pixel for pixel the same');
  assert.deepEqual(app.trouble, []);
});

test('a context that does not come back reloads the page; nothing is lost', async (t) => {
  const site = await h.server(t);
  const app = await h.open(await h.phone(t, h.scratch()), site.url);
  await enterSpan(app, '32');
  const before = await reading(app);
  const reloaded = app.page.waitForNavigation({timeout: 15_000});
  await app.page.evaluate(() => {
    document.getElementById('canvas').getContext('webgl2').getExtension('WEBGL_lose_context').loseContext();
  });
  await reloaded;
  await app.ready();
  assert.equal(await reading(app), before);
  assert.ok((await app.drawn()).live);
});

test('a second tab reads and says so; it writes when the first has gone, from where the first left off', async (t) => {
  const site = await h.server(t);
  const context = await h.phone(t, h.scratch());
  const first = await h.open(context, site.url);
  await enterSpan(first, '30');
  const second = await h.open(context, site.url);
  await second.page.waitForFunction(() => window.__bentbook.store.readOnly);
  await second.still();
  await second.shot('second_tab');
  assert.equal((await second.store()).writer, false);
  await first.page.bringToFront();  // a page behind another draws no frames
  await enterSpan(first, '34');
  const left = await reading(first);
  await first.page.close();
  await second.page.bringToFront();
  await second.page.waitForFunction(() => window.__bentbook.store.writer);
  await second.still();
  assert.equal((await second.store()).readOnly, false);
  assert.equal(await reading(second), left);
  await enterSpan(second, '36');
  assert.notEqual(await reading(second), left);
});

/** The same app as another build: the page carries another mark, and list and cache name follow. */
function anotherBuild(folder, {torn = false} = {}) {
  cpSync(h.dist, folder, {recursive: true});
  const sha = (text) => createHash('sha256').update(text).digest('hex');
  const page = readFileSync(`${folder}/index.html`, 'utf8');
  const build = /data-build="([0-9a-f]+)"/.exec(page)[1];
  const next = [...build].reverse().join('');
  const changed = page.replace(build, next);
  const worker = readFileSync(`${folder}/sw.js`, 'utf8').replaceAll(build, next).replace(sha(page), sha(changed));
  writeFileSync(`${folder}/index.html`, torn ? page : changed);
  writeFileSync(`${folder}/sw.js`, worker);
  return {build, next};
}

const buildOf = (app) => app.page.evaluate(() => window.__bentbook.build);

test('a new version is offered, never forced; taken, it comes whole and keeps what was entered', async (t) => {
  const folder = h.scratch();
  cpSync(h.dist, folder, {recursive: true});
  const site = await h.server(t, folder);
  const context = await h.phone(t, h.scratch());
  const app = await h.open(context, site.url);
  await app.page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  await enterSpan(app, '30');
  const before = await reading(app);
  const {build, next} = anotherBuild(folder);
  await app.page.reload();
  await app.ready();
  const offer = app.key('notice.use_new_version');
  await offer.waitFor({state: 'attached'});
  await app.still();
  await app.shot('new_version');
  assert.equal(await buildOf(app), build, 'the old version goes on underfoot');
  await app.page.reload();
  await app.ready();
  assert.equal(await buildOf(app), build, 'a reload alone does not swap it');
  await offer.waitFor({state: 'attached'});
  const reloaded = app.page.waitForNavigation();
  await app.press(offer).catch(() => {});  // the page goes away under the press
  await reloaded;
  await app.ready();
  assert.equal(await buildOf(app), next);
  assert.equal(await reading(app), before);
  assert.deepEqual(await app.page.evaluate(() => window.caches.keys()), [`bentbook-${next}`], 'the old one is gone');
  await site.stop();
  await app.page.reload();
  await app.ready();
  assert.equal(await buildOf(app), next);
});

test('a half deployed version is not taken: a file of the wrong build stops it', async (t) => {
  const folder = h.scratch();
  cpSync(h.dist, folder, {recursive: true});
  const site = await h.server(t, folder);
  const app = await h.open(await h.phone(t, h.scratch()), site.url);
  await app.page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  const {build, next} = anotherBuild(folder, {torn: true});
  const outcome = await app.page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration.update();
    const worker = registration.installing;
    if (!worker) return 'none';
    return new Promise((resolve) => {
      worker.onstatechange = () => worker.state !== 'installing' && resolve(worker.state);
    });
  });
  assert.equal(outcome, 'redundant');
  const stored = await app.page.evaluate(async (name) => (await (await window.caches.open(name)).keys()).map((r) => r.url), `bentbook-${next}`);
  assert.ok(stored.length > 5, 'what was verified stays, and the next try goes on from there');
  assert.ok(!stored.some((url) => url.endsWith('index.html')), 'the wrong file is not among it');
  await app.page.reload();
  await app.ready();
  assert.equal(await buildOf(app), build);
  assert.equal(await app.key('notice.use_new_version').count(), 0);
});

test('what was just entered is stored when the page is hidden before another frame', async (t) => {
  const site = await h.server(t);
  const app = await h.open(await h.phone(t, h.scratch()), site.url);
  await app.press(app.key('rafter.span'));
  const frames = await app.page.evaluate(() => {
    const mirrored = (key) => document.querySelector(`#mirror [data-key="${key}"]`);
    const entry = mirrored('keypad.entry');
    entry.value = "37' 5\"";
    entry.dispatchEvent(new Event('input'));
    mirrored('keypad.done').click();
    const before = window.__bentbook.frames;
    Object.defineProperty(document, 'visibilityState', {value: 'hidden', configurable: true});
    document.dispatchEvent(new Event('visibilitychange'));
    return window.__bentbook.frames - before;
  });
  assert.equal(frames, 0);
  await app.page.reload();
  await app.ready();
  assert.match(await app.key('rafter.span').textContent(), /37′ 5″/);
});
