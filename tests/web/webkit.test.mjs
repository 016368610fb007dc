// The app in WebKit: it loads, draws, computes, goes on with no network, and keeps its data over a new start of the
// browser.
import assert from 'node:assert/strict';
import {copyFileSync, cpSync, readFileSync, writeFileSync} from 'node:fs';
import {test} from 'node:test';

import {worksWithAndWithoutNetwork} from './any_browser.mjs';
import {dist, join, scratch, server} from './site.mjs';
import * as webkit from './webkit.mjs';
import {display, helpers, soon} from './window.mjs';

test('WebKit loads, draws, computes, and goes on when the server has stopped', {timeout: 180_000}, async (t) => {
  const site = await server(t);
  const env = webkit.environment(scratch(), await display(t));
  await worksWithAndWithoutNetwork(await webkit.drive(t, env), site, 'webkit');
});

/** The page with a script more, which does what the returned function is given and reports to the server by asking for /report?… */
function reportingSite(folder) {
  cpSync(dist, folder, {recursive: true});
  copyFileSync(helpers, join(folder, 'in_page.js'));
  const index = readFileSync(join(folder, 'index.html'), 'utf8');
  writeFileSync(join(folder, 'index.html'),
      index.replace('</head>', '<script src="in_page.js"></script><script src="steps.js"></script></head>'));
  return (steps, read = 'reading') => writeFileSync(join(folder, 'steps.js'),
      `ready().then(async () => { ${steps} }).then(() => ${read}()).then((r) => fetch('report?' + encodeURIComponent(r)))`);
}

async function report(site) {
  for (let tries = 0; tries < 600; ++tries) {
    const url = site.requests.find((r) => r.startsWith('/report?'));
    if (url) return decodeURIComponent(url.slice('/report?'.length));
    await soon();
  }
  throw new Error('the page did not report');
}

test('WebKit killed and started anew shows what was entered', {timeout: 180_000}, async (t) => {
  const folder = scratch();
  const setSteps = reportingSite(folder);
  const site = await server(t, folder);
  const env = webkit.environment(scratch(), await display(t));

  setSteps("await enterSpan(\"27' 3\\\"\");");
  const first = await webkit.startPlainly(t, env, site.url);
  const entered = await report(site);
  await first.end();

  site.requests.length = 0;
  setSteps('');
  await webkit.startPlainly(t, env, site.url);
  assert.equal(await report(site), entered);
});

test('WebKit opens the frame; killed and started anew it shows the book as it was left', {timeout: 180_000}, async (t) => {
  const folder = scratch();
  const setSteps = reportingSite(folder);
  const site = await server(t, folder);
  const env = webkit.environment(scratch(), await display(t));

  setSteps("await toFrame(); await enterInto('frame.bent.span', \"17' 3\\\"\");", 'frameReading');
  const first = await webkit.startPlainly(t, env, site.url);
  const entered = await report(site);
  assert.match(entered, /17′ 3″/);
  await first.end();

  site.requests.length = 0;
  setSteps('', 'frameReading');
  await webkit.startPlainly(t, env, site.url);
  assert.equal(await report(site), entered);
});

test('WebKit killed and started anew has every tick that had shown as saved', {timeout: 180_000}, async (t) => {
  const folder = scratch();
  const setSteps = reportingSite(folder);
  const site = await server(t, folder);
  const env = webkit.environment(scratch(), await display(t));

  setSteps('await tickPost(3);', 'shopReading');
  const first = await webkit.startPlainly(t, env, site.url);
  const ticked = await report(site);
  assert.equal((ticked.match(/done by/g) ?? []).length, 3, ticked);
  assert.doesNotMatch(ticked, /being saved/);
  await first.end();

  site.requests.length = 0;
  setSteps('await toPost();', 'shopReading');
  await webkit.startPlainly(t, env, site.url);
  assert.equal(await report(site), ticked);
});
