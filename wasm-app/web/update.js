// The service worker from the page's side: everything stored for use with no signal, a new version offered and taken
// into use only when asked.

import {Event} from './bridge.js';
import {scriptAddress} from './trusted.js';

const kLookAgainMs = 60_000;

/** @param flush () → promise: everything is saved. Returns the function that takes the new version into use. */
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
    if (hadController) return;
    await workers.ready;  // said once, when it has become true
    post(Event.offline, '', '', 1);
  }

  workers.addEventListener('controllerchange', () => {
    if (asked) location.reload();
    else if (hadController) offer();  // another tab changed over; this one does when its user says so
  });
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || performance.now() - looked < kLookAgainMs) return;
    looked = performance.now();
    registration?.update().catch(() => {});  // no signal
  });
  register().catch((error) => console.info('not stored for use with no signal:', error.message));

  return async () => {
    asked = true;
    await flush();
    if (registration?.waiting) registration.waiting.postMessage('use-new-version');
    else location.reload();
  };
}
