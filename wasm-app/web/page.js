// Starts the app and ties the browser to it. Order at start: the module is fetched and the window made while stored
// values are read, then the first frame, and only after that what can wait (the service worker).

import createBentbook from 'bentbook_app.js';

import {makeAloud} from './aloud.js';
import {makeAwake} from './awake.js';
import {bridge} from './bridge.js';
import {forwardKeys} from './keys.js';
import {makeWords, putWords} from './language.js';
import {makeMirror} from './mirror.js';
import {makeScan} from './scan.js';
import {copyText, openFile, shareFile, sharePicture, shareText} from './share.js';
import {openStore} from './store.js';
import {makeTasks} from './tasks.js';
import {makeTextEntry} from './text.js';
import {watchVersions} from './update.js';
import {watchView} from './view.js';
import {deviceLanguage, say} from './words.js';

const kRestoreMs = 3000;
const canvas = document.getElementById('canvas');
const notice = document.getElementById('notice');
const {wasm, workerScript, scanScript, raisingWasm, raisingScript, paperWasm, paperScript, words: wordFiles, build} = document.documentElement.dataset;
const decoder = new TextDecoder();

let core = null;
const early = [];  // what is told before the app has started
let tell = (call) => early.push(call);
const post = (...event) => tell(() => core.event(...event));

/** What tests may look at; nothing in the app reads it. frames: drawn since the start. frameMs: main-thread time of the
 * latest frames, oldest first. store: state of store.js. registry(): items of the last frame. idle(): no frame is on its
 * way and the mirror shows the last one. */
const hooks = window.__bentbook = {build, frames: 0, frameMs: [], lost: false};

function fail(id, error) {
  console.error(error ?? id);
  notice.textContent = say(id);
  notice.hidden = false;
  document.documentElement.dataset.state = 'failed';
}

const words = makeWords(JSON.parse(wordFiles));

async function bringWords(tag) {
  const found = await words.fetched(tag);
  if (!found) return;
  if (!putWords(core.module, found)) console.error(`not the words of ${tag}`);
  core.wake(3);
}

const store = openStore(post, (kit, places) => tell(() => core.load(kit, places)));
hooks.store = store.state;

function makeShell() {
  const whole = (path) => new URL(path, document.baseURI).href;
  const told = Object.fromEntries(
      ['progress', 'done', 'failed'].map((kind) => [kind, (...said) => core.tasks[kind](...said)]));
  const tasks = makeTasks(told, {
    app: {script: workerScript, wasm: whole(wasm)}, raising: {script: raisingScript, wasm: whole(raisingWasm)},
    paper: {script: paperScript, wasm: whole(paperWasm)},
  });
  const mirror = makeMirror(document.getElementById('mirror'), (...action) => core.act(...action));
  const aloud = makeAloud(post);
  const text = makeTextEntry(canvas, () => core.registry(), post);
  let useNewVersion = () => {};
  return {
    save: store.save,
    load: store.loadOne,
    erase: store.erase,
    eraseLog: store.eraseLog,
    append: store.append,
    readLog: store.readLog,
    writeHere: store.writeHere,
    share: (name, mime, bytes) => shareFile(post, name, mime, bytes),
    sharePicture: (name, width, height, rgba) => sharePicture(post, name, width, height, rgba),
    copy: (text) => copyText(post, text),
    shareText: (text) => shareText(post, text),
    open: () => openFile(post),
    scan: makeScan(post, new URL(scanScript, document.baseURI).href),
    beginText: text.begin,
    endText: text.end,
    keepAwake: makeAwake(post),
    findVoices: aloud.find,
    readyToSpeak: aloud.ready,
    speak: aloud.speak,
    hush: aloud.hush,
    // The raising answers in figures; the app's own Worker says sentences too.
    startTask: (crew, ...task) => tasks.start(crew, ...task, crew === 'app' ? words.there(document.documentElement.lang) : null),
    cancelTask: tasks.cancel,
    bringWords,
    useNewVersion: () => useNewVersion(),
    registryChanged: () => mirror.soon(core.registry),
    frameDrawn(ms) {
      hooks.frames += 1;
      hooks.frameMs.push(ms);
      if (hooks.frameMs.length > 600) hooks.frameMs.shift();
    },
    idle: () => core.idle() && !mirror.pending,
    looks(language, dark) {
      document.documentElement.lang = language;
      document.querySelector('meta[name=theme-color]').content = dark ? '#101214' : '#ffffff';
      document.documentElement.dataset.theme = dark ? 'night' : 'sun';
    },
    watchVersions() {
      useNewVersion = watchVersions(post, store.flush);
    },
  };
}

