// What the size of the page is counted with.
import {brotliCompressSync, constants} from 'node:zlib';

export const brotli = (bytes) => brotliCompressSync(bytes, {params: {[constants.BROTLI_PARAM_QUALITY]: 11}}).length;

/** A file that the app starts without. */
export const isLater = (file) => /^(raising|paper|scan|texts)/.test(file);
