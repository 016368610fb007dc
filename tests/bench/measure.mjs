// The budgets, measured, as a table for README.md. Called by tests/bench/run, which builds first.
//   node measure.mjs APP_DIST EMPTY_DIST "native alike/unlike ns" "wasm alike/unlike ns" "ms to fold a log" "native frames" "wasm frames" FOLDER
import {readFileSync, readdirSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';

import {brotli, isLater} from './brotli.mjs';
import * as h from '../web/harness.mjs';

const [appDist, emptyDist, nativeNs, wasmNs, foldMs, nativeFrames, wasmFrames, shopFiles] = process.argv.slice(2);
const kStarts = 9;
const kSlower = 4;  // CPU throttling, as a cheap phone beside this machine
const ends = [];
const t = {after: (end) => ends.push(end)};  // the part of node:test's context that the harness uses

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const percentile = (list, p) => [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.ceil(list.length * p) - 1)];

/** `behind`: of the files that the app starts without, else of the others. */
function brotliKb(folder, behind = false) {
  const total = readdirSync(folder).filter((file) => isLater(file) === behind).reduce((sum, file) => {
    const bytes = readFileSync(join(folder, file));
    return sum + Math.min(bytes.length, brotli(bytes));
  }, 0);
  return total / 1024;
}

/** A page with its main thread slowed, gone to `url`; ms from the navigation's start to the first frame's end. */
async function start(context, url) {
  const page = await context.newPage();
  const cdp = await context.newCDPSession(page);
  await cdp.send('Emulation.setCPUThrottlingRate', {rate: kSlower});
  await page.goto(url);
  await page.waitForFunction(() => performance.getEntriesByName('bentbook-ready').length);
  const ms = await page.evaluate(() => performance.getEntriesByName('bentbook-ready')[0].startTime);
  return {page, cdp, ms};
}

/** One cold start, then one with the server gone. */
async function coldAndWarm(folder) {
  const site = await h.server(t, folder);
  const context = await h.phone(t, h.scratch());
  const cold = await start(context, site.url);
  await cold.cdp.send('Emulation.setCPUThrottlingRate', {rate: 1});
  await cold.page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  await cold.page.close();
  await site.stop();
  const warm = await start(context, site.url);
  await context.close();
  return [cold.ms, warm.ms];
}

async function starts() {
  const times = {app: [[], []], empty: [[], []]};
  for (let i = 0; i < kStarts; ++i) {
    for (const [name, folder] of [['app', appDist], ['empty', emptyDist]]) {
      (await coldAndWarm(folder)).forEach((ms, n) => times[name][n].push(ms));
    }
  }
  return Object.fromEntries(Object.entries(times).map(([name, lists]) => [name, lists.map(median)]));
}

async function idleFrames(seconds) {
  const site = await h.server(t, appDist);
  const context = await h.phone(t, h.scratch());
  const app = await h.open(context, site.url);
  await app.rest();
  const before = await app.frames();
  await app.page.waitForTimeout(seconds * 1000);
  const drawn = await app.frames() - before;
  await context.close();
  return drawn;
}

/** Processor time that the main thread spends in each frame's callback while `act` goes on, as the browser's own trace
 * tells it: a clock on the wall would count what else the machine does. */
async function cpuOfFrames(app, act) {
  const cdp = await app.page.context().newCDPSession(app.page);
  await cdp.send('Emulation.setCPUThrottlingRate', {rate: kSlower});
  const events = [];
  cdp.on('Tracing.dataCollected', ({value}) => events.push(...value));
  await cdp.send('Tracing.start',
    {transferMode: 'ReportEvents', traceConfig: {includedCategories: ['devtools.timeline'], excludedCategories: ['*']}});
  await act();
  const complete = new Promise((resolve) => cdp.once('Tracing.tracingComplete', resolve));
  await cdp.send('Tracing.end');
  await complete;
  await cdp.send('Emulation.setCPUThrottlingRate', {rate: 1});
  const ms = events.filter((e) => e.name === 'FireAnimationFrame' && e.tdur !== undefined).map((e) => e.tdur / 1000);
  return {p95: percentile(ms, 0.95), median: median(ms), frames: ms.length};
}

/** A finger goes up and down the page. */
async function scrollAbout(app) {
  const {width, height} = h.kSmall;
  for (let i = 0; i < 6; ++i) {
    const up = i % 2 === 0;
    await app.drag(width / 2, height * (up ? 0.65 : 0.25), 0, height * (up ? -0.4 : 0.4), 30);
    await app.page.waitForTimeout(400);
  }
}

