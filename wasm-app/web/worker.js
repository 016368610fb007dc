// The Worker's side of tasks.js: the headless core, bytes in and bytes out.

import createCore from 'bentbook_worker.js';

let core = null;

async function load(wasm) {
  const module = await createCore({
    locateFile: () => wasm,
    progress: (perMille) => postMessage({progress: perMille}),
  });
  return module;
}

async function run(request) {
  const module = await core;
  module.HEAPU8.set(request, module._bb_buffer(request.length));
  const ok = !!module._bb_run();
  const at = module._bb_answer();
  postMessage({ok, bytes: module.HEAPU8.slice(at, at + module._bb_answer_size())});
}

onmessage = ({data}) => {
  if (data.wasm) core = load(data.wasm);
  else run(data.request);
};
