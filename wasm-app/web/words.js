// The few words that the page itself must have before (or without) the app.

const words = {
  en: {
    no_webgl: 'This browser cannot draw Bentbook: it has no WebGL 2. Bring the browser up to date, or try another one.',
    no_wasm: 'This browser cannot run Bentbook: it has no WebAssembly. Bring the browser up to date, or try another one.',
    failed: 'Bentbook did not start. Close it and open it again. What you entered is still stored.',
    scan_close: 'Close',
    scan_hint: 'Hold the camera over the codes on the other phone.',
    no_worker: 'This part of Bentbook could not be loaded. Open the app once with a signal, then try again.',
  },
  es: {
    no_webgl: 'Este navegador no puede dibujar Bentbook: no tiene WebGL 2. Actualice el navegador o pruebe con otro.',
    no_wasm: 'Este navegador no puede ejecutar Bentbook: no tiene WebAssembly. Actualice el navegador o pruebe con otro.',
    failed: 'Bentbook no arrancó. Ciérrelo y ábralo de nuevo. Lo que anotó sigue guardado.',
    scan_close: 'Cerrar',
    scan_hint: 'Ponga la cámara sobre los códigos del otro teléfono.',
    no_worker: 'Esta parte de Bentbook no se pudo cargar. Abra la aplicación una vez con señal e intente de nuevo.',
  },
};

const spanish = () => (document.documentElement.dataset.state === 'ready' ? document.documentElement.lang : navigator.language)
  ?.startsWith('es');

export const say = (id) => (spanish() ? words.es : words.en)[id];
