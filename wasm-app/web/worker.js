// The Worker's side of tasks.js: a module without its page, bytes in and bytes out. Whatever goes wrong is told, since a
// rejected promise here would reach nobody.

import createCore from 'bentbook_app.js';

import {putWords} from './language.js';

let core = null;

const load = (wasm) => createCore({
  noInitialRun: true,
  locateFile: () => wasm,
  progress: (perMille) => postMessage({progress: perMille}),
});

async function run({request, frame, words}) {
  const module = await core;
  if (words) putWords(module, words);
  const to = module._bb_task_buffer(request.length + frame.length);
  module.HEAPU8.set(request, to);
  module.HEAPU8.set(frame, to + request.length);
  module._bb_task_run(request.length);
  const at = module._bb_task_answer();
  postMessage({bytes: module.HEAPU8.slice(at, at + module._bb_task_answer_size())});
}

onmessage = async ({data}) => {
  try {
    if (!data.wasm) return await run(data);
    core = load(data.wasm);
    await core;
    postMessage({loaded: true});
  } catch (error) {
    postMessage({broke: String(error)});
  }
};
