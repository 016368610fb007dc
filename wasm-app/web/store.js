// What the app remembers, in IndexedDB, written straight: one strict transaction a save, whole values, each with a
// checksum and two generations. A value whose newest generation is damaged is read from the one before; the damaged
// one is set aside.
//
// Nothing is written over what was not read: a page reads when it has become the writer, and a key that cannot be read
// is asked for again until it can. Nothing is written by two: a writer leaves its mark in the storage, and each of its
// transactions begins by looking whether it still stands there.

import {Event, Hindrance} from './bridge.js';
import {crc32} from './crc32.mjs';
import {kEvents, kValues, openDatabase, settled} from './database.js';
import * as logs from './events.mjs';
import {inherit} from './inherit.js';
import {makeWriter} from './writer.js';

const kName = 'bentbook';  // and the folder, where the app stands in one
const kWriterKey = 'writer';
const kFirstWaitMs = 500, kLongestWaitMs = 30_000;

/** As is_key in core/ui/platform.h: nothing is stored or found under any other name. */
export const isKey = (key) => /^[a-z0-9]{1,64}(\.shop|\.out)?$/.test(key);

const sound = (record) => record?.bytes instanceof Uint8Array && crc32(record.bytes) === record.crc;

/** The generation to read, the newest sound one, and one that would come before it but is damaged. What is older than a
 * sound one is not looked at: a checksum over megabytes takes its time. */
export function newest(records) {
  const byAge = records.filter(Boolean).sort((a, b) => b.sequence - a.sequence);
  const best = byAge.find(sound);
  return {best, damaged: byAge[0] === best ? undefined : byAge[0]};
}

function joined(parts) {
  const whole = new Uint8Array(parts.reduce((n, part) => n + part.length, 0));
  let to = 0;
  for (const part of parts) {
    whole.set(part, to);
    to += part.length;
  }
  return whole;
}

const errorKey = (error) => error.name === 'QuotaExceededError' ? 'quota'
  : ['InvalidStateError', 'VersionError', 'NotAllowedError'].includes(error.name) ? 'closed' : 'other';

/**
 * @param post (kind, key, text, number): platform event to the screens
 * @param reload (kit, places): values read again, when this page becomes the writer after another one, or when they
 * could not be read before
 * @param world what the browser gives a page
 */
