// Several pages on one storage: one writes at a time, and from what the one before it left.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import {Event, Hindrance} from '../../wasm-app/web/bridge.js';
import {App, Promised, bytes} from './app.mjs';
import {Phone, elapse, forgetTimers} from './phone.mjs';

const kMs = 1000;

/** A phone with one page that writes. */
async function first() {
  const phone = new Phone(), promised = new Promised();
  const app = new App(phone.page(), promised);
  app.start();
  await elapse(100);
  return {phone, promised, app};
}

async function second({phone, promised}) {
  const app = new App(phone.page(), promised);
  app.start();
  await elapse(2 * kMs);
  return app;
}

function end(...apps) {
  apps.forEach((app) => app.page.kill());
  forgetTimers();
}

/** A page acts in its first second; the one that writes goes on for hours, and goes away. */
async function earlyAct(act, ms) {
  const {phone, promised, app} = await first();
  app.edit();
  app.tick();
  await elapse(50);
  const late = new App(phone.page(), promised);
  late.start();
  await elapse(ms);
  late[act]('d3', 2);
  await elapse(5 * kMs);
  const work = app.hindrance === Hindrance.none ? app : late;
  for (let n = 0; n < 3; ++n) {
    work.edit();
    work.tick();
    await elapse(kMs);
  }
  await elapse(3600 * kMs);
  const value = promised.value;
  work.page.kill();
  await elapse(5 * kMs);
  const left = work === app ? late : app;
  assert.equal(left.hindrance, Hindrance.none, `${act} ${ms}: the other page writes now`);
  assert.equal(left.value, value, `${act} ${ms}: it goes on from what was there`);
  assert.deepEqual(new Set(left.log.values()), promised.records, `${act} ${ms}: and from the log`);
  left.tick();
  left.edit();
  await elapse(kMs);
  const after = await second({phone, promised});
  assert.equal(after.value, promised.value);
  assert.deepEqual([...after.log.values()].filter((line) => !promised.records.has(line)), []);
  assert.equal(after.log.size, promised.records.size, `${act} ${ms}: no number was used twice`);
  end(left, after);
}

test('what a second page does in its first second is never written over the first one\'s work', async () => {
  let rounds = 0;
  for (const act of ['edit', 'tick', 'merge']) {
    for (let ms = 0; ms < 1000; ms += 25, ++rounds) await earlyAct(act, ms);
  }
  assert.equal(rounds, 120);
});

test('a page that nobody looks at hands over to one that is looked at, and gets it back', async () => {
  const used = await first();
  used.app.edit();
  used.app.page.show(false);
  const other = await second(used);
  assert.equal(other.hindrance, Hindrance.none);
  assert.equal(used.app.hindrance, Hindrance.other, 'the loser says so');
  assert.equal(other.value, used.promised.value);
  other.edit();
  await elapse(kMs);
  other.page.show(false);
  used.app.page.show(true);
  await elapse(kMs);
  assert.equal(used.app.hindrance, Hindrance.none);
  assert.equal(used.app.value, used.promised.value);
  assert.equal(used.app.reloads, 1);
  end(used.app, other);
});

test('a page that is looked at keeps the lock until told; told, it writes all it has and says that it only reads', async () => {
  const used = await first();
  const other = await second(used);
  assert.equal(other.hindrance, Hindrance.other);
  used.app.edit();
  other.store.writeHere();
  await elapse(100);
  assert.equal(used.app.hindrance, Hindrance.other);
  assert.equal(other.hindrance, Hindrance.none);
  assert.equal(other.value, used.app.value, 'the edit before it came along');
  assert.equal(used.app.edit(), false);
  end(used.app, other);
});

test('a frozen page loses the lock; what it does later is not written, and it says so', async () => {
  const used = await first();
  used.app.page.frozen = true;
  const other = await second(used);
  other.store.writeHere();
  await elapse(3 * kMs);
  assert.equal(other.hindrance, Hindrance.none);
  other.edit();
  other.tick();
  await elapse(kMs);
  assert.equal(used.app.hindrance, Hindrance.none, 'it has not heard of it yet');
  used.app.store.save('kit', 99, bytes('7'));
  used.app.store.append('log', 99, bytes('d1\n1\nanother\n'));
  await elapse(kMs);
  assert.deepEqual(used.app.events.slice(-3), [[Event.readOnly, '', '', Hindrance.other],
    [Event.saveFailed, 'kit', 'closed', 99], [Event.appendFailed, 'log', 'closed', 99]]);
  used.app.page.thaw();
  await elapse(kMs);
  assert.equal(used.app.hindrance, Hindrance.other);
  const after = await second(used);
  assert.equal(after.value, other.value);
  assert.deepEqual([...after.log.values()], [...other.log.values()]);
  end(used.app, other, after);
});

