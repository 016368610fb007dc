// Calls between the page and the WebAssembly module. Bytes go in through the module's buffer, out as copies.

const encoder = new TextEncoder();
const decoder = new TextDecoder();

/** Role numbers of core/ui/registry.h. */
export const Role = {
  button: 0, checkbox: 1, radio: 2, tab: 3, slider: 4, textField: 5, heading: 6, text: 7, answer: 8, dialog: 9,
  image: 10,
};

/** EventKind numbers of core/ui/platform.h. */
export const Event = {
  saved: 0, saveFailed: 1, readOnly: 2, notPersistent: 3, shared: 4, fileOpened: 5, textCommitted: 6,
  textCancelled: 7, taskProgress: 8, taskDone: 9, taskFailed: 10, newVersion: 11, offline: 12, awake: 13,
  loaded: 14, appended: 15, appendFailed: 16, logRead: 17, scanned: 18,
  scanEnded: 19,
};

/** Action::Kind numbers of core/ui/registry.h. */
export const Act = {press: 0, setNumber: 1, setText: 2, hold: 3, focus: 4};

/** Adds to an instantiated module what the other scripts call. */
export function bridge(module) {
  function put(...parts) {
    const bytes = parts.map((p) => (typeof p === 'string' ? encoder.encode(p) : p ?? new Uint8Array()));
    const at = module._bb_buffer(bytes.reduce((n, b) => n + b.length, 0));
    let to = at;
    for (const b of bytes) {
      module.HEAPU8.set(b, to);
      to += b.length;
    }
    return bytes.map((b) => b.length);
  }

  return {
    module,
    load: (kit, places) => module._bb_load(...put(kit, places)),
    openWindow: () => !!module._bb_open_window(),
    start: () => !!module._bb_start(),
    idle: () => !!module._bb_idle(),
    wake: (frames) => module._bb_wake(frames),
    settle: () => module._bb_settle(),
    viewport: (...v) => module._bb_viewport(...put(navigator.language ?? ''), ...v),
    /** @param kind one of Event */
    event: (kind, key = '', text = '', number = 0) => module._bb_event(kind, ...put(key, text), number),
    /** @param kind one of Act */
    act: (kind, key, text = '', number = 0) => module._bb_act(kind, ...put(key, text), number),
    key: (...k) => module._bb_key(...k),
    character: (codePoint) => module._bb_character(codePoint),
    contextLost: () => module._bb_context_lost(),
    contextRestored: () => module._bb_context_restored(),
    /** Every widget of the last frame, in drawing order. */
    registry() {
      const at = module._bb_registry();
      const text = decoder.decode(module.HEAPU8.subarray(at, at + module._bb_registry_size()));
      return JSON.parse(text).map(
          ([key, role, name, value, x, y, w, h, flags, level, min, max, step, number, scroll]) => ({
            key, role, name, value, x, y, w, h, level, min, max, step, number, scroll,
            enabled: !!(flags & 1), checked: !!(flags & 2), live: !!(flags & 4), touch: flags >> 3,
          }));
    },
  };
}
