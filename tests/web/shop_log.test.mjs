// The crew's log in the browser: a second tab, a full disk, a damaged snapshot, and from one phone's screen to the
// other's camera.
import assert from 'node:assert/strict';
import {writeFileSync} from 'node:fs';
import {test} from 'node:test';

import {crc32} from '../../wasm-app/web/crc32.mjs';
import * as h from './harness.mjs';

/** A finger that stays, through the mirror. */
const hold = (app, key) => app.key(key).dispatchEvent('click', {shiftKey: true, bubbles: true});
const appended = (app, count) => app.page.waitForFunction((n) => window.__bentbook.store.appended >= n, count);

/** Presses through the mirror, whatever short message lies over it. */
async function click(app, key) {
  await app.key(key).first().waitFor({state: 'attached'});
  await app.key(key).first().dispatchEvent('click');
  await app.still();
}

async function toPost(app) {
  for (const key of ['place.shop', 'shop.all', 'shop.timber.P-A1', 'shop.steps']) {
    if (key === 'shop.steps') await app.key(key).waitFor({state: 'attached'});
    else await click(app, key);
  }
}

const steps = (app) => app.page.evaluate(() =>
  [...document.querySelectorAll('#mirror [data-key^="shop.step."]')].map((e) => e.textContent));
const done = async (app) => (await steps(app)).filter((text) => text.includes('done by')).length;

/** A log as core/shop/log/README.md describes it: so many notes of one other phone, from the sequence `first` on. */
function logFile(first, count) {
  const utf8 = new TextEncoder(), sum = (text) => crc32(utf8.encode(text)).toString(16).padStart(8, '0');
  let file = 'bentbook log 1\tdemo\n';
  for (let n = first; n < first + count; ++n) {
    const line = `e\t00000000000000a7\t${n}\t${n}\t1764000000000\tdone\tBo\tP-A${n % 50 ? 2 : 1}\town.${n}\t\t`;
    file += `${line}\t${sum(line)}\n`;
  }
  return `${file}end\t${count}\t${sum(file)}\n`;
}

async function takeIn(app, folder, first, count) {
  const file = h.join(folder, `${first}.log`);
  writeFileSync(file, logFile(first, count));
  await click(app, 'place.shop');
  await click(app, 'shop.pass');
  await app.key('pass.open').waitFor({state: 'attached'});
  const chosen = app.page.waitForEvent('filechooser');
  await app.press(app.key('pass.open'));
  await (await chosen).setFiles(file);
  const {appended: before, saved} = await app.store();
  await click(app, 'receive.take');
  await appended(app, before + count);
  await app.page.waitForFunction((n) => window.__bentbook.store.saved > n && window.__bentbook.store.pending === 0, saved);
}

test('a second tab reads the log and ticks nothing; it goes on from the first one\'s ticks', async (t) => {
  const site = await h.server(t);
  const context = await h.phone(t, h.scratch());
  const first = await h.open(context, site.url);
  await toPost(first);
  await hold(first, 'shop.next.tick');
  await appended(first, 1);
  const second = await h.open(context, site.url);
  await second.page.waitForFunction(() => window.__bentbook.store.readOnly);
  await toPost(second);
  assert.equal(await done(second), 1);
  await hold(second, 'shop.next.tick');
  await second.still();
  assert.equal(await done(second), 1, 'the second tab ticks nothing');
  assert.equal((await second.store()).appended, 0);
  await first.page.bringToFront();
  await hold(first, 'shop.next.tick');
  await appended(first, 2);
  await first.page.close();
  await second.page.bringToFront();
  await second.page.waitForFunction(() => window.__bentbook.store.writer);
  await second.still();
  await second.shot('shop_second_tab');
  await toPost(second);
  assert.equal(await done(second), 2);
  await hold(second, 'shop.next.tick');
  await appended(second, 1);
  await second.still();
  assert.equal(await done(second), 3);
});

test('a tick that finds the storage full is said, and made once there is room', async (t) => {
  const site = await h.server(t);
  const context = await h.phone(t, h.scratch());
  const app = await h.open(context, site.url);
  await toPost(app);
  // Chromium can be told that an origin has no room; what IndexedDB then throws is what a full phone throws.
  await app.page.evaluate(() => {
    const add = IDBObjectStore.prototype.add;
    window.roomAgain = () => { IDBObjectStore.prototype.add = add; };
    IDBObjectStore.prototype.add = function () { throw new DOMException('full', 'QuotaExceededError'); };
  });
  await hold(app, 'shop.next.tick');
  await app.key('notice.tick_failed').waitFor({state: 'attached'});
  await app.still();
  await app.shot('tick_failed');
  assert.equal((await app.store()).appended, 0);
  await app.page.evaluate(() => window.roomAgain());
  await click(app, 'notice.tick_again');
  await appended(app, 1);
  await app.page.waitForFunction(() => !document.querySelector('#mirror [data-key="notice.tick_failed"]'));
  await app.page.reload();
  await app.ready();
  await toPost(app);
  assert.equal(await done(app), 1);
});

