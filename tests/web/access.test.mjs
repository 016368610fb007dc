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

/** Registry and mirror say the same. */
async function checkMirror(app, where) {
  const items = await app.registry();
  const mirrored = await app.page.evaluate(() => Object.fromEntries(
    [...document.querySelectorAll('#mirror [data-key]')].map((e) => {
      const {x, y} = e.getBoundingClientRect();
      return [e.dataset.key, {text: `${e.getAttribute('aria-label') ?? ''} ${e.textContent} ${e.value ?? ''}`, x, y}];
    })));
  assert.equal(new Set(items.map((i) => i.key)).size, items.length, `${where}: keys are unique`);
  for (const item of items) {
    const element = mirrored[item.key];
    assert.ok(element, `${where}: ${item.key} is mirrored`);
    assert.ok(item.name.trim(), `${where}: ${item.key} has a name`);
    assert.ok(element.text.includes(item.name), `${where}: ${item.key} is called ${item.name}, not ${element.text}`);
    assert.ok(Math.abs(element.x - item.x) <= 1 && Math.abs(element.y - item.y) <= 1, `${where}: ${item.key} lies where it is drawn`);
  }
  assert.equal(Object.keys(mirrored).length, items.length, `${where}: and nothing else is`);
  return items.length;
}

test('on every page each widget is mirrored with its role, name and rectangle, and axe-core finds nothing', async (t) => {
  const app = await opened(t);
  await app.rest();
  assert.ok(await checkMirror(app, 'rafter') > 10);
  const visit = async (...keys) => {
    for (const key of keys) await app.press(app.key(key));
    const where = keys.at(-1);
    await checkMirror(app, where);
    assert.deepEqual(await axe(app), [], where);
  };
  const back = async () => {
    while (await app.key('bar.back').count()) await app.press(app.key('bar.back'));
  };
  for (const part of ['foot', 'peak', 'tail']) {
    await visit(`rafter.part.${part}`);
    await back();
  }
  for (const row of ['marks', 'saw', 'square', 'sides', 'timber', 'feet']) {
    await visit(`rafter.row.${row}`);
    await back();
  }
  await visit('bar.menu', 'menu.saws', 'saws.0.edit');
  await back();
  await visit('bar.menu', 'menu.saws');
  await back();
  await visit('bar.menu', 'menu.settings');
  await back();
  await visit('bar.menu', 'menu.help');
  await back();
  await visit('place.angles');
  await visit('place.frame');
  for (const row of ['view', 'options', 'bays', 'sections', 'joints']) {
    await visit(`frame.row.${row}`);
    await back();
  }
  await visit('frame.row.books', 'books.book1.edit');
  await back();
  await visit('frame.row.books', 'books.new');
  await back();
  await visit('frame.row.timbers');
  await visit('list.P-A1');
  await visit('sheet.defects');
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
