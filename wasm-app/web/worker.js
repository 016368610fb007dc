// The Worker's side of tasks.js: the app's own module without its page, bytes in and bytes out.

import createCore from 'bentbook_app.js';

let core = null;

const load = (wasm) => createCore({
  noInitialRun: true,
  locateFile: () => wasm,
  progress: (perMille) => postMessage({progress: perMille}),
});

async function run(request, language) {
  const module = await core;
  const tag = new TextEncoder().encode(language);
  const to = module._bb_task_buffer(request.length + tag.length);
  module.HEAPU8.set(request, to);
  module.HEAPU8.set(tag, to + request.length);
  const ok = !!module._bb_task_run(request.length);
  const at = module._bb_task_answer();
  postMessage({ok, bytes: module.HEAPU8.slice(at, at + module._bb_task_answer_size())});
}

onmessage = ({data}) => {
  if (data.wasm) core = load(data.wasm);
  else run(data.request, data.language);
};
