// What the app remembers, in IndexedDB, written straight: one strict transaction a save, whole values, each with a
// checksum and two generations. A value whose newest generation is damaged is read from the one before; the damaged
// one is set aside. Only the tab that holds the lock writes.

import {Event} from './bridge.js';
import {crc32} from './crc32.mjs';
import * as logs from './events.mjs';

const kDatabase = 'bentbook';
const kVersion = 2;  // 2: the store of events
const kValues = 'values';
const kLock = 'bentbook-writer';
const kLockPatienceMs = 1000;  // a reloaded page's old document lets go of the lock a little late

/** As is_key in core/ui/platform.h: nothing is stored or found under any other name. */
export const isKey = (key) => /^[a-z0-9]{1,64}(\.shop|\.out)?$/.test(key);

const settled = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

const sound = (record) => record?.bytes instanceof Uint8Array && crc32(record.bytes) === record.crc;

/** The generation to read, the newest sound one, and one that would come before it but is damaged. What is older than a
 * sound one is not looked at: a checksum over megabytes takes its time. */
export function newest(records) {
  const byAge = records.filter(Boolean).sort((a, b) => b.sequence - a.sequence);
  const best = byAge.find(sound);
  return {best, damaged: byAge[0] === best ? undefined : byAge[0]};
}

const joined = async (parts) => new Uint8Array(await new Blob(parts).arrayBuffer());

const errorKey = (error) => error?.name === 'QuotaExceededError' ? 'quota'
  : error?.name === 'InvalidStateError' || error?.name === 'VersionError' ? 'closed' : 'other';

/**
 * @param post (kind, key, text, number): platform event to the screens
 * @param reload (kit, places): values read again, when this tab becomes the writer after another one
 */
