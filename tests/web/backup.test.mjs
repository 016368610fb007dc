// A lost phone in the browser: a copy of everything made in one profile, taken in by another one, kept over a reload, and
// made there again: the same books and the same log.
import assert from 'node:assert/strict';
import {readFileSync} from 'node:fs';
import {test} from 'node:test';

import * as f from './frame.mjs';
import * as h from './harness.mjs';

const noSheet = () => Object.defineProperty(navigator, 'canShare', {value: undefined});
const click = async (app, key) => {
  await app.key(key).first().waitFor({state: 'attached'});
  await app.key(key).first().dispatchEvent('click');
  await app.still();
};

async function phone(t, site) {
  const context = await h.phone(t, h.scratch());
  await context.addInitScript(noSheet);
  return h.open(context, site.url);
}

/** The file that goes out, and where it lies. */
async function copy(app) {
  await app.rest();
  await click(app, 'place.frame');
  if (await app.key('bar.back').count()) await click(app, 'place.frame');
  await click(app, 'frame.row.books');
  await click(app, 'books.copy');
  await app.key('copy.share').waitFor({state: 'attached'});
  const [file] = await Promise.all([app.page.waitForEvent('download'), app.press(app.key('copy.share'))]);
  assert.match(file.suggestedFilename(), /^Bentbook \d{4}-\d\d-\d\d\.json$/);
  const path = await file.path();
  return {path, all: JSON.parse(readFileSync(path, 'utf8'))};
}

async function takeIn(app, path) {
  await app.rest();
  await click(app, 'place.frame');
  if (await app.key('bar.back').count()) await click(app, 'place.frame');
  await click(app, 'frame.row.books');
  const [chooser] = await Promise.all([app.page.waitForEvent('filechooser'), app.press(app.key('books.import'))]);
  await chooser.setFiles(path);
  await app.key('take.book.0').waitFor({state: 'attached'});
  await app.still();
}

const parts = ({books, logs}) => ({books: books.map(({title, identity, bytes}) => ({title, identity, bytes})), logs});

test('a copy of everything goes from one phone to the other, and only once', {timeout: 240_000}, async (t) => {
  const site = await h.server(t);
  const old = await phone(t, site);
  await f.makeFrame(old);
  for (const key of ['place.shop', 'shop.all', 'shop.timber.P-A1']) await click(old, key);
  await old.key('shop.next.tick').dispatchEvent('click', {shiftKey: true, bubbles: true});
  await old.page.waitForFunction(() => window.__bentbook.store.appended >= 1);
  const made = await copy(old);
  assert.equal(made.all.books.length, 2);
  assert.equal(made.all.logs.length, 1);

  const fresh = await phone(t, site);
  await takeIn(fresh, made.path);
  await fresh.shot('take_in_390');
  await click(fresh, 'take.all');
  await fresh.key('take.nothing').waitFor({state: 'attached'});
  await fresh.page.reload();
  await fresh.ready();
  const again = await copy(fresh);
  assert.deepEqual(parts(again.all), parts(made.all));
  await takeIn(fresh, made.path);
  await fresh.key('take.nothing').waitFor({state: 'attached'});
  assert.equal(await fresh.key('take.all').count(), 0);
  assert.deepEqual(old.trouble, []);
  assert.deepEqual(fresh.trouble, []);
});
