// What the phone lends: the worker, the share sheet, its own keyboard, the rain lock; and the checksum of storage.
import assert from 'node:assert/strict';
import {readFileSync} from 'node:fs';
import {test} from 'node:test';

import {crc32} from '../../wasm-app/web/crc32.mjs';
import * as h from './harness.mjs';

async function opened(t, before) {
  const site = await h.server(t);
  const context = await h.phone(t, h.scratch());
  if (before) await context.addInitScript(before);
  return {site, app: await h.open(context, site.url)};
}

/** The pattern's page, its share button pressed. */
async function sharePattern(app) {
  await app.rest();  // a short message may lie over the button
  await app.press(app.key('rafter.row.marks'));
  await app.press(app.key('rafter.share_pattern_left'));
}

function checkPattern(svg) {
  assert.match(svg, /^(<\?xml[^>]*>\s*)?<svg /);
  assert.match(svg, /width="[\d.]+mm"/, 'true to size');
  assert.match(svg, /<\/svg>\s*$/);
}

test('the pattern is made by the worker, with no network, and comes out as a file', async (t) => {
  const {site, app} = await opened(t, () => {
    Object.defineProperty(navigator, 'canShare', {value: undefined});
  });
  await app.page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  await site.stop();
  const [file] = await Promise.all([app.page.waitForEvent('download'), sharePattern(app)]);
  assert.match(file.suggestedFilename(), /\.svg$/);
  checkPattern(readFileSync(await file.path(), 'utf8'));
  assert.deepEqual(await app.violations(), []);
  assert.deepEqual(app.trouble, []);
});

test('where there is a share sheet the file goes to it', async (t) => {
  const {app} = await opened(t, () => {
    navigator.canShare = ({files}) => files.length === 1;
    navigator.share = async ({files}) => {
      window.shared = [files[0].name, files[0].type, await files[0].text()];
    };
  });
  await sharePattern(app);
  await app.page.waitForFunction(() => window.shared);
  const [name, type, text] = await app.page.evaluate(() => window.shared);
  assert.match(name, /\.svg$/);
  assert.equal(type, 'image/svg+xml');
  checkPattern(text);
});

test('a page goes out as a picture of all of it, and stays as it was', async (t) => {
  const {app} = await opened(t, () => {
    Object.defineProperty(navigator, 'canShare', {value: undefined});
  });
  await app.press(app.role('tab', 'Frame'));
  const shown = () => app.page.locator('#mirror').innerText();
  await app.rest();
  await app.still();
  const before = await shown();
  await app.rest();
  await app.press(app.key('bar.menu'));
  const [file] = await Promise.all([app.page.waitForEvent('download'), app.press(app.key('menu.picture'))]);
  assert.match(file.suggestedFilename(), /Frame\.png$/);
  const png = readFileSync(await file.path());
  // Width and height stand in the picture's first chunk (PNG, ISO 15948, 11.2.2).
  const [width, height] = [png.readUInt32BE(16), png.readUInt32BE(20)];
  const view = app.page.viewportSize();
  assert.ok(height / width > 1.1 * view.height / view.width, 'also what lies below the edge');
  const inked = await app.page.evaluate(async (bytes) => {
    const picture = await createImageBitmap(new Blob([new Uint8Array(bytes)], {type: 'image/png'}));
    const canvas = new OffscreenCanvas(picture.width, picture.height), pen = canvas.getContext('2d');
    pen.drawImage(picture, 0, 0);
    const dark = [];
    for (const part of [0, 1, 2, 3]) {
      const rows = Math.floor(picture.height / 4);
      const {data} = pen.getImageData(0, part * rows, picture.width, rows);
      let n = 0;
      for (let i = 0; i < data.length; i += 4) if (data[i] < 100 && data[i + 1] < 100) ++n;
      dark.push(n);
    }
    return dark;
  }, [...png]);
  for (const n of inked) assert.ok(n > 200, `each quarter of it is drawn: ${inked}`);
  await app.rest();  // it is said that the picture is being made
  assert.equal(await shown(), before);
  assert.deepEqual(app.trouble, []);
});

test('a saw is renamed in a real text field, which the phone\'s keyboard serves', async (t) => {
  const {app} = await opened(t);
  for (const key of ['bar.menu', 'menu.saws', 'saws.0.edit']) await app.press(app.key(key));
  const drawn = await app.key('saw.name').boundingBox();
  // Touched by hand, without waiting: the focus must come within the gesture.
  await app.page.touchscreen.tap(drawn.x + drawn.width / 2, drawn.y + drawn.height / 2);
  const field = app.page.locator('#field');
  assert.equal(await app.page.evaluate(() => document.activeElement.id), 'field');
  await app.still();
  const box = await field.boundingBox();
  assert.ok(Math.abs(box.x - drawn.x) < 2 && Math.abs(box.y - drawn.y) < 2, 'it lies over the drawn one');
  assert.ok(parseFloat(await field.evaluate((e) => getComputedStyle(e).fontSize)) >= 16, 'or iOS zooms');
  await app.page.keyboard.type('Saw by the door, Nº 2');
  await app.shot('text_field');
  await app.page.keyboard.press('Enter');
  await app.still();
  assert.equal(await app.key('saw.name').inputValue(), 'Saw by the door, Nº 2');
  assert.ok(await field.isHidden());
  await app.saved();
  await app.page.reload();
  await app.ready();
  await app.press(app.key('bar.menu'));
  await app.press(app.key('menu.saws'));
  assert.match(await app.key('saws.0').textContent(), /Saw by the door, Nº 2/);
});

test('a text field left with Escape keeps the old name', async (t) => {
  const {app} = await opened(t);
  for (const key of ['bar.menu', 'menu.saws', 'saws.0.edit']) await app.press(app.key(key));
  const before = await app.key('saw.name').inputValue();
  await app.press(app.key('saw.name'));
  await app.page.keyboard.type('wrong');
  await app.page.keyboard.press('Escape');
  await app.still();
  assert.equal(await app.key('saw.name').inputValue(), before);
});

test('the rain lock lets nothing change until it was held', async (t) => {
  const {app} = await opened(t);
  const before = await app.key('rafter.span').textContent();
  const box = await app.key('rafter.span').boundingBox();
  await app.press(app.key('bar.lock'));
  await app.page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
  await app.still();
  assert.equal(await app.key('keypad.done').count(), 0);
  await app.shot('rain_lock');
  const ring = await app.key('lock.release').boundingBox();
  const at = {x: ring.x + ring.width / 2, y: ring.y + ring.height / 2};
  const cdp = await app.page.context().newCDPSession(app.page);
  const hold = async (ms) => {
    await cdp.send('Input.dispatchTouchEvent', {type: 'touchStart', touchPoints: [at]});
    await app.page.waitForTimeout(ms);
    await cdp.send('Input.dispatchTouchEvent', {type: 'touchEnd', touchPoints: []});
    await app.still();
  };
  await hold(200);
  assert.equal(await app.key('lock.release').count(), 1, 'a drop does not unlock');
  await hold(1500);
  assert.equal(await app.key('lock.release').count(), 0);
  await app.press(app.key('rafter.span'));
  assert.equal(await app.key('keypad.done').count(), 1);
  await app.press(app.key('keypad.cancel'));
  assert.equal(await app.key('rafter.span').textContent(), before);
});

test('stored values carry the standard checksum', () => {
  // The check value of CRC-32 in ISO/IEC 13239, as catalogues of cyclic codes print it.
  assert.equal(crc32(Buffer.from('123456789')), 0xcbf43926);
  assert.equal(crc32(Buffer.alloc(0)), 0);
});
