// Long work, off the frame: Workers with a headless core, one for the raising, one for PDF and one for all else. Of each one task runs
// at a time, others wait. Ending its Worker is how a running task is cancelled, and what becomes of a Worker that broke;
// the next task gets a new one.

import {scriptAddress} from './trusted.js';

/** @param tell {progress(name, perMille), done(name, bytes), failed(name, loaded)} */
function makeCrew(tell, hire) {
  let worker = null;
  let loaded = false;
  let running = null;
  const waiting = [];

  function next() {
    running = waiting.shift() ?? null;
    if (!running) return;
    try {
      worker ??= employ();
      const {name: _, ...message} = running;
      worker.postMessage(message);
    } catch (error) {
      broke(error);
    }
  }

  function end(say) {
    const {name} = running;
    running = null;
    say(name);
    if (!running) next();
  }

  function broke(error) {
    console.error('a Worker broke', error);
    const was = loaded;
    dismiss();
    if (running) end((name) => tell.failed(name, was));
  }

  function employ() {
    const made = hire();
    made.onmessage = ({data}) => {
      if (made !== worker) return;
      if (data.loaded) loaded = true;
      else if ('broke' in data) broke(data.broke);
      else if (!running) return;
      else if ('progress' in data) tell.progress(running.name, data.progress);
      else end((name) => tell.done(name, data.bytes));
    };
    made.onerror = made.onmessageerror = (error) => {
      if (made === worker) broke(error.message);
    };
    return made;
  }

  function dismiss() {
    worker?.terminate();
    worker = null;
    loaded = false;
  }

  return {
    start(name, request, frame, words) {
      waiting.push({name, request, frame, words});
      if (!running) next();
    },
    /** What is cancelled says nothing any more. */
    cancel(name) {
      const at = waiting.findIndex((task) => task.name === name);
      if (at >= 0) waiting.splice(at, 1);
      if (running?.name !== name) return;
      dismiss();
      end(() => {});
    },
  };
}

function hireWorker({script, wasm}) {
  const made = new Worker(scriptAddress(script), {type: 'module'});
  made.postMessage({wasm});
  return made;
}

/** @param urls {app, raising, paper}: {script, wasm} of each module */
export function makeTasks(tell, urls, hire = hireWorker) {
  const crews = Object.fromEntries(Object.keys(urls).map((crew) => [crew, makeCrew(tell, () => hire(urls[crew]))]));
  return {
    /** @param crew one of urls
     * @param words of the language that is shown, or null (language.js) */
    start: (crew, name, request, frame, words = null) => crews[crew].start(name, request, frame, words),
    cancel: (name) => Object.values(crews).forEach((crew) => crew.cancel(name)),
  };
}
