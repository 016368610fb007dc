// The append-only logs, in the object store `events`: a record a key [log, device, sequence], written once and never
// again. A record unlike the one that is there (a phone that was copied or rolled back used a number again) stands
// beside it, with its own bytes as the key's end. Each function works within a transaction of its caller's.

import {kEvents, settled} from './database.js';

const encoder = new TextEncoder();
const decoder = new TextDecoder();
const kLineBreak = encoder.encode('\n');
const kFew = 16;  // devices
const kLast = [];  // as a part of a key: after every text, number and bytes

/** What page.cpp packs: three lines a record. */
export function unpack(bytes) {
  const lines = decoder.decode(bytes).split('\n');
  const records = [];
  for (let i = 0; i + 2 < lines.length; i += 3) {
    records.push({device: lines[i], sequence: Number(lines[i + 1]), bytes: encoder.encode(lines[i + 2])});
  }
  return records;
}

const alike = (a, b) => a.length === b.length && a.every((byte, i) => byte === b[i]);

/** Puts records in. One that is there already stays as it is; what read() would not find again is none. */
export async function append(transaction, log, records) {
  const good = ({device, sequence}) => device !== '' && Number.isSafeInteger(sequence) && sequence > 0;
  if (!records.every(good)) throw new DOMException('no record', 'DataError');
  const events = transaction.objectStore(kEvents);
  for (const {device, sequence, bytes} of records) {
    const key = [log, device, sequence];
    events.add(bytes, key).onerror = (event) => {
      if (event.target.error?.name !== 'ConstraintError') return;
      event.preventDefault();  // or the whole transaction would be undone
      event.stopPropagation();
      events.get(key).onsuccess = ({target}) => {
        if (!alike(target.result, bytes)) events.put(bytes, [...key, bytes]);
      };
    };
  }
}

/** Who wrote in a log: a jump of a cursor from device to device. Null: more than a few. */
async function fewDevices(events, log) {
  const devices = [];
  let from = [log, '', 0];
  for (;;) {
    const cursor = await settled(events.openKeyCursor(IDBKeyRange.bound(from, [log, kLast])));
    if (!cursor) return devices;
    if (devices.length === kFew) return null;
    devices.push(cursor.key[1]);
    from = [log, cursor.key[1], kLast];
  }
}

/** The log has the numbers up to that one, each once. */
async function beginsWith(events, log, {device, sequence}) {
  const range = IDBKeyRange.bound([log, device, 0], [log, device, sequence, kLast]);
  return await settled(events.count(range)) === sequence;
}

/** A crew's log, which is long and of few: of each device only what is wanted. */
async function readByDevice(events, log, known, devices) {
  for (const one of known) {
    if (!await beginsWith(events, log, one)) return null;
  }
  const records = [];
  for (const device of devices) {
    const after = known.find((k) => k.device === device)?.sequence ?? -1;
    const range = IDBKeyRange.bound([log, device, after, kLast], [log, device, kLast]);
    for (const bytes of await settled(events.getAll(range))) records.push(bytes);
  }
  return records;
}

/** A log of as many devices as somebody made up: all of it at once, for a call a device would take minutes. */
async function readWhole(events, log, known) {
  const range = IDBKeyRange.bound([log, '', 0], [log, kLast]);
  const [keys, all] = await Promise.all([settled(events.getAllKeys(range)), settled(events.getAll(range))]);
  const upTo = new Map(known.map((one) => [one.device, one.sequence]));
  const found = new Map();  // device → how many of those that are known
  const records = all.filter((_, i) => {
    const [, device, sequence] = keys[i];
    if (!(sequence <= upTo.get(device))) return true;
    found.set(device, (found.get(device) ?? 0) + 1);
    return false;
  });
  return known.every((one) => found.get(one.device) === one.sequence) ? records : null;
}

/** Every record's bytes by device and sequence, a line each, but for those up to the sequence that `known` names; null
 * where the log does not begin with those. */
export async function read(transaction, log, known) {
  const events = transaction.objectStore(kEvents);
  const devices = known.length > kFew ? null : await fewDevices(events, log);
  const records = await (devices ? readByDevice(events, log, known, devices) : readWhole(events, log, known));
  return records?.flatMap((bytes) => [bytes, kLineBreak]) ?? null;
}

/** Takes a log away. */
export function remove(transaction, log) {
  transaction.objectStore(kEvents).delete(IDBKeyRange.bound([log, '', 0], [log, kLast]));
}