/** Flips a byte in the stored generations of a value that `which` picks by its age, newest first. */
const damage = (page, key, count) => page.evaluate(([k, n]) => new Promise((resolve, reject) => {
  const opening = indexedDB.open('bentbook');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const db = opening.result, transaction = db.transaction('values', 'readwrite'), values = transaction.objectStore('values');
    const found = [];
    values.openCursor().onsuccess = ({target}) => {
      const cursor = target.result;
      if (cursor) {
        if ([`${k}/0`, `${k}/1`].includes(cursor.key)) found.push([cursor.key, cursor.value]);
        cursor.continue();
        return;
      }
      found.sort((a, b) => b[1].sequence - a[1].sequence);
      for (const [name, record] of found.slice(0, n)) {
        record.bytes[record.bytes.length >> 1] ^= 1;
        values.put(record, name);
      }
    };
    transaction.oncomplete = () => {
      db.close();
      resolve(found.length);
    };
  };
}), [key, count]);

test('a damaged snapshot is passed over: the one before it, then the log alone, give the same shop', async (t) => {
  const site = await h.server(t);
  const context = await h.phone(t, h.scratch());
  const folder = h.scratch();
  let app = await h.open(context, site.url);
  await takeIn(app, folder, 1, 300);
  await takeIn(app, folder, 301, 300);
  const figures = async () => {
    await toPost(app);
    return app.page.evaluate(() => [...document.querySelectorAll('#mirror [data-key^="shop.flag."]')].map((e) => e.textContent).join());
  };
  const before = await figures();
  assert.match(before, /own\.600/);
  for (const count of [1, 2]) {
    assert.equal(await damage(app.page, 'demo.shop', count), 2, 'two generations are kept');
    await app.page.close();
    app = await h.open(context, site.url);
    assert.ok(await figures() === before);
  }
});

/** A picture as the one frame of an uncompressed film, for Chromium's make-believe camera. */
function film(file, {width, height, colours}) {
  const w = width & ~1, h2 = height & ~1;
  const luma = Buffer.alloc(w * h2), grey = Buffer.alloc((w * h2) / 4, 128);
  for (let y = 0; y < h2; ++y)
    for (let x = 0; x < w; ++x) luma[y * w + x] = 16 + ((colours[y * width + x] & 0xFF) * 219) / 255;
  const frame = Buffer.concat([Buffer.from('FRAME\n'), luma, grey, grey]);
  writeFileSync(file, Buffer.concat([Buffer.from(`YUV4MPEG2 W${w} H${h2} F10:1 Ip A1:1 C420jpeg\n`), frame, frame, frame]));
}

test('the log goes from one phone\'s screen into the other\'s camera', {timeout: 120_000}, async (t) => {
  const site = await h.server(t);
  const sender = await h.open(await h.phone(t, h.scratch()), site.url);
  await toPost(sender);
  await hold(sender, 'shop.next.tick');
  await appended(sender, 1);
  await click(sender, 'place.shop');
  await click(sender, 'shop.pass');
  await click(sender, 'pass.codes');
  await sender.key('codes.code').waitFor({state: 'attached'});
  await sender.rest();
  await sender.shot('codes');
  const folder = h.scratch(), picture = h.join(folder, 'codes.y4m');
  const screen = h.pixels(await sender.page.screenshot());
  film(picture, screen);

  const context = await h.phone(t, h.scratch(), {permissions: ['camera']},
    ['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream', `--use-file-for-fake-video-capture=${picture}`]);
  const receiver = await h.open(context, site.url);
  await click(receiver, 'place.shop');
  await click(receiver, 'shop.pass');
  await click(receiver, 'pass.scan');
  await receiver.key('receive.take').waitFor({state: 'attached', timeout: 60_000});
  assert.equal(await receiver.page.locator('#scan').count(), 0, 'the camera is off again');
  await click(receiver, 'receive.take');
  await appended(receiver, 1);
  await toPost(receiver);
  assert.equal(await done(receiver), 1);
  assert.deepEqual(await receiver.violations(), []);
});

test('a camera that is refused is said in words', async (t) => {
  const site = await h.server(t);
  const context = await h.phone(t, h.scratch(), {permissions: []}, ['--use-fake-device-for-media-stream', '--deny-permission-prompts']);
  const app = await h.open(context, site.url);
  await click(app, 'place.shop');
  await click(app, 'shop.pass');
  await click(app, 'pass.scan');
  await app.page.waitForFunction(() => /camera/i.test(document.querySelector('#mirror [data-key="toast"]')?.textContent ?? ''));
  assert.equal(await app.page.locator('#scan').count(), 0);
});
