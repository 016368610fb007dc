import createEmpty from 'bench_empty.js';

const canvas = document.getElementById('canvas');
const module = await createEmpty({canvas, locateFile: () => document.documentElement.dataset.wasm});
const {width, height} = canvas.getBoundingClientRect();
module._bb_start(width, height, devicePixelRatio);
requestAnimationFrame(() => {
  document.documentElement.dataset.state = 'ready';
  performance.mark('bentbook-ready');
  navigator.serviceWorker.register('sw.js');
});
