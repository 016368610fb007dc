// On paper: a PDF is made in its own Worker with no network, and read back by a program that is not ours (poppler).
import assert from 'node:assert/strict';
import {execFileSync} from 'node:child_process';
import {readFileSync} from 'node:fs';
import {test} from 'node:test';

import * as h from './harness.mjs';

async function opened(t) {
  const site = await h.server(t);
  const context = await h.phone(t, h.scratch());
  await context.addInitScript(() => {
    Object.defineProperty(navigator, 'canShare', {value: undefined});
  });
  const app = await h.open(context, site.url);
  await app.press(app.role('tab', 'Frame'));
  await app.page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  await app.rest();  // everything is stored by then
  await site.stop();
  return app;
}

async function file(app, key) {
  const [made] = await Promise.all([app.page.waitForEvent('download'), app.press(app.key(key))]);
  return {name: made.suggestedFilename(), path: await made.path()};
}

const textOf = (path) => execFileSync('pdftotext', ['-layout', path, '-']).toString();

test('every timber\'s sheet comes out as a PDF, with no network', async (t) => {
  const app = await opened(t);
  await app.press(app.key('bar.menu'));
  await app.press(app.key('menu.paper'));
  const {name, path} = await file(app, 'paper.make');
  assert.match(name, /Timber sheets\.pdf$/);
  const text = textOf(path);
  for (const mark of ['P-A1', 'T-1', 'B-A1.1']) assert.ok(text.includes(mark), `${mark} has its sheet`);
  assert.ok(text.split('\f').length > 5, 'pages');
  assert.deepEqual(await app.violations(), []);
  assert.deepEqual(app.trouble, []);
});

test('one timber is printed from its own page: sheet, patterns, label; patterns as files too', async (t) => {
  const app = await opened(t);
  for (const key of ['bar.find', 'go_to.kind.B', 'go_to.mark.B-A1.1', 'sheet.paper']) await app.press(app.key(key));
  const sheet = textOf((await file(app, 'paper.make')).path);
  assert.ok(sheet.includes('B-A1.1') && !sheet.includes('Common rafter'), 'this one alone');
  await app.press(app.key('paper.what.1'));
  const pattern = await file(app, 'paper.make');
  assert.match(readFileSync(pattern.path, 'latin1'), /^%PDF-/);
  const dxf = app.page.locator('#mirror').locator('button:has-text(".dxf")').first();
  const [made] = await Promise.all([app.page.waitForEvent('download'), app.press(dxf)]);
  assert.match(readFileSync(await made.path(), 'utf8'), /SECTION[\s\S]*ENTITIES[\s\S]*EOF\s*$/);
  await app.press(app.key('paper.what.2'));
  assert.ok(textOf((await file(app, 'paper.make')).path).includes('B-A1.1'), 'its label');
  assert.deepEqual(app.trouble, []);
});