function instantiate(shell) {
  const options = {
    canvas, shell,
    locateFile: () => wasm,
    text: (at, size) => decoder.decode(options.HEAPU8.subarray(at, at + size)),
    onAbort: (reason) => fail('failed', reason),
  };
  return createBentbook(options);  // which fills and returns this same object
}

function wakeOnInput() {
  // Capture phase on the window: before anything can stop the event. SDL only queues; this makes the frame that reads.
  const wake = () => core.wake(3);
  for (const type of ['touchstart', 'touchmove', 'touchend', 'touchcancel', 'mousedown', 'mousemove', 'mouseup', 'wheel',
    'mouseleave', 'focus', 'blur']) {
    window.addEventListener(type, wake, {capture: true, passive: true});
  }
  for (const type of ['gesturestart', 'gesturechange', 'gestureend', 'contextmenu']) {
    canvas.addEventListener(type, (event) => event.preventDefault());
  }
}

function watchContext() {
  let timer = 0;
  // Nothing can be drawn, so the page's own words must say what is not stored yet.
  async function reloadWhenSaved() {
    if (await store.flush()) location.reload();
    if (!hooks.lost) return;
    notice.textContent = say('not_stored');
    notice.hidden = false;
    timer = setTimeout(reloadWhenSaved, kRestoreMs);
  }
  canvas.addEventListener('webglcontextlost', (event) => {
    event.preventDefault();  // says that we want it back
    hooks.lost = true;
    core.contextLost();
    timer = setTimeout(reloadWhenSaved, kRestoreMs);
  });
  canvas.addEventListener('webglcontextrestored', () => {
    clearTimeout(timer);
    notice.hidden = true;
    hooks.lost = false;
    if (!core.contextRestored()) fail('no_webgl');
  });
}

function watchHiding() {
  const settle = () => {
    core.settle();
    store.flush();
  };
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') settle();
    else core.wake(3);
  });
  window.addEventListener('pagehide', settle);
  window.addEventListener('pageshow', (event) => {
    if (event.persisted) store.drop();
    core.wake(3);
  });
}

async function start() {
  if (typeof WebAssembly !== 'object') {
    fail('no_wasm');
    return;
  }
  const stored = store.load();
  words.fetched(deviceLanguage());  // most likely the language to start in
  const shell = makeShell();
  core = bridge(await instantiate(shell));
  hooks.registry = core.registry;
  hooks.idle = shell.idle;
  watchView(canvas, core.viewport);
  if (!core.openWindow()) {
    fail('no_webgl');
    return;
  }
  core.load(...await stored);
  await bringWords(core.wantedLanguage());
  if (!core.start()) {
    fail('no_webgl');
    return;
  }
  tell = (call) => call();
  early.splice(0).forEach(tell);
  watchContext();
  wakeOnInput();
  forwardKeys(core);
  watchHiding();
  requestAnimationFrame(() => {
    notice.hidden = true;
    document.documentElement.dataset.state = 'ready';
    performance.mark('bentbook-ready');
    shell.watchVersions();
    shell.findVoices();
  });
}

start().catch((error) => fail('failed', error));