test('a frozen page that was robbed and is told to write writes nothing that it made before', async () => {
  const used = await first();
  used.app.page.frozen = true;
  const other = await second(used);
  other.store.writeHere();
  await elapse(3 * kMs);
  other.edit();
  other.tick();
  await elapse(kMs);
  assert.equal(used.app.hindrance, Hindrance.none, 'it has not heard of it yet');
  used.app.tick();  // under the number that the other one has used
  used.app.edit();
  used.app.store.writeHere();
  await elapse(3 * kMs);
  used.app.page.thaw();
  await elapse(3 * kMs);
  assert.deepEqual([...used.app.unsure], [], 'it was told of them');
  const after = await second(used);
  assert.deepEqual(new Set(after.log.values()), used.promised.records);
  assert.equal(after.log.size, used.promised.records.size, 'no number was used twice');
  end(used.app, other, after);
});

test('without locks the mark in the storage tells pages apart: the later one writes, the earlier one finds out', async () => {
  const phone = new Phone(), promised = new Promised();
  const apps = [0, 1].map(() => {
    const page = phone.page();
    page.world.navigator = {};
    return new App(page, promised);
  });
  for (const app of apps) {
    app.start();
    await elapse(100);
  }
  apps[1].edit();
  await elapse(100);
  apps[0].edit();
  await elapse(100);
  assert.equal(apps[0].hindrance, Hindrance.other);
  assert.ok(apps[0].events.some(([kind, key, why]) => kind === Event.saveFailed && key === 'kit' && why === 'closed'));
  apps[0].store.writeHere();
  await elapse(100);
  assert.equal(apps[0].hindrance, Hindrance.none);
  assert.equal(apps[0].value, promised.value);
  end(...apps);
});

test('a page has one connection, whatever it asks for at once', async () => {
  const {phone, app} = await first();
  for (const key of ['kit', 'places', 'shelf', 'a', 'b']) app.store.loadOne(key);
  app.tick();
  app.edit();
  await elapse(kMs);
  assert.equal(app.page.connections.size, 1);
  end(app);
  assert.equal(phone.storage._databases.get('bentbook').connections.filter((c) => !c._closed).length, 0);
});

/** As a newer version of the app opens it. Answers with the connection, once it is there. */
function upgrade(phone) {
  const opening = phone.storage.open('bentbook', 99);
  const upgraded = {db: null, blocked: false};
  opening.onblocked = () => { upgraded.blocked = true; };
  opening.onsuccess = () => { upgraded.db = opening.result; };
  return upgraded;
}

test('a newer version opens its storage beside an open page: that one lets go and says what to do', async () => {
  const {phone, app} = await first();
  app.edit();
  app.tick();
  await elapse(100);
  const upgraded = upgrade(phone);
  await elapse(100);
  assert.ok(upgraded.db, 'it waits for nobody');
  assert.equal(app.hindrance, Hindrance.none);
  app.edit();
  await elapse(kMs);
  assert.ok(app.events.some(([kind, , why]) => kind === Event.saveFailed && why === 'closed'));
  assert.equal(app.hindrance, Hindrance.newer);
  end(app);
});

test('an upgrade that another page blocks is told, and goes on when that page has gone', async () => {
  const phone = new Phone();
  const opening = phone.storage.open('bentbook', 1);  // an old page, frozen: it does not let go
  opening.onupgradeneeded = () => opening.result.createObjectStore('values');
  await elapse(100);
  const app = new App(phone.page(), new Promised());
  app.start();
  await elapse(4 * kMs);
  assert.equal(app.value, null, 'it waits');
  await elapse(3 * kMs);
  assert.equal(app.hindrance, Hindrance.unread, 'and says so');
  assert.equal(app.edit(), false);
  opening.result.close();
  await elapse(60 * kMs);
  assert.equal(app.hindrance, Hindrance.none);
  app.edit();
  await elapse(kMs);
  assert.equal(app.promised.value, app.value);
  end(app);
});

test('two folders on one origin: each has its own, the later one begins with a copy of what all shared before', async () => {
  const {phone, promised, app} = await first();
  app.edit();
  app.tick();
  await elapse(100);
  const [shared, lines] = [app.value, [...app.log.values()]];
  const inside = new App(phone.page('/inside/'), promised, 'd2');
  inside.start();
  await elapse(500);
  assert.equal(inside.hindrance, Hindrance.none, 'both write');
  assert.equal(app.hindrance, Hindrance.none);
  assert.equal(inside.value, shared);
  assert.deepEqual([...inside.log.values()], lines);
  inside.edit();
  inside.tick();
  await elapse(100);
  const own = inside.value;
  end(inside);
  app.edit();
  await elapse(100);
  const again = new App(phone.page('/inside/'), promised, 'd2');
  again.start();
  await elapse(500);
  assert.equal(again.value, own);
  assert.equal(again.log.size, 2);
  end(app, again);
});

test('flush says whether everything is stored', async () => {
  const {phone, app} = await first();
  assert.equal(await settledFlush(app), true);
  phone.fault = () => ({how: 'throws', name: 'QuotaExceededError'});
  app.edit();
  assert.equal(await settledFlush(app), false);
  phone.fault = null;
  assert.equal(await settledFlush(app), true);
  phone.fault = () => ({how: 'never'});
  app.tick();
  assert.equal(await settledFlush(app), false);
  end(app);
});

async function settledFlush(app) {
  let result;
  app.store.flush().then((ok) => { result = ok; });
  await elapse(20 * kMs);
  return result;
}
