// The append-only logs, in the object store `events`: a record a key [log, device, sequence], written once and never
// again. Each call is one strict transaction.

export const kEvents = 'events';

const encoder = new TextEncoder();
const decoder = new TextDecoder();
const kLineBreak = encoder.encode('\n');

/** What page.cpp packs: three lines a record. */
export function unpack(bytes) {
  const lines = decoder.decode(bytes).split('\n');
  const records = [];
  for (let i = 0; i + 2 < lines.length; i += 3) {
    records.push({device: lines[i], sequence: Number(lines[i + 1]), bytes: encoder.encode(lines[i + 2])});
  }
  return records;
}

/** Puts records in; settles when they are on disk. One that is there already stays as it is. */
export function append(db, log, records) {
  return new Promise((resolve, reject) => {
    const transaction = db.transaction(kEvents, 'readwrite', {durability: 'strict'});
    const events = transaction.objectStore(kEvents);
    for (const {device, sequence, bytes} of records) {
      events.add(bytes, [log, device, sequence]).onerror = (event) => {
        if (event.target.error?.name !== 'ConstraintError') return;
        event.preventDefault();  // or the whole transaction would be undone
        event.stopPropagation();
      };
    }
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new DOMException('aborted', 'AbortError'));
  });
}

const settled = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

/** Who wrote in a log: a jump of a cursor from device to device. */
async function devicesOf(events, log) {
  const devices = [];
  let from = [log, '', 0];
  for (;;) {
    const cursor = await settled(events.openKeyCursor(IDBKeyRange.bound(from, [log, []])));
    if (!cursor) return devices;
    devices.push(cursor.key[1]);
    from = [log, cursor.key[1], Infinity];
  }
}

/** Every record's bytes by device and sequence, a line each, but for those up to the sequence that `known` names. */
export async function read(db, log, known) {
  const events = db.transaction(kEvents).objectStore(kEvents);
  const parts = [];
  for (const device of await devicesOf(events, log)) {
    const after = known.find((k) => k.device === device)?.sequence ?? -1;
    const range = IDBKeyRange.bound([log, device, after], [log, device, Infinity], true);
    for (const bytes of await settled(events.getAll(range))) parts.push(bytes, kLineBreak);
  }
  return parts;
}

/** Takes a log away; settles when it is gone. */
export function remove(db, log) {
  return new Promise((resolve, reject) => {
    const transaction = db.transaction(kEvents, 'readwrite', {durability: 'strict'});
    transaction.objectStore(kEvents).delete(IDBKeyRange.bound([log, '', 0], [log, []]));
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new DOMException('aborted', 'AbortError'));
  });
}
