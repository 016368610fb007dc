// With the network gone after one visit, and across kills of the browser.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import * as h from './harness.mjs';
import {enterSpan, reading} from './roof.mjs';

async function visited(t) {
  const site = await h.server(t);
  const profile = h.scratch();
  const context = await h.phone(t, profile);
  const app = await h.open(context, site.url);
  await app.page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  return {site, profile, context, app};
}

test('the server stopped: a reload and a new page work, and so does long work', async (t) => {
  const {site, context, app} = await visited(t);
  await enterSpan(app, '30');
  const before = await reading(app);
  await site.stop();
  await app.page.reload();
  await app.ready();
  assert.equal(await reading(app), before);
  assert.ok((await app.drawn()).colours > 20);
  await app.page.close();
  const again = await h.open(context, `${site.url}?from=home`);
  assert.equal(await reading(again), before);
  assert.deepEqual(again.trouble, []);
});

test('a browser killed and opened again, with no network, shows what was entered', async (t) => {
  const {site, profile, app} = await visited(t);
  await enterSpan(app, '31');
  await app.saved();
  const before = await reading(app);
  await site.stop();
  h.killBrowser(profile);
  await app.page.waitForEvent('close').catch(() => {});
  const again = await h.open(await h.phone(t, profile), site.url);
  assert.equal(await reading(again), before);
});

// Each round enters a value, waits until the app says that it is saved, and kills at once.
const kRounds = process.env.BENTBOOK_LONG === '1' ? 200 : 3;
test(`nothing that was said to be saved is lost in ${kRounds} kills`, {timeout: 60_000 + kRounds * 20_000}, async (t) => {
  const site = await h.server(t);
  const profile = h.scratch();
  let expected = null;
  for (let round = 0; round < kRounds; ++round) {
    const app = await h.open(await h.phone(t, profile), site.url);
    if (expected !== null) assert.equal(await reading(app), expected, `round ${round}`);
    await enterSpan(app, String(20 + (round % 17)));
    await app.saved();
    expected = await reading(app);
    h.killBrowser(profile);
    await app.page.waitForEvent('close').catch(() => {});
  }
});

test('what is lost from the cache is fetched again at the next visit, and all is there with no network', async (t) => {
  const {site, app} = await visited(t);
  await app.page.evaluate(async () => {
    const [name] = await caches.keys();
    const cache = await caches.open(name);
    for (const request of (await cache.keys()).slice(2)) await cache.delete(request);
  });
  await app.page.reload();
  await app.ready();
  await app.page.waitForFunction(async () => {
    const [name] = await caches.keys();
    return (await (await caches.open(name)).keys()).length > 15;
  });
  await site.stop();
  await app.page.reload();
  await app.ready();
  assert.deepEqual(app.trouble, []);
});

test('a storage that cannot be read at start is said, not taken for empty; what was entered is there when it can', async (t) => {
  const {app} = await visited(t);
  await enterSpan(app, '35');
  const before = await reading(app);
  await app.page.addInitScript(() => {
    const get = IDBObjectStore.prototype.get;
    window.readable = () => { IDBObjectStore.prototype.get = get; };
    if (!sessionStorage.broken) IDBObjectStore.prototype.get = function () { throw new DOMException('broken', 'UnknownError'); };
    sessionStorage.broken = '1';
  });
  await app.page.reload();
  await app.ready();
  await app.key('notice.unread').waitFor({state: 'attached'});
  await app.shot('unread');
  await app.page.evaluate(() => window.readable());
  await app.key('notice.unread').waitFor({state: 'detached', timeout: 40_000});
  await app.still();
  assert.equal(await reading(app), before);
});

test('a damaged newest value is not read: the one before it is, and the damaged one is set aside', async (t) => {
  const {app} = await visited(t);
  await enterSpan(app, '30');
  const older = await reading(app);
  await enterSpan(app, '33');
  await app.page.evaluate(() => new Promise((resolve, reject) => {
    const open = indexedDB.open('bentbook');
    open.onerror = () => reject(open.error);
    open.onsuccess = () => {
      const values = open.result.transaction('values', 'readwrite').objectStore('values');
      const slots = [0, 1].map((slot) => new Promise((done) => {
        const get = values.get(`places/${slot}`);
        get.onsuccess = () => done([slot, get.result]);
      }));
      Promise.all(slots).then((all) => {
        const [slot, record] = all.sort((a, b) => b[1].sequence - a[1].sequence)[0];
        record.bytes[3] ^= 1;
        const put = values.put(record, `places/${slot}`);
        put.onsuccess = () => {
          open.result.close();
          resolve();
        };
      });
    };
  }));
  await app.page.reload();
  await app.ready();
  assert.equal(await reading(app), older);
});

test('a language chosen without a network is there, and after a reload too', async (t) => {
  const {site, app} = await visited(t);
  await app.rest();  // the short message that all is stored lies over the last row of a page
  await site.stop();
  for (const key of ['bar.menu', 'menu.settings', 'settings.language.2']) await app.press(app.key(key));
  await app.page.waitForFunction(() => document.documentElement.lang === 'es' &&
    document.querySelector('#mirror [data-key="page.title"]')?.textContent === 'Ajustes');
  await app.saved();
  await app.page.reload();
  await app.ready();
  assert.equal(await app.page.evaluate(() => document.documentElement.lang), 'es');
  assert.deepEqual(app.trouble, []);
});
