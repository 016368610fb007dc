// Long work, off the frame: Workers with the headless core, one for the raising and one for all else. Of each one task
// runs at a time, others wait. Ending the worker is how a task is cancelled; the next one gets a new worker.

import {Event} from './bridge.js';
import {say} from './words.js';

function makeCrew(post, urls) {
  let worker = null;
  let running = null;
  const waiting = [];

  function next() {
    running = waiting.shift() ?? null;
    if (!running) return;
    worker ??= hire();
    worker.postMessage({request: running.request, language: document.documentElement.lang});
  }

  function done(kind, text) {
    const {id} = running;
    post(kind, id, text);
    next();
  }

  function hire() {
    const made = new Worker(urls.script, {type: 'module'});
    made.onmessage = ({data}) => {
      if (!running || made !== worker) return;
      if ('progress' in data) post(Event.taskProgress, running.id, '', data.progress);
      else done(data.ok ? Event.taskDone : Event.taskFailed, data.bytes);
    };
    made.onerror = () => {
      if (made !== worker) return;
      dismiss();
      if (running) done(Event.taskFailed, say('no_worker'));
    };
    made.postMessage({wasm: urls.wasm});
    return made;
  }

  function dismiss() {
    worker?.terminate();
    worker = null;
  }

  return {
    start(id, request) {
      waiting.push({id, request});
      if (!running) next();
    },
    cancel(id) {
      const at = waiting.findIndex((t) => t.id === id);
      if (at >= 0) waiting.splice(at, 1);
      if (running?.id !== id) return;
      dismiss();
      done(Event.taskFailed, 'cancelled');
    },
  };
}

/** @param urls {app, raising}: {script, wasm} of each module */
export function makeTasks(post, urls) {
  const app = makeCrew(post, urls.app), raising = makeCrew(post, urls.raising);
  const crewOf = (id) => id.startsWith('raise') ? raising : app;
  return {
    start: (id, request) => crewOf(id).start(id, request),
    cancel: (id) => crewOf(id).cancel(id),
  };
}
