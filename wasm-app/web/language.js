// Words of the languages that are not in the module: a file each (make_dist.mjs), brought when it is wanted and put into
// the page's module and the Worker's (wasm-app/words.cpp).

const encoder = new TextEncoder();

/** False where the bytes are not this build's words of that language. */
export function putWords(module, {tag, bytes}) {
  const name = encoder.encode(tag);
  const at = module._bb_words_buffer(name.length + bytes.length);
  module.HEAPU8.set(name, at);
  module.HEAPU8.set(bytes, at + name.length);
  return !!module._bb_words(name.length);
}

/** @param files tag → path */
export function makeWords(files) {
  const asked = new Map(), there = new Map();

  async function get(tag) {
    const response = await fetch(files[tag]);
    if (!response.ok) throw new Error(`${files[tag]}: ${response.status}`);
    there.set(tag, {tag, bytes: new Uint8Array(await response.arrayBuffer())});
  }

  /** {tag, bytes}, or null where the module has them or they cannot be had now. */
  async function fetched(tag) {
    if (files[tag] && !asked.has(tag)) asked.set(tag, get(tag));
    try {
      await asked.get(tag);
    } catch (error) {
      console.error('no words', error);
      asked.delete(tag);
    }
    return there.get(tag) ?? null;
  }

  return {fetched, there: (tag) => there.get(tag) ?? null};
}