export function openStore(post, reload) {
  let database = null;
  let writer = false;
  let mayWrite;
  const lock = new Promise((resolve) => { mayWrite = resolve; });
  const waiting = new Map();  // key → {revision, bytes}; a later revision replaces one that still waits
  const generations = new Map();  // key → {sequence, slot} of the newest sound record
  const state = {writer: false, readOnly: false, pending: 0, saved: 0, appended: 0, failed: '', persistent: null};
  let pumping = null;
  let appending = lock;  // settles when every record handed over so far is on disk, or has failed
  let waitingRecords = 0;

  async function handle() {
    if (database) return database;
    const request = indexedDB.open(kDatabase, kVersion);
    request.onupgradeneeded = () => {
      const there = request.result.objectStoreNames;
      for (const name of [kValues, logs.kEvents]) {
        if (!there.contains(name)) request.result.createObjectStore(name);
      }
    };
    const opened = await settled(request);
    opened.onversionchange = () => drop();
    opened.onclose = () => drop();
    return database = opened;
  }

  function drop() {
    database?.close();
    database = null;
  }

  /** WebKit ends the connections of hidden pages: open again and repeat, the write being the same however often. */
  async function retrying(work) {
    for (let tries = 0;; ++tries) {
      try {
        return await work(await handle());
      } catch (error) {
        if (tries === 2 || !['InvalidStateError', 'UnknownError', 'AbortError'].includes(error?.name)) throw error;
        drop();
      }
    }
  }

  async function read(key) {
    const records = await retrying((db) => {
      const values = db.transaction(kValues).objectStore(kValues);
      return Promise.all([0, 1].map((slot) => settled(values.get(`${key}/${slot}`))));
    });
    const {best, damaged} = newest(records);
    const slot = best ? records.indexOf(best) : 1;
    generations.set(key, {sequence: best?.sequence ?? 0, slot, damaged});
    return best?.bytes ?? new Uint8Array();
  }

  const readAll = () => Promise.all([read('kit'), read('places')]);

  function write(key, bytes) {
    const last = generations.get(key) ?? {sequence: 0, slot: 1};
    const next = {sequence: last.sequence + 1, slot: 1 - last.slot};
    return retrying((db) => new Promise((resolve, reject) => {
      const transaction = db.transaction(kValues, 'readwrite', {durability: 'strict'});
      const values = transaction.objectStore(kValues);
      if (last.damaged) values.put(last.damaged, `${key}/damaged`);
      values.put({sequence: next.sequence, crc: crc32(bytes), bytes}, `${key}/${next.slot}`);
      transaction.oncomplete = () => {
        generations.set(key, next);
        resolve();
      };
      transaction.onabort = () => reject(transaction.error ?? new DOMException('aborted', 'AbortError'));
    }));
  }

  function remove(key) {
    generations.delete(key);
    return retrying((db) => new Promise((resolve, reject) => {
      const transaction = db.transaction(kValues, 'readwrite', {durability: 'strict'});
      for (const slot of [0, 1, 'damaged']) transaction.objectStore(kValues).delete(`${key}/${slot}`);
      transaction.oncomplete = resolve;
      transaction.onabort = () => reject(transaction.error ?? new DOMException('aborted', 'AbortError'));
    }));
  }

  async function askToPersist() {
    const storage = navigator.storage;
    const granted = async () => await storage.persisted() || storage.persist();
    state.persistent = storage?.persist ? await granted().catch(() => false) : false;
    if (!state.persistent) post(Event.notPersistent);
  }

  async function saveOne(key, {revision, bytes}) {
    if (!bytes) {
      await remove(key).catch(() => {});  // what stays is only room taken
      return true;
    }
    try {
      await write(key, bytes);
      state.saved += 1;
      state.failed = '';
      post(Event.saved, key, '', revision);
      if (state.persistent === null) await askToPersist();
    } catch (error) {
      state.failed = errorKey(error);
      if (!waiting.has(key)) waiting.set(key, {revision, bytes});
      post(Event.saveFailed, key, state.failed, revision);
      return false;
    }
    return true;
  }

  async function pump() {
    await lock;
    while (waiting.size) {
      const [key, value] = waiting.entries().next().value;
      waiting.delete(key);
      if (!await saveOne(key, value)) break;  // kept; the next save or flush tries again
    }
    state.pending = waiting.size;
  }

  /** Everything handed to save() and append() is on disk, or has failed. */
  function flush() {
    if (state.readOnly) return Promise.resolve();
    pumping ??= pump().finally(() => {
      pumping = null;
      if (waiting.size && !state.failed) return flush();
    });
    return waitingRecords ? Promise.all([pumping, appending]) : pumping;
  }

  /** Puts records into a log, in one transaction of their own, in their turn. */
  function append(log, ticket, packed) {
    if (state.readOnly) {
      post(Event.appendFailed, log, 'closed', ticket);
      return;
    }
    if (!isKey(log)) {
      post(Event.appendFailed, log, 'other', ticket);
      return;
    }
    const records = logs.unpack(packed);
    waitingRecords += 1;
    appending = appending.then(async () => {
      try {
        await retrying((db) => logs.append(db, log, records));
        state.appended += records.length;
        post(Event.appended, log, '', ticket);
        if (state.persistent === null) await askToPersist();
      } catch (error) {
        post(Event.appendFailed, log, errorKey(error), ticket);
      }
      waitingRecords -= 1;
    });
  }

  /** Answers with a log's records, those that still wait to be written included. */
  async function readLog(log, known) {
    if (waitingRecords) await appending;
    try {
      if (!isKey(log)) throw new RangeError('no key');
      const parts = await retrying((db) => logs.read(db, log, logs.unpack(known)));
      post(Event.logRead, log, await joined(parts));
    } catch (error) {
      state.failed = errorKey(error);
      post(Event.logRead, log, '', 1);
    }
  }

  function save(key, revision, bytes) {
    if (state.readOnly) {
      post(Event.saveFailed, key, 'closed', revision);
      return;
    }
    if (!isKey(key)) {
      post(Event.saveFailed, key, 'other', revision);
      return;
    }
    waiting.set(key, {revision, bytes});
    state.pending = waiting.size;
    flush();
  }

  /** Takes a value away, in its turn among the writes. */
  function erase(key) {
    if (state.readOnly || !isKey(key)) return;
    waiting.set(key, {bytes: null});
    state.pending = waiting.size;
    flush();
  }

  /** Takes a log away, in its turn among the records. */
  function eraseLog(log) {
    if (state.readOnly || !isKey(log)) return;
    waitingRecords += 1;
    appending = appending.then(async () => {
      await retrying((db) => logs.remove(db, log)).catch(() => {});  // what stays is only room taken
      waitingRecords -= 1;
    });
  }

  /** The newest sound record. Where there is none but something lies there, or it cannot be read, bytes that no reader
   * takes: what may still be there must not pass for nothing and be written over. */
  async function readOrRefuse(key) {
    try {
      if (!isKey(key)) throw new RangeError('no key');
      const bytes = await read(key);
      const {damaged} = generations.get(key);
      return bytes.length || !damaged ? bytes : Uint8Array.of(0, ...(damaged.bytes ?? []));
    } catch (error) {
      state.failed = errorKey(error);
      return Uint8Array.of(0);
    }
  }

  /** Answers with what is stored under a key: what still waits to be written, else what can be read. */
  async function loadOne(key) {
    post(Event.loaded, key, waiting.get(key)?.bytes ?? await readOrRefuse(key));
  }

  async function becomeWriter() {
    const late = state.readOnly;
    if (late) reload(...await readAll());
    state.readOnly = false;
    state.writer = writer = true;
    mayWrite();
    if (late) post(Event.readOnly, '', '', 0);
  }

  function takeLock() {
    if (!navigator.locks) {
      becomeWriter();
      return;
    }
    setTimeout(() => {
      if (writer) return;
      state.readOnly = true;
      post(Event.readOnly, '', '', 1);
    }, kLockPatienceMs);
    navigator.locks.request(kLock, async () => {
      await becomeWriter();
      return new Promise(() => {});  // held until the document goes
    });
  }

  return {
    state, save, erase, eraseLog, loadOne, append, readLog, flush, takeLock, drop,
    /** Stored values, empty where there is none or storage is not to be had. */
    async load() {
      try {
        return await readAll();
      } catch (error) {
        state.failed = errorKey(error);
        return [new Uint8Array(), new Uint8Array()];
      }
    },
  };
}
