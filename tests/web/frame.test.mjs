// The frame and its books, by touch on a phone. Where a number is looked at it follows by plain arithmetic from what
// was entered: a post under an 8 in plate whose top is at 10 ft, with a 3 in tenon, is 120 − 8 + 3 in long.
import assert from 'node:assert/strict';
import {readFileSync, writeFileSync} from 'node:fs';
import {test} from 'node:test';

import * as f from './frame.mjs';
import * as h from './harness.mjs';

async function opened(t, options) {
  const site = await h.server(t);
  const profile = h.scratch();
  return {site, profile, app: await h.open(await h.phone(t, profile, options), site.url)};
}

const closed = (app) => app.page.waitForEvent('close').catch(() => {});

test('four numbers by touch make a frame; a post is set apart, taken back, and survives kills', {timeout: 240_000}, async (t) => {
  const {site, profile, app} = await opened(t);
  await f.makeFrame(app);
  await app.shot('frame_390');
  assert.match(await app.role('button', 'Span').textContent(), /20′ 0″/);
  assert.match(await app.role('button', 'Height of plate').textContent(), /10′ 0″/);
  await f.openSheet(app, 'P-A1');
  assert.match(await app.role('status', 'Tip to tip').first().textContent(), /9′ 7″/);
  await app.shot('sheet_390');

  await f.enterAndStore(app, 'frame.overrides.@P-A1.section.breadth', 10);
  assert.match(await f.text(app, 'sheet.overridden'), /Set apart from the plan/);
  await app.press(app.role('button', 'Undo'));
  assert.equal(await app.key('sheet.overridden').count(), 0);
  await f.enterAndStore(app, 'frame.overrides.@P-A1.section.breadth', 9);
  // In the middle of the next edit, typed and not yet done, the renderer goes and then the whole browser.
  await app.press(app.key('frame.overrides.@P-A1.section.depth'));
  await f.digits(app, 1);
  const cdp = await app.page.context().newCDPSession(app.page);
  await Promise.race([cdp.send('Page.crash').catch(() => {}), app.page.waitForEvent('crash')]);
  h.killBrowser(profile);
  await closed(app);

  const again = await h.open(await h.phone(t, profile), site.url);
  await f.toFrame(again);
  assert.match(await again.role('button', 'Span').textContent(), /20′ 0″/);
  await f.openSheet(again, 'P-A1');
  assert.match(await f.text(again, 'sheet.overridden'), /Set apart from the plan/);
  assert.match(await f.text(again, 'frame.overrides.@P-A1.section.breadth'), /9″/);
  assert.match(await f.text(again, 'frame.overrides.@P-A1.section.depth'), /8″/);
  assert.deepEqual(again.trouble, []);
});

/** How many colours the middle of the picture shows, and its pixels. */
async function picture(app) {
  const box = await app.key('view.picture').boundingBox();
  const {image, live} = await app.drawn();
  const scale = image.width / h.kPhone.width;
  const rows = [];
  for (let y = Math.ceil((box.y + 8) * scale); y < (box.y + box.height - 8) * scale; y += 1)
    rows.push(...image.colours.slice(y * image.width, (y + 1) * image.width));
  return {live, colours: new Set(rows).size, rows};
}

test('the frame in the round is drawn, turns, lights a timber, and survives a lost context', {timeout: 240_000}, async (t) => {
  const {app} = await opened(t);
  await f.toFrame(app);
  await app.press(app.role('button', 'The frame in the round'));
  await app.rest();
  const first = await picture(app);
  assert.ok(first.live);
  assert.ok(first.colours > 20, `${first.colours} colours: the picture is not flat`);
  await app.shot('view_390');

  const box = await app.key('view.picture').boundingBox();
  await app.drag(box.x + box.width / 2, box.y + box.height / 2, 0, 60);
  await app.still();
  const turned = await picture(app);
  assert.notDeepEqual(turned.rows, first.rows, 'it has turned');
  await app.press(app.role('radio', 'Gable'));
  await app.press(app.role('button', 'The next bent'));
  assert.equal(await f.text(app, 'view.bent'), 'Bent 1');

  const call = (what) => app.page.evaluate((name) => {
    window.loser ??= document.getElementById('canvas').getContext('webgl2').getExtension('WEBGL_lose_context');
    window.loser[name]();
  }, what);
  const before = await picture(app);
  await call('loseContext');
  await app.page.waitForFunction(() => window.__bentbook.lost);
  await call('restoreContext');
  await app.page.waitForFunction(() => !window.__bentbook.lost);
  await app.still();
  assert.deepEqual((await picture(app)).rows, before.rows, 'pixel for pixel the same');

  // A post of the first bent stands at the lower left when seen along the ridge: from the left edge, the first pixels
  // that are not ground at a quarter of the picture's height, and half a post further.
  const image = (await app.drawn()).image;
  const scale = image.width / h.kPhone.width, y = box.y + box.height * 0.7;
  const row = image.colours.slice(Math.round(y * scale) * image.width, (Math.round(y * scale) + 1) * image.width);
  const left = Math.round((box.x + 8) * scale);
  const post = row.findIndex((colour, x) => x > left && colour !== row[left]);
  await app.page.touchscreen.tap(post / scale + 5, y);
  await app.still();
  await app.shot('view_lit_390');
  await app.press(app.key('view.sheet'));
  assert.match(await f.text(app, 'sheet.heading'), /^P-A1 · Post/);
  assert.deepEqual(app.trouble, []);
});