async function onPhone(work) {
  const site = await h.server(t, appDist);
  const context = await h.phone(t, h.scratch(), {viewport: h.kSmall});
  const app = await h.open(context, site.url);
  await app.rest();
  const out = await work(app);
  await context.close();
  return out;
}

const scrolling = () => onPhone((app) => cpuOfFrames(app, () => scrollAbout(app)));

/** Opens a book of so many bays of 10 ft in the Frame place: 21 are 579 timbers, 434 are 11 730. */
async function openLongFrame(app, bays) {
  const file = join(h.scratch(), 'long.json');
  const width = 120 * 203_200_000;
  const frame = {bays: Array.from({length: bays}, (_, i) => ({width, label: i + 2}))};
  writeFileSync(file, JSON.stringify({file: 'book', version: 1, title: 'Long', frame}));
  await app.press(app.key('place.frame'));
  await app.press(app.key('frame.row.books'));
  const [chooser] = await Promise.all([app.page.waitForEvent('filechooser'), app.press(app.key('books.import'))]);
  await chooser.setFiles(file);
  await app.key('import.take_book').waitFor({state: 'attached'});
  await app.press(app.key('import.take_book'));
  await app.rest();
}

const turning = () => onPhone(async (app) => {
  await openLongFrame(app, 21);
  await app.press(app.key('frame.row.view'));
  await app.rest();
  const box = await app.key('view.picture').boundingBox();
  return cpuOfFrames(app, async () => {
    for (let i = 0; i < 4; ++i) {
      await app.drag(box.x + box.width / 2, box.y + box.height / 2, i % 2 ? -120 : 120, 20, 40);
      await app.page.waitForTimeout(300);
    }
  });
});

const scrollingList = () => onPhone(async (app) => {
  await openLongFrame(app, 434);
  await app.press(app.key('frame.row.timbers'));
  await app.rest();
  return cpuOfFrames(app, () => scrollAbout(app));
});

/** A building of 2 010 timbers whose crew has made 40 000 entries: ms until its figures show. */
async function shopOpens(folder) {
  const site = await h.server(t, appDist);
  const context = await h.phone(t, h.scratch(), {viewport: h.kSmall});
  const app = await h.open(context, site.url);
  const take = async (file, key) => {
    const [chooser] = await Promise.all([app.page.waitForEvent('filechooser'), app.press(app.key(key))]);
    await chooser.setFiles(join(folder, file));
  };
  await app.rest();
  await app.press(app.key('place.frame'));
  await app.press(app.key('frame.row.books'));
  await take('long.json', 'books.import');
  await app.key('import.take_book').waitFor({state: 'attached'});
  await app.press(app.key('import.take_book'));
  await app.rest();
  await app.press(app.key('place.shop'));
  await app.press(app.key('shop.pass'));
  await take('long.log', 'pass.open');
  await app.key('receive.take').waitFor({state: 'attached', timeout: 60_000});
  await app.press(app.key('receive.take'));
  await app.page.waitForFunction(() => window.__bentbook.store.appended === 40000, null, {timeout: 120_000});
  await app.saved();
  // It opens where it was left, in the shop: from the start of the page to the figures, and how much of it comes after
  // the first frame.
  const whole = [], after = [];
  for (let i = 0; i < 5; ++i) {
    await app.page.close();
    const page = await context.newPage();
    const cdp = await context.newCDPSession(page);
    await page.addInitScript(() => new MutationObserver((_, observer) => {
      if (!document.querySelector('#mirror [data-key="shop.tick.ready"]')) return;
      observer.disconnect();
      performance.mark('figures');
    }).observe(document, {subtree: true, childList: true}));
    await cdp.send('Emulation.setCPUThrottlingRate', {rate: kSlower});
    await page.goto(site.url);
    await page.waitForFunction(() => performance.getEntriesByName('figures').length);
    const [ready, figures] = await page.evaluate(() =>
      ['bentbook-ready', 'figures'].map((name) => performance.getEntriesByName(name)[0].startTime));
    whole.push(figures);
    after.push(figures - ready);
    app.page = page;
  }
  await context.close();
  return {whole: median(whole), after: median(after)};
}

/** bench_frame's lines by their name. */
const frameTimes = (text) => Object.fromEntries(text.trim().split('\n').map((line) => {
  const [name, timbers, ms] = line.split(' ');
  return [name, {timbers: Number(timbers), ms: Number(ms)}];
}));