export function openStore(post, reload, world = globalThis) {
  const folder = new URL('.', world.document.baseURI).pathname;
  const name = kName + (folder === '/' ? '' : folder);
  const db = openDatabase(world.indexedDB, name);
  const me = crypto.getRandomValues(new Uint32Array(4)).join('-');
  const waiting = new Map();  // key → {revision, bytes}; a later revision replaces one that still waits
  const generations = new Map();  // key → {sequence, slot} of the newest sound record; only of what was read
  const unstored = new Set();  // logs of which records could not be put in
  const state = {writer: false, readOnly: false, pending: 0, saved: 0, appended: 0, failed: '', persistent: null};
  let holds = false;     // the lock
  let ready = false;     // …and everything was read under it
  let leaving = false;   // another page has asked for it
  let newer = false;     // a newer version of the app keeps its things here now
  let unread = 0;        // reads that fail and are tried again
  let told = Hindrance.none;
  let pumping = null;
  let appending = Promise.resolve();  // settles when every record handed over so far is on disk, or has failed
  let retry = null;
  let retryMs = kFirstWaitMs;
  let era = 0;  // grows when this page becomes the writer or is it no more: what was read before is of no worth
  let shown = false;     // what is stored, and not what a first visit shows
  let handOut = null;    // gives out the first values
  const first = new Promise((resolve) => { handOut = resolve; });

  const mayWrite = () => ready && !leaving && !newer;

  /** Says what keeps this page from writing, when that has changed. */
  function tell() {
    const now = newer ? Hindrance.newer : unread ? Hindrance.unread : mayWrite() ? Hindrance.none : Hindrance.other;
    state.writer = mayWrite();
    state.readOnly = now !== Hindrance.none;
    if (now !== told) post(Event.readOnly, '', '', told = now);
  }

  /** That time, or less when the page is looked at again. */
  const pause = (ms) => new Promise((resolve) => {
    const look = () => {
      if (world.document.visibilityState === 'visible') end();
    };
    const timer = setTimeout(end, ms);
    function end() {
      clearTimeout(timer);
      world.document.removeEventListener('visibilitychange', look);
      resolve();
    }
    world.document.addEventListener('visibilitychange', look);
  });

  /** What `read` reads, tried until it can be read: what may still be there must not pass for nothing. */
  async function patiently(read) {
    let failing = false;
    for (let wait = kFirstWaitMs;; wait = Math.min(2 * wait, kLongestWaitMs)) {
      try {
        const result = await read();
        if (failing) {
          unread -= 1;
          tell();
        }
        return result;
      } catch (error) {
        if (!failing) unread += 1;
        failing = true;
        newer ||= error.name === 'VersionError';
        state.failed = errorKey(error);
        tell();
        giveOut([new Uint8Array(), new Uint8Array()]);
        await pause(wait);
      }
    }
  }

  async function read(key) {
    const before = era;
    const records = await db.run([kValues], 'readonly', (transaction) =>
      Promise.all([0, 1].map((slot) => settled(transaction.objectStore(kValues).get(`${key}/${slot}`)))));
    const {best, damaged} = newest(records);
    const generation = {sequence: best?.sequence ?? 0, slot: best ? records.indexOf(best) : 1, damaged};
    if (era === before) generations.set(key, generation);
    return {bytes: best?.bytes ?? new Uint8Array(), ...generation};
  }

  /** The values that the app starts from: the first ones end load(), later ones take the place of what is shown. */
  function giveOut(values) {
    if (!handOut) return false;
    handOut(values);
    handOut = null;
    return true;
  }

  function newEra() {
    era += 1;
    generations.clear();
    return era;
  }

  /** As patiently(), and once more where this page has become the writer meanwhile: another one may have written. */
  async function inOneEra(read) {
    for (;;) {
      const before = era;
      const result = await patiently(read);
      if (era === before) return result;
    }
  }

  /** Reads what the app starts from; where this page has the lock, behind its mark. */
  async function readAnew() {
    let mine = newEra();
    const values = await patiently(async () => {
      if (mine !== era) return null;
      if (holds) await db.run([kValues], 'readwrite', async (t) => t.objectStore(kValues).put(me, kWriterKey));
      if (holds && name !== kName) await inherit(world.indexedDB, db, kName);
      if (mine !== era) return null;
      mine = newEra();
      return Promise.all([read('kit'), read('places')]);
    });
    if (mine !== era) return;
    ready = holds;
    shown = true;
    const bytes = values.map((value) => value.bytes);
    if (!giveOut(bytes)) reload(...bytes);
    tell();
  }

  /** Another page writes from now on. What waits here was made on older values. */
  function lose() {
    newEra();
    holds = ready = leaving = false;
    for (const [key, {revision, bytes}] of waiting) {
      if (bytes) post(Event.saveFailed, key, 'closed', revision);
    }
    waiting.clear();
    state.pending = 0;
    tell();
    if (!shown) readAnew();
  }

  const writer = makeWriter(world, `${name}-writer`, {
    gained() {
      holds = true;
      readAnew();
    },
    late: readAnew,
    lost: lose,
    settle() {
      leaving = true;
      tell();
      return flush();
    },
    stays() {
      leaving = false;
      tell();
    },
  });

  async function mustBeWriter(transaction) {
    const mark = await settled(transaction.objectStore(kValues).get(kWriterKey));
    if (mark !== undefined && mark !== me) throw new DOMException('another page writes', 'NotAllowedError');
  }

  /** @param made the era in which that came to be written: a page that became the writer anew has other values. */
  async function writing(made, stores, work) {
    try {
      return await db.run(stores, 'readwrite', async (transaction) => {
        await mustBeWriter(transaction);
        if (made !== era) throw new DOMException('made on older values', 'NotAllowedError');
        return work(transaction);
      });
    } catch (error) {
      newer ||= error.name === 'VersionError';
      if (error.name === 'NotAllowedError' && made === era) lose();
      else tell();
      throw error;
    }
  }

  async function write(made, key, bytes) {
    const last = generations.get(key) ?? await read(key);
    const next = {sequence: last.sequence + 1, slot: 1 - last.slot};
    await writing(made, [kValues], async (transaction) => {
      const values = transaction.objectStore(kValues);
      if (last.damaged) values.put(last.damaged, `${key}/damaged`);
      values.put({sequence: next.sequence, crc: crc32(bytes), bytes}, `${key}/${next.slot}`);
    });
    generations.set(key, next);
  }

  async function remove(made, key) {
    await writing(made, [kValues], async (transaction) => {
      for (const slot of [0, 1, 'damaged']) transaction.objectStore(kValues).delete(`${key}/${slot}`);
    });
    generations.delete(key);
  }

  /** Asked once, after the first real edit; the browser may ask its user and take its time. */
  async function askToPersist() {
    if (state.persistent !== null) return;
    state.persistent = false;
    const storage = world.navigator.storage;
    const granted = async () => await storage.persisted() || storage.persist();
    state.persistent = storage?.persist ? await granted().catch(() => false) : false;
    if (!state.persistent) post(Event.notPersistent);
  }

  async function saveOne(key, {revision, bytes}) {
    const made = era;  // what waits is of this one: lose() leaves nothing of it
    if (!bytes) {
      await remove(made, key).catch(() => {});  // what stays is only room taken
      return true;
    }
    try {
      await write(made, key, bytes);
      state.saved += 1;
      state.failed = '';
      post(Event.saved, key, '', revision);
      askToPersist();
      return true;
    } catch (error) {
      state.failed = errorKey(error);
      if (made === era && mayWrite() && !waiting.has(key)) waiting.set(key, {revision, bytes});
      post(Event.saveFailed, key, state.failed, revision);
      return false;
    }
  }

  /** Writes what waits, each key once. */
  async function pump() {
    const failing = new Set();
    for (;;) {
      const next = [...waiting].find(([key]) => !failing.has(key));
      if (!next) break;
      waiting.delete(next[0]);
      if (!await saveOne(...next)) failing.add(next[0]);
    }
    state.pending = waiting.size;
    pumping = null;
    if (failing.size === 0) retryMs = kFirstWaitMs;
    else tryAgainLater();
  }

  function tryAgainLater() {
    retry ??= pause(retryMs).then(() => {
      retry = null;
      retryMs = Math.min(2 * retryMs, kLongestWaitMs);
      return flush();
    });
  }

  /** Tries to put everything that was handed to save() and append() on disk; true when it is there. */
  async function flush() {
    if (waiting.size) pumping ??= pump();
    await Promise.all([pumping, appending]);
    return waiting.size === 0 && unstored.size === 0;
  }

  async function appendOne(made, log, ticket, records) {
    try {
      await writing(made, [kValues, kEvents], (transaction) => logs.append(transaction, log, records));
      state.appended += records.length;
      unstored.delete(log);
      post(Event.appended, log, '', ticket);
      askToPersist();
    } catch (error) {
      unstored.add(log);
      post(Event.appendFailed, log, errorKey(error), ticket);
    }
  }

  return {
    state, flush, drop: db.drop,

    /** Stored values, once it is known whether this page writes; empty where there is none, or where none can be read
     * for now (which is told). */
    load() {
      writer.start();
      return first;
    },

    /** This page is to write, and no other one any more. */
    writeHere: writer.take,

    save(key, revision, bytes) {
      if (!mayWrite() || !isKey(key)) {
        post(Event.saveFailed, key, isKey(key) ? 'closed' : 'other', revision);
        return;
      }
      waiting.set(key, {revision, bytes});
      state.pending = waiting.size;
      flush();
    },

    /** Takes a value away, in its turn among the writes. */
    erase(key) {
      if (!mayWrite() || !isKey(key)) return;
      waiting.set(key, {bytes: null});
      state.pending = waiting.size;
      flush();
    },

    /** Takes a log away, in its turn among the records. */
    eraseLog(log) {
      if (!mayWrite() || !isKey(log)) return;
      const made = era;
      appending = appending
        .then(() => writing(made, [kValues, kEvents], async (transaction) => logs.remove(transaction, log)))
        .catch(() => {});  // what stays is only room taken
    },

    /** Answers with what is stored under a key: what still waits to be written, else the newest sound record. Where
     * none is sound but something lies there, bytes that no reader takes: it must not be written over. */
    async loadOne(key) {
      if (!isKey(key)) {
        post(Event.loaded, key, Uint8Array.of(0));
        return;
      }
      await pumping;
      const {bytes, damaged} = await inOneEra(() => read(key));
      const stored = bytes.length || !damaged ? bytes : Uint8Array.of(0, ...(damaged.bytes ?? []));
      post(Event.loaded, key, waiting.get(key)?.bytes ?? stored);
    },

    /** Puts records into a log, in one transaction of their own, in their turn. */
    append(log, ticket, packed) {
      if (!mayWrite() || !isKey(log)) {
        post(Event.appendFailed, log, isKey(log) ? 'closed' : 'other', ticket);
        return;
      }
      const made = era, records = logs.unpack(packed);
      appending = appending.then(() => appendOne(made, log, ticket, records));
    },

    /** Answers with a log's records, those that still wait to be written included. */
    async readLog(log, known) {
      if (!isKey(log)) {
        post(Event.logRead, log, '', 1);
        return;
      }
      await appending;
      const parts = await inOneEra(() => db.run([kEvents], 'readonly', (t) => logs.read(t, log, logs.unpack(known))));
      if (parts) post(Event.logRead, log, joined(parts));
      else post(Event.logRead, log, '', 2);
    },
  };
}
