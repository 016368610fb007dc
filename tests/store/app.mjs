// The screens as the store sees them (core/screens: app_store, desks): a value that is edited, a log that is ticked, what
// was told of both, and what may not be lost. Values are counts that never go back, on whatever page they are made.
import {Event, Hindrance} from '../../wasm-app/web/bridge.js';
import {openStore} from '../../wasm-app/web/store.js';

const encoder = new TextEncoder(), decoder = new TextDecoder();
export const bytes = (text) => encoder.encode(text);
export const text = (some) => decoder.decode(some);

/** What a phone has promised, over all its pages and restarts. */
export class Promised {
  count = 0;
  value = 0;             // the latest count that was said to be saved
  records = new Set();   // "device sequence text" that were said to be saved
}

export class App {
  hindrance = Hindrance.none;
  value = null;      // what is shown; 0: nothing was stored
  made = new Map();  // revision → count
  revision = 0;
  unsure = new Set();  // revisions and tickets of which nothing was told yet
  log = null;        // Map "device sequence" → text, once it is read
  twice = 0;         // lines read under a number that another one has
  ticket = 0;
  tickets = new Map();
  reloads = 0;
  events = [];

  constructor(page, promised, device = 'd1') {
    Object.assign(this, {page, promised, device});
    this.store = openStore((...event) => page.dead || this.on(...event), (kit) => page.dead || this.reload(kit), page.world);
  }

  async start() {
    const [kit] = await this.store.load();
    if (this.page.dead) return this;
    this.take(kit);
    return this;
  }

  take(kit) {
    this.value = Number(text(kit) || 0);
    this.log = null;
    this.store.readLog('log', new Uint8Array());
  }

  reload(kit) {
    this.reloads += 1;
    this.take(kit);
  }

  get reads() {
    return this.hindrance !== Hindrance.none || this.value === null;
  }

  edit() {
    if (this.reads) return false;
    this.value = ++this.promised.count;
    this.made.set(++this.revision, this.value);
    this.unsure.add(`kit ${this.revision}`);
    this.store.save('kit', this.revision, bytes(String(this.value)));
    return true;
  }

  /** An event of this device, or several of another one. */
  tick() {
    if (this.reads || !this.log) return false;
    let last = 0;
    for (const key of this.log.keys()) {
      const [device, sequence] = key.split(' ');
      if (device === this.device) last = Math.max(last, Number(sequence));
    }
    return this.append([[this.device, last + 1]]);
  }

  merge(device, count) {
    if (this.reads || !this.log) return false;
    return this.append(Array.from({length: count}, (_, n) => [device, n + 1]));
  }

  append(ids) {
    const records = ids.map(([device, sequence]) => [device, sequence, `${device} ${sequence} text ${++this.promised.count}`]);
    for (const [device, sequence, line] of records) this.log.set(`${device} ${sequence}`, line);
    this.tickets.set(++this.ticket, records.map(([, , line]) => line));
    this.unsure.add(`log ${this.ticket}`);
    this.store.append('log', this.ticket, bytes(records.map((r) => `${r.join('\n')}\n`).join('')));
    return true;
  }

  on(kind, key = '', said = '', number = 0) {
    this.events.push([kind, key, said, number]);
    if (kind === Event.readOnly) this.hindrance = number;
    if (kind === Event.logRead && number === 0) {
      const lines = text(said).split('\n').filter(Boolean);
      this.log = new Map(lines.map((line) => [line.split(' ').slice(0, 2).join(' '), line]));
      this.twice = lines.length - this.log.size;
    }
    if (kind === Event.saved && key === 'kit') this.promised.value = Math.max(this.promised.value, this.made.get(number));
    if (kind === Event.appended) for (const line of this.tickets.get(number)) this.promised.records.add(line);
    if ((kind === Event.saved || kind === Event.saveFailed) && key === 'kit') {
      // A later revision may take the place of one that waits.
      for (let n = number; n > 0; --n) this.unsure.delete(`kit ${n}`);
    }
    if (kind === Event.appended || kind === Event.appendFailed) this.unsure.delete(`log ${number}`);
  }
}
