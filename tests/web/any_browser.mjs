// What the app must do in any browser.
import assert from 'node:assert/strict';
import {writeFileSync} from 'node:fs';

import {pixels} from './png.mjs';
import {join, shots} from './site.mjs';

/** It loads, draws, computes, and does all that again when the server has stopped. `browser`: driven() of window.mjs. */
export async function worksWithAndWithoutNetwork(browser, site, name) {
  await browser.go(site.url);
  assert.equal(await browser.ready(), 'ready');
  const enter = (text) => browser.does('await enterSpan(args[0]); return reading();', text);
  const first = await enter("24'");
  const second = await enter("26' 6 1/2\"");
  assert.notEqual(first, second);

  const png = await browser.screenshot();
  writeFileSync(join(shots, `${name}.png`), png);
  assert.ok(new Set(pixels(png).colours).size > 20, 'the canvas is not flat');
  assert.ok(await browser.run("return !document.getElementById('canvas').getContext('webgl2').isContextLost()"));

  await browser.does('await navigator.serviceWorker.ready;');
  await site.stop();
  await browser.reload();
  assert.equal(await browser.ready(), 'ready');
  assert.equal(await browser.does('await ready(); return reading();'), second);
  assert.equal(await enter("24'"), first, 'it computes with no network');
}
