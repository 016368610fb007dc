// Reading screenshots.
export {pixels} from '../../wasm-app/small_png.mjs';
