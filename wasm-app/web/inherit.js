// Folders of one origin keep their things apart; once they did not, and all lay in one database. A folder that has not
// looked there yet begins with a copy of what it finds.

import {kEvents, kValues, settled} from './database.js';

const kMark = 'inherited';
const kOwn = ['writer', 'device/0', 'device/1'];  // a copy counts under a number of its own

/** The database of that name, or null where there is none. */
function opened(indexedDB, name) {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(name);
    let none = false;
    opening.onupgradeneeded = () => {
      none = true;
      opening.transaction.abort();  // or it would be there from now on
    };
    opening.onsuccess = () => resolve(opening.result);
    opening.onerror = (event) => {
      event.preventDefault();
      if (none) resolve(null);
      else reject(opening.error);
    };
  });
}

/** Every key and value of a store. */
async function contents(db, name) {
  if (!db.objectStoreNames.contains(name)) return [];
  const store = db.transaction(name).objectStore(name);
  const [keys, values] = await Promise.all([settled(store.getAllKeys()), settled(store.getAll())]);
  return keys.map((key, i) => [key, values[i]]);
}

/** @param db of this folder (database.js) @param from name of the one for all */
export async function inherit(indexedDB, db, from) {
  const done = await db.run([kValues], 'readonly', (t) => settled(t.objectStore(kValues).get(kMark)));
  if (done) return;
  const old = await opened(indexedDB, from);
  const values = old ? await contents(old, kValues) : [];
  const events = old ? await contents(old, kEvents) : [];
  old?.close();
  await db.run([kValues, kEvents], 'readwrite', async (transaction) => {
    const store = transaction.objectStore(kValues);
    for (const [key, value] of values) if (!kOwn.includes(key)) store.put(value, key);
    for (const [key, value] of events) transaction.objectStore(kEvents).put(value, key);
    store.put(true, kMark);
  });
}
