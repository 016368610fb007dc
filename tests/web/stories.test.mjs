// What a crew does most, counted in touches: nothing is scrolled to, every key stands on the screen when it is wanted.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import * as f from './frame.mjs';
import * as h from './harness.mjs';

/** A phone whose touches are counted. */
async function counted(t) {
  const site = await h.server(t);
  const app = await h.open(await h.phone(t, h.scratch()), site.url);
  let touches = 0;
  const at = async (key) => {
    await app.rest();
    const box = await app.key(key).boundingBox();
    assert.ok(box, `${key} is there`);
    assert.ok(box.height >= 40 && box.y >= 0 && box.y + box.height <= h.kPhone.height, `${key} stands on the screen`);
    touches += 1;
    return {x: box.x + box.width / 2, y: box.y + box.height / 2};
  };
  const touch = async (...keys) => {
    for (const key of keys) {
      const {x, y} = await at(key);
      await app.page.touchscreen.tap(x, y);
      await app.still();
    }
  };
  const hold = async (key) => {
    const point = await at(key);
    const cdp = await app.page.context().newCDPSession(app.page);
    await cdp.send('Input.dispatchTouchEvent', {type: 'touchStart', touchPoints: [point]});
    // As long as a hand that means it: the ring is full after 450 ms of frames.
    await app.page.waitForTimeout(1200);
    await cdp.send('Input.dispatchTouchEvent', {type: 'touchEnd', touchPoints: []});
    await app.still();
  };
  return {app, touch, hold, touches: () => touches};
}

test('at the bench, with no book: slot, gauge, depth and pins of a 3/8 in plate in an 8 × 10 in four touches', {timeout: 120_000}, async (t) => {
  const {app, touch, touches} = await counted(t);
  await touch('place.shop', 'shop.bench', 'bench.sections.2', 'bench.plates.1');
  assert.ok(touches() <= 6);
  assert.match(await f.text(app, 'bench.slot'), /7⁄16″/);
  // (8 − 3/8 − 1/16) / 2
  assert.match(await f.text(app, 'bench.gauge'), /3 25⁄32″/);
  assert.match(await f.text(app, 'bench.depth'), /7 3⁄4″/);
  assert.match(await f.text(app, 'bench.pin'), /6″/);
  const {image, live} = await app.drawn();
  assert.ok(live && new Set(image.colours).size > 20, 'it is drawn');
  await app.shot('bench_390');
  assert.deepEqual(app.trouble, []);
});

test('from the frame to a brace and the angle that its end is cut at in four touches', {timeout: 120_000}, async (t) => {
  const {app, touch, touches} = await counted(t);
  await app.press(app.key('place.frame'));
  await touch('bar.find', 'go_to.kind.B', 'go_to.mark.B-A1.1', 'sheet.cuts');
  assert.ok(touches() <= 4);
  assert.match(await f.text(app, 'shop.step.number.table_deg'), /45°/);
});

test('a frame of 24 × 36 ft, plates at 10 ft, 9 in 12, in nine touches', {timeout: 120_000}, async (t) => {
  const {app, touch, touches} = await counted(t);
  await touch('bar.menu', 'menu.books', 'books.new', 'new.span', 'keypad.usual.2', 'keypad.usual.1', 'keypad.usual.2');
  await touch('keypad.usual.2', 'new.make');
  assert.ok(touches() <= 12);
  assert.match(await f.text(app, 'frame.bent.span'), /24′ 0″/);
  assert.match(await f.text(app, 'frame.wall.length'), /36′ 0″/);
  assert.match(await f.text(app, 'frame.bent.plate_left'), /10′ 0″/);
  assert.match(await f.text(app, 'frame.bent.pitch_left'), /9:12/);
});

test('from the frame to plates throughout in two touches, to a joint\'s measure in three', {timeout: 120_000}, async (t) => {
  const {app, touch, touches} = await counted(t);
  await app.press(app.key('place.frame'));
  await app.intoView(app.key('frame.row.joints'));
  await touch('frame.row.joints', 'joinery.plates');
  assert.equal(touches(), 2);
  assert.ok(await app.key('joinery.plates').isChecked());
  await touch('bar.back');
  await app.intoView(app.key('frame.row.joints'));
  const before = touches();
  await touch('frame.row.joints', 'joints.tie_post', 'joint.side.reach');
  assert.ok(touches() - before <= 3);
  assert.match(await f.text(app, 'keypad.echo'), /7 1⁄2″/);
  const {image, live} = await app.drawn();
  assert.ok(live && new Set(image.colours).size > 20, 'it is drawn');
});

test('a saw setting\'s whole batch is ticked with three touches', {timeout: 120_000}, async (t) => {
  const {app, touch, hold, touches} = await counted(t);
  // Two posts are laid out: before that nothing can be sawn.
  await app.press(app.key('place.shop'));
  await app.press(app.key('shop.all'));
  for (const mark of ['P-A1', 'P-A2']) {
    await app.press(app.key(`shop.timber.${mark}`));
    await hold('shop.next.tick');
    await app.press(app.key('bar.back'));
  }
  await app.press(app.key('bar.back'));
  const before = touches();
  await touch('place.shop', 'shop.place.saw');
  const [, count] = (await f.text(app, 'shop.setting.0.all')).match(/(\d+)/);
  await hold('shop.setting.0.all');
  assert.equal(touches() - before, 3);
  assert.match(await f.text(app, 'toast'), new RegExp(`\\b${count}\\b`));
});

test('a held timber cannot be ticked, from its card or with its batch, until it is let go by name', {timeout: 120_000}, async (t) => {
  const {app} = await counted(t);
  const hold = async (key) => {
    await app.rest();
    const box = await app.intoView(app.key(key));
    const cdp = await app.page.context().newCDPSession(app.page);
    const point = {x: box.x + box.width / 2, y: box.y + box.height / 2};
    await cdp.send('Input.dispatchTouchEvent', {type: 'touchStart', touchPoints: [point]});
    await app.page.waitForTimeout(1200);
    await cdp.send('Input.dispatchTouchEvent', {type: 'touchEnd', touchPoints: []});
    await app.still();
  };
  await app.press(app.key('place.shop'));
  await app.press(app.key('shop.place.saw'));
  // With nothing laid out all of it waits, folded.
  if (await app.key('shop.setting.0.all').count() === 0) await app.press(app.key('shop.later'));
  const [, all] = (await f.text(app, 'shop.setting.0.all')).match(/(\d+)/);
  // Those that are the same are one row until it is pressed.
  if (await app.key('shop.setting.0.alike.0').count() > 0) await app.press(app.key('shop.setting.0.alike.0'));
  const first = await app.page.locator('[data-key^="shop.setting.0."][data-key*="-"]').first().getAttribute('data-key');
  await app.press(app.key(first));
  await app.press(app.key('shop.stop'));
  await app.key('shop.hold_reason.1').focus();  // scrolled to, as a finger would
  await app.rest();
  await app.press(app.key('shop.hold_reason.1'));
  await app.key('shop.hold_now').focus();
  await hold('shop.hold_now');
  assert.match(await f.text(app, 'shop.hold'), /Twist/);
  assert.equal(await app.key('shop.step.tick').count(), 0);
  assert.ok(await app.key('shop.step.stopped').isDisabled());
  await app.press(app.key('bar.back'));
  const [, left] = (await f.text(app, 'shop.setting.0.all')).match(/(\d+)/);
  assert.equal(Number(left), Number(all) - 1, 'the batch goes on without it');
});
