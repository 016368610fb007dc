// The Raising place in the browser: by touch, with its own module in a Worker, with the network gone.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import * as h from './harness.mjs';

/** Presses through the mirror, whatever short message lies over it. */
async function click(app, key) {
  await app.key(key).first().waitFor({state: 'attached'});
  await app.key(key).first().dispatchEvent('click');
  await app.still();
}

const there = (app, key) => app.key(key).first().waitFor({state: 'attached', timeout: 60_000});

/** One step of these timbers, by their names. */
async function bring(app, marks) {
  for (const mark of marks) await click(app, `tap.mark.${mark}`);
  await click(app, 'tap.together');
}

test('an order by tapping is checked in the Worker, also with no network; braces are proposed and taken', {timeout: 120_000}, async (t) => {
  const site = await h.server(t);
  const app = await h.open(await h.phone(t, h.scratch()), site.url);
  await app.rest();
  await site.stop();
  await app.press(app.role('tab', 'Raising'));
  await there(app, 'raising.empty');
  await app.press(app.key('raising.tap'));
  // A finger on the picture's middle finds a timber.
  const box = await app.key('tap.picture').boundingBox();
  await app.page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
  await app.still();
  await there(app, 'tap.picked');
  await app.shot('raising_tap');
  await click(app, 'tap.none');
  await bring(app, ['P-A1', 'P-E1', 'T-1', 'K-C1', 'B-A1.1', 'B-E1.1']);
  await click(app, 'bar.back');
  await there(app, 'raising.unstable');
  await app.shot('raising');
  await click(app, 'raising.order');
  await click(app, 'order.step.0');
  await there(app, 'step.mode.0');
  await app.shot('raising_step');
  const frames = await app.frames();
  await click(app, 'step.mode.0.show').catch(() => {});
  await app.page.waitForFunction((n) => window.__bentbook.frames > n + 10, frames);
  await there(app, 'step.take_braces');
  await click(app, 'step.take_braces');
  await there(app, 'step.verdict');
  assert.match(await app.key('step.verdict').textContent(), /No collapse found, as assumed/);
  const {live, colours} = await app.drawn();
  assert.ok(live && colours > 20);
  await app.saved();
  await app.page.reload();
  await app.ready();
  await there(app, 'raising.left_out');
  await app.shot('raising_again');
  await click(app, 'raising.next');
  await there(app, 'step.verdict');
  await app.shot('raising_day');
  assert.deepEqual(await app.violations(), []);
});

test('the raising’s module is not loaded before it is wanted', async (t) => {
  const site = await h.server(t);
  const app = await h.open(await h.phone(t, h.scratch(), {serviceWorkers: 'block'}), site.url);
  await app.still();
  assert.deepEqual(site.requests.filter((url) => /raising/.test(url)), []);
  await click(app, 'place.raising');
  await there(app, 'raising.empty');
  assert.ok(site.requests.some((url) => /raising.*\.wasm/.test(url)));
});

test('an order is looked for, with a way to stop it', {timeout: 120_000}, async (t) => {
  const site = await h.server(t);
  const app = await h.open(await h.phone(t, h.scratch()), site.url);
  await click(app, 'place.raising');
  await click(app, 'raising.search');
  await click(app, 'raising.fasteners');
  await click(app, 'search.go');
  await there(app, 'search.go.stop');
  await click(app, 'search.go.stop');
  await there(app, 'search.go');
  await click(app, 'search.go');
  await there(app, 'search.found');
  await app.shot('raising_search');
  await click(app, 'search.take');
  await there(app, 'order.step.0');
  await app.shot('raising_order');
  assert.deepEqual(await app.violations(), []);
});
