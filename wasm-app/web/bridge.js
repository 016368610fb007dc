// Calls between the page and the WebAssembly module. Bytes go in through the module's buffer, out as copies.

const encoder = new TextEncoder();
const decoder = new TextDecoder();

// Numbers that stand in headers too: tests/lib/bridge.py reads both.

/** Role of core/ui/registry.h. */
export const Role = {
  button: 0, checkbox: 1, radio: 2, tab: 3, slider: 4, textField: 5, heading: 6, text: 7, answer: 8, dialog: 9,
  image: 10,
};

/** Touch of core/ui/registry.h. */
export const Touch = {press: 0, drag: 1, turn: 2, hold: 3, none: 4};

/** EventKind of core/ui/platform.h. */
export const Event = {
  saved: 0, saveFailed: 1, readOnly: 2, notPersistent: 3, shared: 4, fileOpened: 5, textCommitted: 6,
  textCancelled: 7, task: 8, newVersion: 9, offline: 10, awake: 11, loaded: 12, appended: 13, appendFailed: 14,
  logRead: 15, scanned: 16, scanEnded: 17, voices: 18, spoken: 19, copied: 20,
};

/** Hindrance of core/ui/platform.h. */
export const Hindrance = {none: 0, other: 1, unread: 2, newer: 3};

/** Action::Kind of core/ui/registry.h. */
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
    /** The tag of the language to start in. */
    wantedLanguage() {
      const at = module._bb_wanted_language();
      return decoder.decode(module.HEAPU8.subarray(at, module.HEAPU8.indexOf(0, at)));
    },
    idle: () => !!module._bb_idle(),
    wake: (frames) => module._bb_wake(frames),
    settle: () => module._bb_settle(),
    viewport: (...v) => module._bb_viewport(...put(navigator.language ?? ''), ...v),
    /** @param kind one of Event */
    event: (kind, key = '', text = '', number = 0) => module._bb_event(kind, ...put(key, text), number),
    /** What tasks.js tells of a task, by the name that the core gave it. */
    tasks: {
      progress: (name, perMille) => module._bb_task_progress(...put(name), perMille),
      done: (name, bytes) => module._bb_task_done(...put(name, bytes)),
      failed: (name, loaded) => module._bb_task_failed(...put(name), loaded),
    },
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
      const [names, ...rows] = JSON.parse(text);  // registry_json.cpp names its columns
      return rows.map((row) => Object.fromEntries(row.map((value, i) => [names[i], value])));
    },
  };
}
