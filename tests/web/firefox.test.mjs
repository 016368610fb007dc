// The app in Firefox: it loads, draws, computes, goes on with no network, and has every tick after it was killed.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import {worksWithAndWithoutNetwork} from './any_browser.mjs';
import {drive} from './firefox.mjs';
import {scratch, server} from './site.mjs';
import {display, environment} from './window.mjs';

async function firefox(t, profile) {
  return drive(t, environment(scratch(), await display(t)), profile);
}

test('Firefox loads, draws, computes, and goes on when the server has stopped', {timeout: 180_000}, async (t) => {
  const site = await server(t);
  await worksWithAndWithoutNetwork(await firefox(t, scratch()), site, 'firefox');
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
