// The main job, by one finger on a phone: tell it the roof, read the cuts.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import {Role, Touch} from '../../wasm-app/web/bridge.js';
import * as h from './harness.mjs';
import {enterLength, reading} from './roof.mjs';

async function phoneOf(t, viewport) {
  const site = await h.server(t);
  return h.open(await h.phone(t, h.scratch(), {viewport}), site.url);
}

for (const viewport of [h.kPhone, h.kSmall]) {
  const size = `${viewport.width}×${viewport.height}`;

  test(`${size}: a roof entered on the keypad gives the handbooks' answers`, async (t) => {
    const app = await phoneOf(t, viewport);
    // Griffith, Carpentry (1916), app. IV: span 25 ft, 12 in 12: line length 17 ft 8.12 in, printed 17 ft 8 1/8 in.
    await enterPitch(app, 12);
    const echo = await enterLength(app, app.key('rafter.span'), 25);
    assert.match(echo, /25′/);
    await app.shot(`roof_${viewport.width}`);
    assert.match(await words(app), /17′ 8 1⁄8″/);
    assert.match(await app.role('status', 'Plumb cut').textContent(), /45(\.0+)?°/);
    assert.match(await app.role('status', 'Seat cut').textContent(), /45(\.0+)?°/);
    // NAVEDTRA 14044, ch. 2: span 16 ft, 7 in 12: 111.12 in by the table's 13.89, printed 9 ft 3 1/8 in.
    await enterPitch(app, 7);
    await enterLength(app, app.key('rafter.span'), 16);
    assert.match(await words(app), /9′ 3 1⁄8″/);
    // 7 in 12 off the square: atan(7/12) = 30.256°, and its complement (trigonometric tables).
    assert.match(await app.role('status', 'Plumb cut').textContent(), /30\.256/);
    assert.match(await app.role('status', 'Seat cut').textContent(), /59\.744/);
    assert.deepEqual(app.trouble, []);
  });

  test(`${size}: the fraction is picked on the tape, and sums are read back`, async (t) => {
    const app = await phoneOf(t, viewport);
    const echo = await enterLength(app, app.key('rafter.span'), 24, 7, 6);
    assert.match(echo, /24′ 7 3⁄8″/);
    assert.match(await app.key('rafter.span').textContent(), /24′ 7 3⁄8″/);
    await app.press(app.key('rafter.span'));
    await app.press(app.key('keypad.digit.9'));
    await app.shot(`keypad_${viewport.width}`);
    await app.press(app.key('keypad.cancel'));
    assert.match(await app.key('rafter.span').textContent(), /24′ 7 3⁄8″/);
  });

  test(`${size}: a finger scrolls the page and leaves nothing lit or pressed`, async (t) => {
    const app = await phoneOf(t, viewport);
    const before = await reading(app);
    const top = async () => (await app.registry()).find((i) => i.key === 'rafter.answer_left.plumb_cut').y;
    const from = await top();
    await app.drag(viewport.width / 2, viewport.height * 0.7, 0, -viewport.height * 0.35);
    await app.still();
    assert.ok(await top() < from - 20, 'the page has moved');
    assert.equal(await reading(app), before);
    assert.equal(await app.key('keypad.done').count(), 0, 'no dimension was opened under the finger');
  });

  test(`${size}: everything that can be pressed is large enough and in reach`, async (t) => {
    const app = await phoneOf(t, viewport);
    await app.press(app.key('rafter.span'));
    for (const open of [true, false]) {
      for (const item of await app.registry()) {
        if (item.touch === Touch.none || !item.enabled || item.w <= 0 || item.h <= 0) continue;
        const clipped = item.scroll !== 0;  // what scrolls may be cut by the edge of its page
        assert.ok(item.x >= 0 && item.x + item.w <= viewport.width + 0.5, `${item.key} lies within the width`);
        if (!clipped) assert.ok(Math.min(item.w, item.h) >= 44 || item.role === Role.slider, `${item.key} is ${item.w} × ${item.h}`);
      }
      if (open) await app.press(app.key('keypad.cancel'));
    }
  });
}

async function enterPitch(app, rise) {
  await app.press(app.key('rafter.pitch_left'));
  for (const d of String(rise)) await app.press(app.key(`keypad.digit.${d}`));
  await app.press(app.key('keypad.done'));
}

/** All that the mirror says at this moment. */
const words = (app) => app.page.evaluate(() => document.getElementById('mirror').textContent);

test('the phone held sideways shows drawing and answers; a tablet too', async (t) => {
  const site = await h.server(t);
  for (const viewport of [{width: 844, height: 390}, {width: 820, height: 1180}]) {
    const app = await h.open(await h.phone(t, h.scratch(), {viewport}), site.url);
    await app.rest();
    await app.shot(`roof_${viewport.width}x${viewport.height}`);
    assert.ok((await app.drawn()).colours > 20);
    await app.press(app.key('rafter.span'));
    await app.shot(`keypad_${viewport.width}x${viewport.height}`);
    const done = await app.key('keypad.done').boundingBox();
    assert.ok(done.y + done.height <= viewport.height && done.x + done.width <= viewport.width);
  }
});

test('in Spanish, at night, on the phone of a person who reads large', async (t) => {
  const site = await h.server(t);
  const context = await h.phone(t, h.scratch(), {locale: 'es-MX', colorScheme: 'dark', viewport: h.kSmall});
  const app = await h.open(context, site.url);
  await app.rest();
  await app.shot('dark_es');
  assert.equal(await app.page.evaluate(() => document.documentElement.lang), 'es');
  assert.ok((await app.drawn()).colours > 20);
});