test('a book goes out as a file and comes in on another phone; a damaged one is refused, the books stay', {timeout: 180_000}, async (t) => {
  const noSheet = () => Object.defineProperty(navigator, 'canShare', {value: undefined});
  const site = await h.server(t);
  const context = await h.phone(t, h.scratch());
  await context.addInitScript(noSheet);
  const app = await h.open(context, site.url);
  await f.makeFrame(app);
  await app.press(app.key('frame.row.books'));
  await app.press(app.role('button', 'Name, share, copy or delete New building'));
  const [file] = await Promise.all([app.page.waitForEvent('download'), app.press(app.role('button', 'Share the book’s file'))]);
  assert.match(file.suggestedFilename(), /^New building\.json$/);
  const bytes = readFileSync(await file.path(), 'utf8');
  assert.equal(JSON.parse(bytes).file, 'book');

  const folder = h.scratch();
  const [whole, damaged] = ['whole.json', 'damaged.json'].map((name) => h.join(folder, name));
  writeFileSync(whole, bytes);
  writeFileSync(damaged, bytes.slice(0, bytes.length / 2));
  const other = await h.open(await h.phone(t, h.scratch()), site.url);
  await f.toFrame(other);
  const takeIn = async (path) => {
    await other.press(other.key('frame.row.books'));
    const [chooser] = await Promise.all([other.page.waitForEvent('filechooser'), other.press(other.role('button', 'Open a file'))]);
    await chooser.setFiles(path);
    await other.page.waitForFunction(() => document.querySelector('#mirror [data-key="import.name"]'));
    await other.still();
  };
  await takeIn(damaged);
  await other.shot('damaged_390');
  assert.equal(await other.key('import.take_book').count(), 0);
  assert.match(await f.text(other, 'import.refused'), /\S/);
  await other.press(other.key('bar.back'));
  assert.match(await other.role('button', 'Span').textContent(), /14′ 0″/);

  await takeIn(whole);
  await other.press(other.role('button', 'Put it on the shelf and open it'));
  assert.match(await other.role('button', 'Span').textContent(), /20′ 0″/);
  await other.saved();
  await other.page.reload();
  await other.ready();
  await f.toFrame(other);
  assert.match(await other.role('button', 'Span').textContent(), /20′ 0″/);
  assert.deepEqual(other.trouble, []);
});

test('a shelf of which nothing sound is left is not taken for an empty one', {timeout: 120_000}, async (t) => {
  const {app} = await opened(t);
  await f.makeFrame(app);
  await app.page.evaluate(() => new Promise((resolve, reject) => {
    const open = indexedDB.open('bentbook');
    open.onerror = () => reject(open.error);
    open.onsuccess = () => {
      const values = open.result.transaction('values', 'readwrite').objectStore('values');
      let left = 2;
      for (const slot of [0, 1]) {
        values.get(`shelf/${slot}`).onsuccess = ({target}) => {
          if (target.result) {
            target.result.bytes[3] ^= 1;
            values.put(target.result, `shelf/${slot}`);
          }
          if (--left === 0) open.result.close();
        };
      }
      values.transaction.oncomplete = resolve;
    };
  }));
  await app.page.reload();
  await app.ready();
  await f.toFrame(app);
  assert.equal(await app.role('button', 'Span').count(), 0);
  assert.match(await app.page.evaluate(() => document.getElementById('mirror').textContent), /The list of your books cannot be read/);
});
