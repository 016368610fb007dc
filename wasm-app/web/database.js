// The one connection to IndexedDB: opened when it is wanted, and again when the browser has ended it. Nothing here
// waits for ever: what keeps silent for longer than the patience has failed.

export const kValues = 'values';
export const kEvents = 'events';
const kVersion = 2;  // 2: the store of events
const kPatienceMs = 5000;
const kTries = 3;
// WebKit ends the connections of hidden pages; the work is the same however often it is done.
const kPassing = ['InvalidStateError', 'UnknownError', 'AbortError'];

const reason = (error) => error ?? new DOMException('no reason given', 'AbortError');

export function settled(request) {
  const answer = new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(reason(request.error));
  });
  answer.catch(() => {});  // a call beside it may have failed already, and nobody waits for this one
  return answer;
}

/** As `work` ends, or an error when it does not; `giveUp` is called then. */
function inTime(work, giveUp) {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => {
      reject(new DOMException('no answer', 'TimeoutError'));
      giveUp();
    }, kPatienceMs);
    work.then(resolve, reject).then(() => clearTimeout(timer));
  });
}

function abort(transaction) {
  try {
    transaction.abort();
  } catch {
    // it has ended already
  }
}

/** What `work` promises, once the transaction is complete. */
function transact(db, stores, mode, work) {
  const transaction = db.transaction(stores, mode, {durability: 'strict'});
  const complete = new Promise((resolve, reject) => {
    transaction.oncomplete = resolve;
    transaction.onabort = () => reject(reason(transaction.error));
  });
  const asked = (async () => work(transaction))();  // a throw of its own is an answer too
  const whole = Promise.all([asked, complete]).then(([result]) => result);
  whole.catch(() => abort(transaction));
  return inTime(whole, () => abort(transaction));
}

/** @param name of the database */
export function openDatabase(indexedDB, name) {
  let opening = null;

  function open() {
    const request = indexedDB.open(name, kVersion);
    request.onupgradeneeded = () => {
      const there = request.result.objectStoreNames;
      for (const store of [kValues, kEvents]) {
        if (!there.contains(store)) request.result.createObjectStore(store);
      }
    };
    const connection = settled(request);
    const forget = () => {
      if (opening === connection) opening = null;
    };
    connection.then((db) => {
      // A newer version of the app waits for this connection to end; it must not wait long.
      db.onversionchange = () => {
        db.close();
        forget();
      };
      db.onclose = forget;
    }, forget);
    return connection;
  }

  function drop() {
    opening?.then((db) => db.close(), () => {});  // one that comes late is closed too
    opening = null;
  }

  async function connected() {
    opening ??= open();
    return inTime(opening, drop);
  }

  return {
    drop,
    /** Does `work` in one strict transaction; settles when that is complete or cannot be had. */
    async run(stores, mode, work) {
      for (let tries = 1;; ++tries) {
        try {
          return await transact(await connected(), stores, mode, work);
        } catch (error) {
          const passing = kPassing.includes(error.name);
          if (passing || error.name === 'TimeoutError') drop();
          if (!passing || tries === kTries) throw error;
        }
      }
    },
  };
}
