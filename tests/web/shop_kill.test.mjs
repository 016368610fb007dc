// Ticks made at random while the renderer, or the whole browser by SIGKILL, is killed at random: every tick that had
// shown as saved is there on reopening, in order, none doubled. Sixty rounds, a thousand under
// `tests/run long`, or KILL_ROUNDS.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import * as h from './harness.mjs';

const kRounds = Number(process.env.KILL_ROUNDS ?? (process.env.BENTBOOK_LONG === '1' ? 1000 : 60));

/** A seeded sequence of numbers in [0, 1): the same kills on every run (Numerical Recipes' linear congruence). */
function numbers(seed) {
  let state = seed >>> 0;
  return () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
}

/** What is in storage: one line a record, by device and sequence. */
const stored = (page) => page.evaluate(() => new Promise((resolve, reject) => {
  const opening = indexedDB.open('bentbook');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const db = opening.result;
    const reading = db.transaction('events').objectStore('events').getAll();
    reading.onsuccess = () => {
      db.close();
      resolve(reading.result.map((bytes) => new TextDecoder().decode(bytes)));
    };
  };
}));

/** The fields of a record that the test asks for (core/shop/log/README.md). */
function parsed(line) {
  const [, device, sequence, logical, , action, , timber, step] = line.split('\t');
  return {device, sequence: Number(sequence), logical: Number(logical), action, timber, step};
}

const click = (page, key) => page.evaluate((k) => {
  const element = document.querySelector(`#mirror [data-key="${CSS.escape(k)}"]`);
  element?.click();
  return !!element;
}, key);

async function toTimber(app, mark) {
  const {page} = app;
  for (const key of ['place.shop', 'shop.all', `shop.timber.${mark}`]) {
    await page.waitForFunction((k) => document.querySelector(`#mirror [data-key="${CSS.escape(k)}"]`), key);
    await click(page, key);
    await app.still();
  }
  await page.waitForFunction(() => document.querySelector('#mirror [data-key="shop.steps"]'));
}

/** Ticks step after step, and tells `shown` of each that the screen shows as done and no longer as being saved. */
const tick = (page) => page.evaluate(() => {
  const told = new Set();
  const look = () => {
    for (const row of document.querySelectorAll('#mirror [data-key^="shop.step."]')) {
      const text = row.textContent;
      if (text.includes('done by') && !text.includes('being saved') && !told.has(row.dataset.key)) {
        told.add(row.dataset.key);
        window.shown(row.dataset.key.slice('shop.step.'.length));
      }
    }
  };
  new MutationObserver(look).observe(document.getElementById('mirror'), {subtree: true, childList: true, characterData: true, attributes: true});
  // Through the mirror a click with Shift held is a finger that stays.
  setInterval(() => document.querySelector('#mirror [data-key="shop.next.tick"]')?.dispatchEvent(
    new MouseEvent('click', {bubbles: true, shiftKey: true})), 15);
});

/** A phone's storage, which takes its time: what is written is complete a little later, and a kill comes in between. */
function writeSlowly() {
  const begin = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (stores, mode, options) {
    const transaction = begin.call(this, stores, mode, options);
    const end = performance.now() + Math.random() * 400;  // longer than a frame takes until it shows
    const store = mode === 'readwrite' && transaction.objectStore([stores].flat()[0]);
    const stay = () => {
      if (performance.now() < end) store.get('').onsuccess = stay;
    };
    if (store) stay();
    return transaction;
  };
}

/** The page says that a transaction is complete when it has only been asked for. */
function sayTooEarly() {
  Object.defineProperty(IDBTransaction.prototype, 'oncomplete', {set: (told) => setTimeout(told)});
}

/** So many rounds of ticks and kills, each checked when the browser is open again. Returns what there was. */
async function kills(t, rounds, mutant = () => {}) {
  const random = numbers(20261125);
  const site = await h.server(t);
  const profile = h.scratch();
  const acknowledged = new Set();  // "mark step", in the order in which they showed
  let unseen = 0;  // on disk before a kill kept them from showing
  const openBrowser = async () => {
    const opened = await h.phone(t, profile);
    await opened.addInitScript(writeSlowly);
    await opened.addInitScript(mutant);
    return opened;
  };
  let context = await openBrowser();
  let app = await h.open(context, site.url);
  await app.press(app.role('tab', 'Shop'));
  await app.press(app.key('shop.all'));
  const marks = await app.page.evaluate(() =>
    [...document.querySelectorAll('#mirror [data-key^="shop.timber."]')].map((e) => e.dataset.key.slice('shop.timber.'.length)));
  assert.ok(marks.length > 20);
  let browsers = 0;
  for (let round = 0; round < rounds; ++round) {
    const mark = marks[Math.floor(random() * marks.length)];
    await app.page.exposeFunction('shown', (step) => acknowledged.add(`${mark} ${step}`));
    await toTimber(app, mark);
    await tick(app.page);
    await app.page.waitForTimeout(100 + random() * 700);
    if (random() < 0.5) {
      ++browsers;
      h.killBrowser(profile);
      await app.page.waitForEvent('close').catch(() => {});
      await context.close().catch(() => {});
      context = await openBrowser();
    } else {
      const cdp = await context.newCDPSession(app.page);
      await Promise.race([cdp.send('Page.crash').catch(() => {}), app.page.waitForEvent('crash')]);
      await app.page.close().catch(() => {});
    }
    app = await h.open(context, site.url);
    const events = (await stored(app.page)).map(parsed);
    const told = events.map((e) => `${e.timber} ${e.step}`);
    assert.equal(new Set(told).size, told.length, `round ${round}: a tick is doubled`);
    for (const one of acknowledged) assert.ok(told.includes(one), `round ${round}: ${one} is lost`);
    events.forEach((e, i) => {
      assert.equal(e.sequence, i + 1, `round ${round}: sequence`);
      assert.ok(i === 0 || e.logical > events[i - 1].logical, `round ${round}: order`);
    });
    const order = [...acknowledged].map((one) => told.indexOf(one));
    order.forEach((at, i) => assert.ok(i === 0 || at > order[i - 1], `round ${round}: shown in another order than stored`));
    for (const one of told.filter((o) => !acknowledged.has(o))) {
      acknowledged.add(one);
      ++unseen;
    }
  }
  return {browsers, shown: acknowledged.size - unseen};
}

test('no tick that had shown as saved is lost or doubled by a kill', {timeout: 60_000 + kRounds * 15_000}, async (t) => {
  const {browsers, shown} = await kills(t, kRounds);
  console.log(`kill test: ${kRounds} rounds, ${browsers} of the whole browser, ${shown} ticks shown as saved, none lost`);
  assert.ok(shown > kRounds);
});

test('a page that says too early that a tick is saved is found out', {timeout: 600_000}, async (t) => {
  await assert.rejects(kills(t, 60, sayTooEarly), / is lost$/m);
});
