// A roof of any plan, by one finger on a phone: an L is begun from its shape, a wall made longer, and a jack's sheet is
// opened once the roof is the book's frame.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import * as h from './harness.mjs';
import {enterLength} from './roof.mjs';

for (const viewport of [h.kPhone, h.kSmall]) {
  test(`${viewport.width}×${viewport.height}: an L-shaped roof by touch, and a jack's sheet`, {timeout: 180_000}, async (t) => {
    const site = await h.server(t);
    const app = await h.open(await h.phone(t, h.scratch(), {viewport}), site.url);
    await app.rest();
    await app.press(app.role('tab', 'Frame'));
    await app.press(app.key('frame.row.roofs'));
    await app.press(app.key('roofs.shape.1'));
    await app.rest();
    const area = await app.key('roofs.area').textContent();
    await enterLength(app, app.key('roofs.length.1'), 30);
    await app.still();
    assert.match(await app.key('roofs.length.1').textContent(), /30′ 0″/);
    assert.notEqual(await app.key('roofs.area').textContent(), area, 'a longer wing has more roof');
    await app.drawn();
    await app.shot(`roofs_${viewport.width}`);
    await app.press(app.key('roofs.side.2'));
    await app.press(app.role('radio', 'A gable'));
    assert.equal(await app.key('roof_plan.sides.2.pitch').count(), 0, 'a gable has no pitch');
    await app.press(app.key('bar.back'));
    await app.press(app.key('roofs.as_frame'));
    await app.press(app.key('roofs.timbers'));
    const jack = app.page.locator('#mirror button', {hasText: 'Hip jack rafter'}).first();
    await app.press(jack);
    await app.still();
    assert.match(await app.page.locator('#mirror').innerText(), /Jack rafter/);
    await app.drawn();
    await app.shot(`roofs_jack_${viewport.width}`);
    await app.saved();
    assert.deepEqual(app.trouble, []);
  });
}
