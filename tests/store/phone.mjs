// A phone without a browser: one IndexedDB (fake-indexeddb), the pages that stand on it, and a clock that the test moves.
// Every call of a page to its storage passes gate(), where it can be made to fail. Locks and channels are those of one
// origin; a page that is killed lets go of all of them.
import {execFileSync} from 'node:child_process';
import {createRequire} from 'node:module';
import {dirname, join} from 'node:path';
import {fileURLToPath} from 'node:url';

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const npm = execFileSync('bash', [join(root, 'cmake/deps.sh'), 'where', 'npm'], {encoding: 'utf8'}).trim();
const need = createRequire(join(npm, 'package.json'));
const {IDBFactory, IDBKeyRange} = need('fake-indexeddb');
globalThis.IDBKeyRange = IDBKeyRange;

// --- the clock

const realImmediate = setImmediate;
let outstanding = 0;  // tasks that storage and channels have under way
globalThis.setImmediate = (task, ...args) => {
  outstanding += 1;
  return realImmediate(() => {
    outstanding -= 1;
    task(...args);
  });
};
let now = 0;
let lastTimer = 0;
const timers = new Map();
globalThis.setTimeout = (task, ms = 0) => {
  timers.set(++lastTimer, {at: now + ms, task});
  return lastTimer;
};
globalThis.clearTimeout = (id) => timers.delete(id);

/** Everything that needs no time is done. (An opening that is blocked looks again for ever.) */
async function drain() {
  for (let turns = 0; turns === 0 || (outstanding > 0 && turns < 2000); ++turns) await new Promise((done) => realImmediate(done));
}

/** That much time goes by. */
export async function elapse(ms) {
  const end = now + ms;
  for (;;) {
    await drain();
    const next = [...timers].filter(([, t]) => t.at <= end).sort((a, b) => a[1].at - b[1].at || a[0] - b[0])[0];
    if (!next) break;
    timers.delete(next[0]);
    now = Math.max(now, next[1].at);
    next[1].task();
  }
  now = end;
}

/** Nothing of what pages waited for comes any more: they are gone. */
export const forgetTimers = () => timers.clear();

// --- storage that fails

const kDead = {how: 'never'};

/** A request that is never answered. */
const unanswered = () => ({onsuccess: null, onerror: null, result: undefined, error: null});

const thrown = ({name}) => new DOMException('a fault', name);

/** A fault is {how, name}: 'throws' an error of that name, or 'fails' with it (null: with none), or is 'never' answered, or
 * is done but 'silent'. */
function faultyOpening(fault) {
  if (fault.how === 'throws') throw thrown(fault);
  const opening = unanswered();
  if (fault.how === 'fails') {
    setImmediate(() => {
      opening.error = fault.name && thrown(fault);
      opening.onerror?.();
    });
  }
  return opening;
}

function faultyCall(fault, call, store) {
  const {transaction} = store;
  if (fault.how === 'throws') throw thrown(fault);
  if (fault.how === 'fails' && fault.name) {
    return transaction._execRequestAsync({source: store, operation() { throw thrown(fault); }});
  }
  if (fault.how === 'never') {
    mute(transaction);
    return unanswered();
  }
  const made = call();
  if (fault.how === 'fails') transaction.abort();
  else mute(transaction);
  return made;
}

function mute(transaction) {
  for (const name of ['oncomplete', 'onabort']) Object.defineProperty(transaction, name, {get: () => null, set() {}});
}

function faultyTransaction(fault, transaction) {
  if (fault.how === 'fails') setImmediate(() => transaction._state !== 'finished' && transaction._abort(fault.name));
  else mute(transaction);
}

const kCalls = ['get', 'put', 'add', 'delete', 'count', 'getAll', 'getAllKeys', 'openKeyCursor'];

function gated(page, db) {
  const transact = db.transaction.bind(db);
  db.transaction = (...args) => {
    const fault = page.fault();
    if (fault?.how === 'throws') throw thrown(fault);
    const transaction = transact(...args);
    page.transactions.add(transaction);
    if (fault) faultyTransaction(fault, transaction);
    const storeOf = transaction.objectStore.bind(transaction);
    transaction.objectStore = (name) => gatedStore(page, storeOf(name));
    return transaction;
  };
}

