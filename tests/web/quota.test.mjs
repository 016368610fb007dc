// Chromium's own limit on what an origin may store, on the page's own scripts: of a batch of records all are stored or
// none, and it is told which; what was stored before stays.
import assert from 'node:assert/strict';
import {cpSync, writeFileSync} from 'node:fs';
import {test} from 'node:test';

import * as h from './harness.mjs';

const kRounds = 50, kBatch = 300;

/** A page with the store and nothing else, from an origin that may store no more than limit() says. (Chromium remembers for
 * half a minute how much room there was, and looks again where that is not enough: the limit must be low from the start.) */
async function storePage(t, room) {
  const folder = h.scratch();
  cpSync(h.join(h.root, 'wasm-app/web'), folder, {recursive: true});
  writeFileSync(h.join(folder, 'index.html'), '<!doctype html><title>store</title><script type="module" src="only_store.js"></script>');
  writeFileSync(h.join(folder, 'only_store.js'), `
    import {Event} from './bridge.js';
    import {openStore} from './store.js';
    const waiting = new Map();
    const store = openStore((kind, key, text, number) => {
      if (kind === Event.logRead) waiting.get('read')(new TextDecoder().decode(text));
      if (kind === Event.appended || kind === Event.appendFailed) waiting.get(number)([kind === Event.appended, text]);
    }, () => {});
    const answer = (to, ask) => new Promise((resolve) => { waiting.set(to, resolve); ask(); });
    await store.load();
    window.read = () => answer('read', () => store.readLog('demo.shop', new Uint8Array()));
    window.append = (ticket, text) => answer(ticket, () => store.append('demo.shop', ticket, new TextEncoder().encode(text)));
    while (!store.state.writer) await new Promise((resolve) => setTimeout(resolve, 10));
    window.ready = true;`);
  const site = await h.server(t, folder);
  const context = await h.phone(t, h.scratch());
  const page = await context.newPage();
  const {origin} = new URL(site.url);
  const cdp = await context.newCDPSession(page);
  const limit = (bytes) => cdp.send('Storage.overrideQuotaForOrigin', {origin, quotaSize: bytes});
  await limit(room);
  await page.goto(site.url);
  await page.waitForFunction(() => window.ready);
  return {page, limit};
}

const batch = (n) => Array.from({length: kBatch}, (_, i) =>
  `d${n}\n${i + 1}\nbatch ${n} record ${i + 1} ${'x'.repeat(100)}\n`).join('');

test(`${kRounds} batches of ${kBatch} records at the edge of the quota: all or none`, {timeout: 300_000}, async (t) => {
  let room = 300_000;
  const {page, limit} = await storePage(t, room);
  const expected = new Map();
  let full = 0;
  for (let n = 0; n < kRounds; ++n) {
    const [stored, why] = await page.evaluate(([ticket, text]) => window.append(ticket, text), [n, batch(n)]);
    expected.set(n, stored ? kBatch : 0);
    if (!stored) {
      assert.equal(why, 'quota', `batch ${n}`);
      full += 1;
      await limit(room += 100_000);
    }
    const lines = (await page.evaluate(() => window.read())).split('\n').filter(Boolean);
    const found = new Map([...expected.keys()].map((k) => [k, 0]));
    for (const line of lines) found.set(Number(line.split(' ')[1]), found.get(Number(line.split(' ')[1])) + 1);
    assert.deepEqual(found, expected, `after batch ${n}`);
  }
  console.log(`quota: ${full} of ${kRounds} batches found no room`);
  assert.ok(full >= 10 && full <= kRounds - 10, `${full} batches found no room`);
  await limit(10 * room);
  assert.deepEqual(await page.evaluate(([text]) => window.append(1000, text), [batch(1000)]), [true, '']);
});
