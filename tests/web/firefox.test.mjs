// The app in Firefox: it loads, draws, computes, goes on with no network, and has every tick after it was killed.
import assert from 'node:assert/strict';
import {writeFileSync} from 'node:fs';
import {test} from 'node:test';

import {drive} from './firefox.mjs';
import {pixels} from './png.mjs';
import {join, scratch, server, shots} from './site.mjs';
import {display, environment} from './window.mjs';

const kEnter = 'await enterSpan(args[0]); return reading();';

async function firefox(t, profile) {
  return drive(t, environment(scratch(), await display(t)), profile);
}

test('Firefox loads, draws, computes, and goes on when the server has stopped', {timeout: 180_000}, async (t) => {
  const site = await server(t);
  const browser = await firefox(t, scratch());
  await browser.go(site.url);
  assert.equal(await browser.ready(), 'ready');
  const first = await browser.does(kEnter, "24'");
  const second = await browser.does(kEnter, "26' 6 1/2\"");
  assert.notEqual(first, second);

  const png = await browser.screenshot();
  writeFileSync(join(shots, 'firefox.png'), png);
  assert.ok(new Set(pixels(png).colours).size > 20, 'the canvas is not flat');
  assert.ok(await browser.run("return !document.getElementById('canvas').getContext('webgl2').isContextLost()"));

  await browser.does('await navigator.serviceWorker.ready;');
  await site.stop();
  await browser.reload();
  assert.equal(await browser.ready(), 'ready');
  assert.equal(await browser.does('await ready(); return reading();'), second);
  assert.equal(await browser.does(kEnter, "24'"), first, 'it computes with no network');
});

test('Firefox killed and started anew, with no network, has the frame and every tick that had shown as saved', {timeout: 180_000}, async (t) => {
  const site = await server(t);
  const profile = scratch();
  const before = await firefox(t, profile);
  await before.go(site.url);
  assert.equal(await before.ready(), 'ready');
  await before.does('await navigator.serviceWorker.ready;');
  const frame = await before.does("await ready(); await toFrame(); await enterInto('frame.bent.span', \"17' 3\\\"\"); return frameReading();");
  assert.match(frame, /17′ 3″/);
  const ticked = await before.does('await tickPost(3); return shopReading();');
  assert.equal((ticked.match(/done by/g) ?? []).length, 3, ticked);
  assert.doesNotMatch(ticked, /being saved/);
  await before.kill();
  await site.stop();

  const after = await firefox(t, profile);
  await after.go(site.url);
  assert.equal(await after.ready(), 'ready');
  assert.equal(await after.does('await ready(); await toPost(); return shopReading();'), ticked);
  assert.equal(await after.does('return frameReading();'), frame);
});