function gatedStore(page, store) {
  if (Object.hasOwn(store, 'get')) return store;  // it was asked for before
  for (const name of kCalls) {
    const plain = store[name].bind(store);
    store[name] = (...args) => {
      const fault = page.fault();
      return fault ? faultyCall(fault, () => plain(...args), store) : plain(...args);
    };
  }
  return store;
}

function factoryOf(page) {
  return {
    open(name, version) {
      const fault = page.fault();
      if (fault) return faultyOpening(fault);
      const opening = page.phone.storage.open(name, version);
      opening.addEventListener('success', () => {
        page.connections.add(opening.result);
        gated(page, opening.result);
      });
      return opening;
    },
  };
}

// --- locks and channels of an origin

class Locks {
  held = null;
  queue = [];

  request(page, options, callback) {
    if (page.dead) return new Promise(() => {});
    return new Promise((resolve, reject) => {
      const one = {page, callback, resolve, reject};
      options.signal?.addEventListener('abort', () => {
        const at = this.queue.indexOf(one);
        if (at < 0) return;
        this.queue.splice(at, 1);
        reject(new DOMException('aborted', 'AbortError'));
      });
      if (options.steal) {
        const robbed = this.held;
        this.held = null;
        robbed?.page.hear(() => robbed.reject(new DOMException('stolen', 'AbortError')));
        this.queue.unshift(one);
      } else {
        this.queue.push(one);
      }
      this.next();
    });
  }

  next() {
    if (this.held || this.queue.length === 0) return;
    const one = this.held = this.queue.shift();
    setImmediate(async () => {
      const result = await one.callback();
      if (this.held !== one) return;
      this.held = null;
      one.resolve(result);
      this.next();
    });
  }

  forget(page) {
    this.queue = this.queue.filter((one) => one.page !== page);
    if (this.held?.page === page) this.held = null;
    this.next();
  }
}

const channelOf = (page) => class {
  constructor(name) {
    Object.assign(this, {name, page, onmessage: null});
    page.phone.channels.push(this);
  }

  postMessage(data) {
    for (const other of page.phone.channels) {
      if (other === this || other.name !== this.name) continue;
      setImmediate(() => {
        if (!page.dead) other.page.hear(() => other.onmessage?.({data}));
      });
    }
  }
};

class Document extends EventTarget {
  visibilityState = 'visible';

  constructor(folder) {
    super();
    this.baseURI = `https://bentbook.example${folder}`;
  }
}

export class Phone {
  storage = new IDBFactory();
  locks = new Map();  // name → Locks
  channels = [];
  fault = null;  // (page) → a fault, or nothing: asked at each call to the storage

  locksOf(name) {
    if (!this.locks.has(name)) this.locks.set(name, new Locks());
    return this.locks.get(name);
  }

  page(folder = '/') {
    return new Page(this, folder);
  }
}

export class Page {
  dead = false;
  frozen = false;  // it hears nothing
  unheard = [];
  connections = new Set();
  transactions = new Set();

  constructor(phone, folder) {
    this.phone = phone;
    this.document = new Document(folder);
    this.world = {
      indexedDB: factoryOf(this),
      navigator: {locks: {request: (name, options, callback) => phone.locksOf(name).request(this, options, callback)}},
      document: this.document,
      BroadcastChannel: channelOf(this),
    };
  }

  hear(news) {
    if (this.frozen) this.unheard.push(news);
    else if (!this.dead) news();
  }

  thaw() {
    this.frozen = false;
    this.unheard.splice(0).forEach((news) => this.hear(news));
  }

  fault() {
    return this.dead ? kDead : this.phone.fault?.(this);
  }

  show(on) {
    this.document.visibilityState = on ? 'visible' : 'hidden';
    this.document.dispatchEvent(new Event('visibilitychange'));
  }

  /** As the phone's system does it: what is not on disk is undone. */
  kill() {
    this.dead = true;
    for (const transaction of this.transactions) if (transaction._state !== 'finished') transaction._abort('AbortError');
    for (const db of this.connections) db.close();
    for (const locks of this.phone.locks.values()) locks.forget(this);
    this.phone.channels = this.phone.channels.filter((c) => c.page !== this);
  }
}

/** A seeded sequence of numbers in [0, 1) (Numerical Recipes' linear congruence). */
export function numbers(seed) {
  let state = seed >>> 0;
  return () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
}
