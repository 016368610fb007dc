// Keeping the screen on while asked to. The browser takes the lock away whenever the page is hidden; it is asked for
// again when the page comes back.

import {Event} from './bridge.js';

export function makeAwake(post) {
  let wanted = false;
  let lock = null;

  async function take() {
    if (!wanted || lock || document.visibilityState !== 'visible') return;
    try {
      const taken = await navigator.wakeLock.request('screen');
      if (!wanted) {
        taken.release();
        return;
      }
      lock = taken;
      lock.addEventListener('release', () => {
        lock = null;
        post(Event.awake, '', '', 0);
      });
      post(Event.awake, '', '', 1);
    } catch {
      post(Event.awake, '', '', 0);
    }
  }

  document.addEventListener('visibilitychange', take);
  return (on) => {
    wanted = on;
    if (on) take();
    else lock?.release();
  };
}
