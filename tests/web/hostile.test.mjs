// Logs that no crew makes, taken in as files: the shop opens anew, and a tick is made and kept; after each under
// `tests/run long`.
import assert from 'node:assert/strict';
import {execFileSync} from 'node:child_process';
import {readdirSync} from 'node:fs';
import {test} from 'node:test';

import * as h from './harness.mjs';

const kLong = process.env.BENTBOOK_LONG === '1';
const kEach = 1000;              // events
const kLook = kLong ? 1 : 6;     // after so many logs

const there = (page, key) => page.waitForFunction((k) => document.querySelector(`#mirror [data-key="${CSS.escape(k)}"]`), key);

async function click(app, key) {
  await there(app.page, key);
  await app.key(key).first().dispatchEvent('click');
  await app.still();
}

async function takeIn(app, file) {
  for (const key of ['place.shop', 'place.shop', 'shop.pass']) await click(app, key);
  await there(app.page, 'pass.open');
  const chosen = app.page.waitForEvent('filechooser');
  await app.press(app.key('pass.open'));
  await (await chosen).setFiles(file);
  const {appended, saved} = await app.store();
  await click(app, 'receive.take');
  await app.page.waitForFunction((n) => window.__bentbook.store.appended >= n, appended + kEach, {timeout: 120_000});
  await app.page.waitForFunction((n) => window.__bentbook.store.saved > n && window.__bentbook.store.pending === 0, saved);
}

/** Milliseconds until the shop's figures show in a page that is opened anew. */
async function start(app, context, url) {
  await app.page.close();
  const from = performance.now();
  const next = await h.open(context, url);
  await click(next, 'place.shop');
  await there(next.page, 'shop.all');
  return [next, performance.now() - from];
}

/** Milliseconds from a finger on a timber's next step until it is stored. The logs are about the first timber; the n-th
 * tick is on one of those after it, four on each. */
async function tick(app, n) {
  for (const key of ['place.shop', 'place.shop', 'shop.all']) await click(app, key);
  await there(app.page, 'shop.timber.P-A1');
  const keys = await app.page.evaluate(() =>
    [...document.querySelectorAll('#mirror [data-key^="shop.timber."]')].map((e) => e.dataset.key));
  await click(app, keys[1 + Math.floor(n / 4)]);
  await there(app.page, 'shop.next.tick');
  const {appended} = await app.store();
  const from = performance.now();
  await app.key('shop.next.tick').dispatchEvent('click', {shiftKey: true, bubbles: true});
  await app.page.waitForFunction((n) => window.__bentbook.store.appended > n, appended);
  return performance.now() - from;
}

test('logs of every kind of very many claims come in by file; the shop opens and ticks', {timeout: 900_000}, async (t) => {
  const folder = h.scratch();
  execFileSync(h.join(h.root, 'build/native-debug/tests/web/hostile_logs'), [folder, String(kEach)]);
  const files = readdirSync(folder);
  assert.ok(files.length >= 24);
  const site = await h.server(t);
  const context = await h.phone(t, h.scratch());
  let app = await h.open(context, site.url);
  let longestStart = 0, longestTick = 0, took;
  for (const [n, file] of files.entries()) {
    await takeIn(app, h.join(folder, file));
    if ((n + 1) % kLook && n + 1 < files.length) continue;
    [app, took] = await start(app, context, site.url);
    longestStart = Math.max(longestStart, took);
    longestTick = Math.max(longestTick, await tick(app, n));
  }
  assert.deepEqual(app.trouble, []);
  await app.shot('hostile');
  console.log(`hostile: ${files.length} logs of ${kEach} events, shop opens within ${(longestStart / 1000).toFixed(1)} s, a tick is stored within ${(longestTick / 1000).toFixed(1)} s`);
});
