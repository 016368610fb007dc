// The service worker from the page's side: everything stored for use with no signal, a new version offered and taken
// into use only when asked.

import {Event} from './bridge.js';
import {scriptAddress} from './trusted.js';

const kLookAgainMs = 60_000;
const kFirstTryMs = 30_000, kLastTryMs = 600_000;

/** @param flush () → promise: true when everything is saved; where it is not, the page stays. Returns the function that takes the new version into use. */
export function watchVersions(post, flush) {
  const workers = navigator.serviceWorker;
  if (!workers) return () => {};
  let registration = null;
  let asked = false;
  let looked = performance.now();
  const hadController = !!workers.controller;

  function offer() {
    post(Event.newVersion);
  }

  function watch(worker) {
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed' && workers.controller) offer();
    });
  }

  async function register() {
    registration = await workers.register(scriptAddress('sw.js'), {updateViaCache: 'none'});
    if (registration.waiting && workers.controller) offer();
    watch(registration.installing);
    registration.addEventListener('updatefound', () => watch(registration.installing));
  }

  let tries = null;
  let tryMs = kFirstTryMs;
  /** Not everything is stored: said, and tried again; the worker goes on from what it has. */
  function notYet(why) {
    post(Event.offline, '', why, 0);
    clearTimeout(tries);
    tries = setTimeout(tryAgain, tryMs);
    tryMs = Math.min(2 * tryMs, kLastTryMs);
  }

  function tryAgain() {
    if (tries === null) return;
    clearTimeout(tries);
    tries = null;
    if (registration?.active) registration.active.postMessage('complete');
    else register().catch(() => notYet('signal'));
  }

  workers.addEventListener('message', ({data}) => {
    if (data.notUsableOffline) notYet(data.notUsableOffline);
  });
  window.addEventListener('online', tryAgain);
  if (!hadController) workers.ready.then(() => post(Event.offline, '', '', 1));  // said once, when it has become true

  workers.addEventListener('controllerchange', () => {
    if (asked) location.reload();
    else if (hadController) offer();  // another tab changed over; this one does when its user says so
  });
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || performance.now() - looked < kLookAgainMs) return;
    looked = performance.now();
    registration?.update().catch(() => {});  // no signal
  });
  register().catch((error) => {
    if (error.name === 'TypeError') notYet('signal');
    else console.info('not stored for use with no signal:', error.message);
  });

  return async () => {
    if (!await flush()) return;
    asked = true;
    if (registration?.waiting) registration.waiting.postMessage('use-new-version');
    else location.reload();
  };
}
