// A storage that fails: what was said to be saved is there at the next start, and nothing passes for empty that only
// could not be read.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import {Hindrance} from '../../wasm-app/web/bridge.js';
import {App, Promised} from './app.mjs';
import {Phone, elapse, forgetTimers, numbers} from './phone.mjs';

const kLong = process.env.BENTBOOK_LONG === '1';
const kFaults = [
  ...['UnknownError', 'InvalidStateError', 'AbortError', 'QuotaExceededError'].map((name) => ({how: 'throws', name})),
  ...['UnknownError', 'AbortError', 'QuotaExceededError', null].map((name) => ({how: 'fails', name})),
  {how: 'never'}, {how: 'silent'},
];
const kForever = 60_000;  // ms: longer than it takes until something is told

/** A phone on which somebody has worked before. */
async function usedPhone() {
  const phone = new Phone(), promised = new Promised();
  const page = phone.page();
  const starting = new App(page, promised).start();
  await elapse(100);
  const app = await starting;
  app.edit();
  app.tick();
  app.tick();
  await elapse(100);
  assert.equal(promised.value, 1);
  assert.equal(promised.records.size, 2);
  page.kill();
  return {phone, promised};
}

/** Starts without faults: what is there is what was promised. */
async function checkPromises({phone, promised}, what) {
  phone.fault = null;
  const page = phone.page();
  const app = new App(page, promised);
  app.start();
  await elapse(5000);
  assert.equal(app.hindrance, Hindrance.none, `${what}: the next start can write`);
  assert.ok(app.value >= promised.value, `${what}: ${app.value} is stored, ${promised.value} was said to be saved`);
  assert.equal(app.twice, 0, `${what}: a number was used twice`);
  const there = new Set(app.log.values());
  for (const line of promised.records) assert.ok(there.has(line), `${what}: ${line} is lost`);
  page.kill();
  forgetTimers();
}

function checkTold(app, what) {
  assert.deepEqual([...app.unsure], [], `${what}: nothing was told of them`);
}

/** Start, edits, a tick, a merge, a second page that takes over and works on. */
async function work({phone, promised}, what) {
  const first = new App(phone.page(), promised), second = new App(phone.page(), promised);
  first.start();
  await elapse(300);
  if (first.value === 0) {
    assert.notEqual(first.hindrance, Hindrance.none, `${what}: an empty phone is shown and nothing is said`);
  }
  first.edit();
  first.tick();
  await elapse(100);
  first.merge('d2', 3);
  first.edit();
  first.edit();
  second.start();
  await elapse(1500);
  second.store.writeHere();
  await elapse(3000);
  second.edit();
  second.tick();
  await elapse(kForever);
  checkTold(first, what);
  checkTold(second, what);
  return {first, second};
}

test('no fault: the same work ends with the second page writing', async () => {
  const used = await usedPhone();
  const {first, second} = await work(used, 'no fault');
  assert.equal(first.hindrance, Hindrance.other);
  assert.equal(second.hindrance, Hindrance.none);
  assert.equal(second.value, used.promised.value);
  assert.equal(used.promised.records.size, 7);
  [first, second].forEach((app) => app.page.kill());
  await checkPromises(used, 'no fault');
});

/** The n-th call to the storage fails, and where `forever` all after it. Returns how many calls there were. */
async function failing(n, fault, forever) {
  const used = await usedPhone();
  let calls = 0;
  const what = `call ${n} ${fault.how} ${fault.name}${forever ? ' for ever' : ''}`;
  used.phone.fault = () => {
    ++calls;
    return calls === n || (forever && calls > n) ? fault : null;
  };
  const {first, second} = await work(used, what);
  if (!forever) {
    assert.ok(first.value !== 0 && second.value !== 0, `${what}: what is stored is shown when it can be read again`);
    assert.ok([first, second].some((app) => app.hindrance === Hindrance.none), `${what}: a page writes again`);
  }
  [first, second].forEach((app) => app.page.kill());
  await checkPromises(used, what);
  return calls;
}

for (const forever of [false, true]) {
  test(`each call to the storage fails in turn, ${forever ? 'and all after it' : 'once'}`, {timeout: 120_000}, async () => {
    let rounds = 0;
    for (const fault of kFaults) {
      for (let n = 1, calls = n; n <= calls; ++n, ++rounds) calls = await failing(n, fault, forever);
    }
    console.log(`${rounds} rounds`);
    assert.ok(rounds > 200);
  });
}

/** Pages come and go, work and are killed, and calls fail as the seed says. */
async function schedule(seed) {
  const random = numbers(seed);
  random();
  const pick = (list) => list[Math.floor(random() * list.length)];
  const used = await usedPhone();
  const {phone, promised} = used;
  const often = pick([0.01, 0.05, 0.3]);
  let bad = false;  // faults come in spells
  phone.fault = () => {
    if (random() < 0.1) bad = random() < 0.3;
    return bad && random() < often ? pick(kFaults) : null;
  };
  let apps = [];
  const actions = {
    open() {
      if (apps.length > 2) return;
      apps.push(new App(phone.page(), promised));
      apps.at(-1).start();
    },
    edit: (app) => app.edit(),
    tick: (app) => app.tick(),
    merge: (app) => app.merge(`x${promised.count}`, 1 + Math.floor(random() * 4)),
    hide: (app) => app.page.show(false),
    show: (app) => app.page.show(true),
    freeze: (app) => { app.page.frozen = true; },
    thaw: (app) => app.page.thaw(),
    take: (app) => app.store.writeHere(),
    drop: (app) => app.store.drop(),
    kill(app) {
      app.page.kill();
      apps = apps.filter((a) => a !== app);
    },
  };
  const names = ['open', 'edit', 'edit', 'edit', 'tick', 'tick', 'tick', 'merge', 'hide', 'show', 'freeze', 'thaw', 'thaw', 'take', 'drop', 'kill'];
  for (let n = 0; n < 40; ++n) {
    const name = apps.length ? pick(names) : 'open';
    actions[name](pick(apps));
    await elapse(pick([0, 1, 10, 300, 950, 3000]));
    for (const app of apps) {
      if (app.value === 0) assert.notEqual(app.hindrance, Hindrance.none, `seed ${seed}: empty, and nothing is said`);
    }
  }
  phone.fault = null;
  apps.forEach((app) => app.page.thaw());
  await elapse(kForever);
  for (const app of apps) {
    checkTold(app, `seed ${seed}`);
    app.page.kill();
  }
  await checkPromises(used, `seed ${seed}`);
}

const kSchedules = Number(process.env.SCHEDULES ?? (kLong ? 10_000 : 500));
test(`${kSchedules} schedules of work and faults`, {timeout: 60_000 + kSchedules * 500}, async () => {
  for (let seed = 1; seed <= kSchedules; ++seed) await schedule(seed);
});
