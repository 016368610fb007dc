// The mirror: what a screen reader and a keyboard find, and what axe-core says of it.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import * as h from './harness.mjs';
import {reading} from './roof.mjs';

async function opened(t, options) {
  const site = await h.server(t);
  return h.open(await h.phone(t, h.scratch(), options), site.url);
}

async function axe(app) {
  await app.page.evaluate(`${h.axeSource}; 0`);
  const {violations} = await app.page.evaluate(() => window.axe.run());
  return violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html).slice(0, 3).join(' | ')}`);
}

test('axe-core finds nothing on any place, nor with the keypad up', async (t) => {
  const app = await opened(t);
  assert.deepEqual(await axe(app), []);
  await app.press(app.key('rafter.span'));
  assert.deepEqual(await axe(app), [], 'keypad');
  await app.press(app.key('keypad.cancel'));
  for (const tab of await app.page.locator('#mirror').getByRole('tab').all()) {
    await app.press(tab);
    assert.deepEqual(await axe(app), [], await tab.textContent());
  }
});

test('every widget is mirrored with its role, name and rectangle', async (t) => {
  const app = await opened(t);
  const items = await app.registry();
  const mirrored = await app.page.evaluate(() => Object.fromEntries(
    [...document.querySelectorAll('#mirror [data-key]')].map((e) => {
      const {x, y, width, height} = e.getBoundingClientRect();
      return [e.dataset.key, {text: `${e.getAttribute('aria-label') ?? ''} ${e.textContent} ${e.value ?? ''}`, x, y, width, height}];
    })));
  assert.ok(items.length > 10);
  assert.equal(new Set(items.map((i) => i.key)).size, items.length, 'keys are unique');
  for (const item of items) {
    const element = mirrored[item.key];
    assert.ok(element, `${item.key} is mirrored`);
    assert.ok(element.text.includes(item.name), `${item.key} is called ${item.name}`);
    assert.ok(item.name.trim(), `${item.key} has a name`);
    assert.ok(Math.abs(element.x - item.x) <= 1 && Math.abs(element.y - item.y) <= 1, `${item.key} lies where it is drawn`);
  }
  assert.equal(Object.keys(mirrored).length, items.length, 'and nothing else is');
});

test('with a keyboard alone a span is entered and the answer heard', async (t) => {
  const app = await opened(t);
  const {page} = app;
  const before = await reading(app);
  await app.key('rafter.span').focus();
  await page.keyboard.press('Enter');
  await app.still();
  await page.keyboard.type("27' 6 1/2\"", {delay: 30});
  await app.still();
  assert.match(await app.key('keypad.echo').textContent(), /27′ 6 1⁄2″/);
  await page.keyboard.press('Enter');
  await app.still();
  assert.equal(await page.evaluate(() => document.activeElement.dataset.key), 'rafter.span', 'the focus is back');
  assert.match(await app.key('rafter.span').textContent(), /27′ 6 1⁄2″/);
  assert.notEqual(await reading(app), before);
  const live = app.role('status', 'Tip to tip').first();
  assert.equal(await live.getAttribute('aria-live'), 'polite');
});

test('a screen reader sets the whole entry at once, and the tape as a slider', async (t) => {
  const app = await opened(t);
  await app.key('rafter.span').dispatchEvent('click');
  await app.still();
  const tape = app.key('keypad.tape');
  assert.equal(await tape.getAttribute('type'), 'range');
  await tape.evaluate((e) => {
    e.value = 4;
    e.dispatchEvent(new Event('input'));
  });
  await app.still();
  assert.match(await app.key('keypad.echo').textContent(), /1⁄4″/);
  await app.key('keypad.entry').evaluate((e) => {
    e.value = '26-3-1/2';
    e.dispatchEvent(new Event('input'));
  });
  await app.still();
  assert.match(await app.key('keypad.echo').textContent(), /26′ 3 1⁄2″/);
  await app.key('keypad.done').dispatchEvent('click');
  await app.still();
  assert.match(await app.key('rafter.span').textContent(), /26′ 3 1⁄2″/);
});

test('the page says its language; texts can be zoomed', async (t) => {
  const english = await opened(t);
  assert.equal(await english.page.evaluate(() => document.documentElement.lang), 'en');
  const viewport = await english.page.locator('meta[name=viewport]').getAttribute('content');
  assert.doesNotMatch(viewport, /user-scalable|maximum-scale/);
});
