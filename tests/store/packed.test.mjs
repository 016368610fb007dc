// Whatever bytes pass for packed records: it is told whether they are stored, and what was there stays.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import {Event} from '../../wasm-app/web/bridge.js';
import {unpack} from '../../wasm-app/web/events.mjs';
import {App, Promised, bytes, text} from './app.mjs';
import {Phone, elapse, forgetTimers, numbers} from './phone.mjs';

const kRounds = process.env.BENTBOOK_LONG === '1' ? 20_000 : 500;
const kSeeds = ['d1\n1\ne\t1\tdone\n', 'd1\n3\none\nd1\n4\ntwo\n', 'd2\n1\nñ 7″\n', '\n\n\n', 'd1\n-1\nx\n', 'd1\n1e400\nx\n',
  'd1\nNaN\nx\n', `${'d'.repeat(300)}\n9007199254740993\n${'x'.repeat(2000)}\n`];

function changed(seed, random) {
  const some = [...bytes(seed)];
  const below = (n) => Math.floor(random() * n);
  for (let n = below(6); n > 0; --n) {
    const at = below(some.length + 1);
    [() => some.splice(at, 1), () => some.splice(at, 0, below(256)), () => some.splice(at, 0, 10),
      () => { some[at] = below(256); }, () => some.splice(at, some.length, ...bytes(kSeeds[below(kSeeds.length)]))][below(5)]();
  }
  return Uint8Array.from(some, (b) => b ?? 0);
}

test(`${kRounds} packed records of changed bytes`, {timeout: 60_000 + kRounds * 100}, async () => {
  const phone = new Phone(), promised = new Promised();
  const app = new App(phone.page(), promised);
  app.start();
  await elapse(100);
  app.tick();
  app.tick();
  await elapse(10);
  const random = numbers(4711);
  let stored = 0;
  const kept = new Set(promised.records);
  for (let ticket = 1000; ticket < 1000 + kRounds; ++ticket) {
    const packed = changed(kSeeds[ticket % kSeeds.length], random);
    const records = unpack(packed);
    app.tickets.set(ticket, []);
    app.events.length = 0;
    app.store.append('log', ticket, packed);
    await elapse(20);
    const told = app.events.filter(([kind, , , number]) => [Event.appended, Event.appendFailed].includes(kind) && number === ticket);
    assert.equal(told.length, 1, `${JSON.stringify(text(packed))}: told once`);
    if (told[0][0] !== Event.appended) continue;
    stored += 1;
    for (const {bytes: line} of records) kept.add(text(line));
    if (ticket % 50) continue;
    app.events.length = 0;
    app.store.readLog('log', new Uint8Array());
    await elapse(20);
    const lines = new Set(text(app.events.find(([kind]) => kind === Event.logRead)[2]).split('\n'));
    for (const line of kept) assert.ok(lines.has(line), `${line} is lost`);
  }
  assert.ok(stored > kRounds / 10 && stored < kRounds, `${stored} were taken`);
  app.page.kill();
  forgetTimers();
});