function frameRows() {
  const native = frameTimes(nativeFrames), wasm = frameTimes(wasmFrames);
  const budgets = {plan40: [40, 0.5], plan500: [500, 6], plan10000: [10000, 150]};
  for (const [name, [timbers, ms]] of Object.entries(budgets)) {
    row(`plan of ${timbers} timbers solved, native`, `${ms} ms`, `${native[name].ms.toFixed(2)} ms (${native[name].timbers} timbers)`, native[name].ms / ms);
    row('the same, WebAssembly', '2 × native', `${wasm[name].ms.toFixed(2)} ms`, wasm[name].ms / native[name].ms / 2);
  }
  const edits = ['override', 'rough', 'note', 'hand', 'listed'].map((name) => native[name].ms);
  row('one timber edited in a book of 500, native', '1 ms', `${Math.max(...edits).toFixed(2)} ms at most`, Math.max(...edits));
}

/** bench_raising's lines by their name, in seconds. */
function raising(folder, name) {
  return Object.fromEntries(readFileSync(`${folder}/raising${name}`, 'utf8').trim().split('\n')
    .map((line) => line.split(' ')).map(([key, value]) => [key, Number(value)]));
}

function raisingRows(folder) {
  const [small, middle, large, plain, wasm] = ['12', '36', '116', '12plain', '36wasm'].map((n) => raising(folder, n));
  const first = (r, budget) => row(`first good order of ${r.timbers} timbers, fastened with the step, no step hangs on one temporary, every step checked, native`, `${budget} s`, `${r.first.toFixed(2)} s`, r.first / budget);
  first(small, 2);
  first(middle, 5);
  first(large, 30);
  row(`that ${plain.timbers} timbers fastened later fall when whole is told, native`, '1 s', `${plain.first.toFixed(2)} s`, plain.first);
  row(`the same of ${wasm.timbers} timbers, WebAssembly`, '2.5 × native', `${(wasm.first / middle.first).toFixed(2)} × (${wasm.first.toFixed(2)} s)`, wasm.first / middle.first / 2.5);
  row(`a step moved in an order of ${middle.timbers}, checked again, native`, '0.1 s', `${middle.moved.toFixed(3)} s`, middle.moved / 0.1);
}

function row(what, budget, measured, ratio) {
  console.log(`| ${what} | ${budget} | ${measured} | ${ratio.toFixed(2)} |`);
}

try {
  const kb = brotliKb(appDist);
  const {app, empty} = await starts();
  const frames = await idleFrames(60);
  const scroll = await scrolling();
  const turn = await turning();
  const list = await scrollingList();
  const [nativeAlike, nativeUnlike] = nativeNs.split('/').map(Number);
  const [wasmAlike, wasmUnlike] = wasmNs.split('/').map(Number);
  const starting = (n) => `${(app[n] / empty[n]).toFixed(2)} × (${Math.round(app[n])} ms, empty ${Math.round(empty[n])} ms)`;
  console.log('| what | at most | measured | of the budget |');
  console.log('|---|---|---|---|');
  row('files of a first visit, brotli', '480 KB', `${kb.toFixed(1)} KB (empty app ${brotliKb(emptyDist).toFixed(1)}; stored behind it ${brotliKb(appDist, true).toFixed(1)})`, kb / 480);
  row('cold start, CPU slowed 4 ×, median of 9', '1.35 × an empty app', starting(0), app[0] / empty[0] / 1.35);
  row('warm start with no network, the same way', '1.35 × an empty app', starting(1), app[1] / empty[1] / 1.35);
  row('frames in 60 idle seconds', '0', String(frames), frames);
  const frameRow = (what, {p95, median: half, frames: n}) =>
    row(`main-thread CPU a frame while ${what}, CPU slowed 4 ×, p95`, '8 ms',
      `${p95.toFixed(1)} ms (median ${half.toFixed(1)}, ${n} frames)`, p95 / 8);
  frameRow('scrolling', scroll);
  frameRow('turning a frame of 579 timbers', turn);
  frameRow('scrolling a list of 11 730', list);
  row('one common rafter solved, native', '1 µs', `${(nativeAlike / 1000).toFixed(2)} µs (left and right unlike: ${(nativeUnlike / 1000).toFixed(2)})`, nativeAlike / 1000);
  row('one common rafter solved, WebAssembly', '2 µs', `${(wasmAlike / 1000).toFixed(2)} µs (left and right unlike: ${(wasmUnlike / 1000).toFixed(2)})`, wasmAlike / 2000);
  frameRows();
  const opened = await shopOpens(shopFiles);
  row('shop of 2 010 timbers with 40 000 entries opened warm, CPU slowed 4 ×, median of 5', '0.7 s', `${(opened.after / 1000).toFixed(2)} s after the first frame, ${(opened.whole / 1000).toFixed(2)} in all`, opened.whole / 700);
  row('40 000 events of a shop folded, native', '20 ms', `${foldMs} ms`, Number(foldMs) / 20);
  raisingRows(shopFiles);
} finally {
  for (const end of ends.reverse()) await end();
}
