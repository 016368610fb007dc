// The Raising place in the browser: by touch, with its own module in a Worker, with the network gone.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import {enter, toFrame} from './frame.mjs';
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
  // It sways for some seconds; a slow machine draws few frames of it.
  await app.page.waitForFunction((n) => window.__bentbook.frames > n + 3, frames);
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
  assert.deepEqual(site.requests.filter((url) => /raising|paper/.test(url)), []);
  await click(app, 'place.raising');
  await there(app, 'raising.empty');
  // Its Worker asks for it once it runs itself.
  const wanted = () => site.requests.some((url) => /raising.*\.wasm/.test(url));
  for (const end = Date.now() + 30_000; !wanted() && Date.now() < end;) await app.page.waitForTimeout(20);
  assert.ok(wanted());
});

test('an order is looked for, with a way to stop it', {timeout: 120_000}, async (t) => {
  const site = await h.server(t);
  const app = await h.open(await h.phone(t, h.scratch()), site.url);
  await click(app, 'place.raising');
  await click(app, 'raising.search');
  await app.key('search.go').dispatchEvent('click');
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

  // The second step is dragged by its grip below the third: what that breaks is said at once, and taken back.
  await app.rest();
  const named = async (key) => (await app.registry()).find((item) => item.key === key);
  const marks = async (step) => (await named(`order.step.${step}`)).name.replace(/^\d+\. /, '');
  const checked = (words) => app.page.waitForFunction((pattern) => {
    const verdict = document.querySelector('#mirror [data-key="order.verdict"]');
    return verdict && new RegExp(pattern).test(verdict.textContent);
  }, words);
  await checked('No collapse found');
  const [second, third] = [await marks(1), await marks(2)];
  assert.match((await named('order.grip.1')).name, /^Move step 2: /);
  const grip = await app.key('order.grip.1').boundingBox(), below = await app.key('order.grip.2').boundingBox();
  assert.ok(grip.width >= 48 && grip.height >= 48);
  const x = grip.x + grip.width / 2, y = grip.y + grip.height / 2;
  const cdp = await app.page.context().newCDPSession(app.page);
  const finger = (type, ...points) => cdp.send('Input.dispatchTouchEvent', {type, touchPoints: points});
  const pull = async () => {
    await finger('touchStart', {x, y, id: 0});
    for (let n = 1; n <= 10; ++n) {
      await finger('touchMove', {x, y: y + (below.height * n) / 10, id: 0});
      await app.page.waitForTimeout(16);
    }
    await app.still();
  };
  await pull();
  assert.equal(await marks(1), second);
  assert.match((await named('order.step.1')).name, /^3\. /);
  const drawn = await app.frames();
  await app.page.waitForTimeout(300);
  assert.equal(await app.frames(), drawn, 'a finger that lies still draws nothing');
  await app.shot('raising_drag');
  await finger('touchStart', {x, y: y + below.height, id: 0}, {x: 60, y, id: 1});
  await finger('touchEnd');
  await app.still();
  assert.equal(await marks(1), second);
  await pull();
  await finger('touchEnd');
  await app.still();
  assert.deepEqual([await marks(1), await marks(2)], [third, second]);
  await app.saved();
  await checked('No collapse found|has a fault');
  await app.press(app.key('bar.undo'));
  assert.deepEqual([await marks(1), await marks(2)], [second, third]);
  await checked('No collapse found');
});

test('the day on the site: five steps ticked offline with a finger held once each, over a reload in the middle', {timeout: 300_000}, async (t) => {
  const site = await h.server(t);
  const app = await h.open(await h.phone(t, h.scratch()), site.url);
  // 24 × 36 ft, plates at 10 ft, 9 in 12.
  await toFrame(app);
  await app.press(app.key('frame.row.books'));
  await app.press(app.role('button', 'New book'));
  for (const [key, n] of [['new.span', 24], ['new.length', 36], ['new.plate', 10], ['new.pitch', 9]]) await enter(app, key, n);
  await app.press(app.role('button', 'Make the frame'));
  await app.saved();
  await app.rest();
  await site.stop();
  await click(app, 'place.raising');
  await click(app, 'raising.search');
  await app.key('search.go').dispatchEvent('click');
  await app.key('search.found').first().waitFor({state: 'attached', timeout: 200_000});
  await click(app, 'search.take');
  await there(app, 'order.step.0');
  await app.saved();
  await app.rest();
  await click(app, 'place.raising');
  const cdp = await app.page.context().newCDPSession(app.page);
  const titled = (n) => app.page.waitForFunction(
    (text) => document.querySelector('#mirror [data-key="step.title"]')?.textContent.startsWith(text), `Step ${n} of 34`);
  // Nothing is scrolled and nothing else is touched: the tick lies in reach at each step's top.
  const tick = async () => {
    const box = await app.key('step.done').boundingBox();
    assert.ok(box.height >= 48 && box.y > 844 / 2 && box.y + box.height <= 844, JSON.stringify(box));
    const at = {x: box.x + box.width / 2, y: box.y + box.height / 2, id: 0};
    await cdp.send('Input.dispatchTouchEvent', {type: 'touchStart', touchPoints: [at]});
    await app.page.waitForTimeout(800);  // a finger that holds
    await cdp.send('Input.dispatchTouchEvent', {type: 'touchEnd', touchPoints: []});
    await app.still();
  };
  await app.press(app.key('raising.next'));
  for (const step of [1, 2, 3]) {
    await titled(step);
    await tick();
  }
  await titled(4);
  await app.saved();
  await app.page.reload();
  await app.ready();
  await app.press(app.key('raising.next'));
  for (const step of [4, 5]) {
    await titled(step);
    await tick();
  }
  await titled(6);
  assert.match(await app.key('step.name').textContent(), /^Plate L-/);
  await app.shot('raising_sixth');
  const {live, colours} = await app.drawn();
  assert.ok(live && colours > 20);
  await app.saved();
  assert.deepEqual(await app.violations(), []);
});
