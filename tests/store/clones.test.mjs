// Phones that were copied, or set back to what they were: every event that somebody made is on every phone in the end,
// two unlike ones under one number side by side.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import {App, Promised, text} from './app.mjs';
import {Phone, elapse, forgetTimers, numbers} from './phone.mjs';

const kLong = process.env.BENTBOOK_LONG === '1';
const kHistories = Number(process.env.HISTORIES ?? (kLong ? 1000 : 60));

/** All records of a store with their keys. */
function records(phone, store) {
  return new Promise((resolve) => {
    const opening = phone.storage.open('bentbook');
    opening.onsuccess = () => {
      const found = [];
      opening.result.transaction(store).objectStore(store).openCursor().onsuccess = ({target: {result}}) => {
        if (result) {
          found.push([result.key, result.value]);
          result.continue();
        } else {
          opening.result.close();
          resolve(found);
        }
      };
    };
  });
}

async function waited(promise) {
  let result;
  promise.then((value) => { result = value; });
  await elapse(10);
  return result;
}

/** A phone that starts with what another one had. */
async function copyOf(one, promised) {
  const phone = new Phone();
  const page = phone.page();
  await waited(started(new App(page, promised)));
  page.kill();
  const stores = ['values', 'events'];
  const contents = [];
  for (const store of stores) contents.push(await waited(records(one, store)));
  const opening = phone.storage.open('bentbook');
  opening.onsuccess = () => {
    const transaction = opening.result.transaction(stores, 'readwrite');
    stores.forEach((store, i) => contents[i].forEach(([key, value]) => transaction.objectStore(store).put(value, key)));
    transaction.oncomplete = () => opening.result.close();
  };
  await elapse(10);
  return phone;
}

async function started(app) {
  await app.start();
  return app;
}

const lines = async (phone) => new Set((await waited(records(phone, 'events'))).map(([, bytes]) => text(bytes)));

/** As one phone takes in another's log: every record of it, in any order. */
function takeIn(app, all) {
  const ids = [...all].map((line) => [...line.split(' ').slice(0, 2), line]);
  app.tickets.set(++app.ticket, ids.map(([, , line]) => line));
  app.store.append('log', app.ticket, new TextEncoder().encode(ids.map((r) => `${r.join('\n')}\n`).join('')));
}

async function history(seed) {
  const random = numbers(seed);
  random();
  const pick = (list) => list[Math.floor(random() * list.length)];
  const promised = new Promised();
  const made = new Set();
  let phones = [0, 1].map((n) => ({phone: new Phone(), device: `d${n}`, app: null, left: null}));
  const work = async (one, ticks) => {
    const page = one.phone.page();
    one.app = await waited(started(new App(page, promised, one.device)));
    await elapse(10);
    for (let n = 0; n < ticks; ++n) one.app.tick();
    await elapse(10);
    page.kill();
    for (const line of promised.records) made.add(line);
  };
  for (const one of phones) await work(one, 1 + Math.floor(random() * 3));
  const copied = pick(phones);
  phones.push({...copied, phone: await copyOf(copied.phone, promised)});  // the same device number
  const before = await copyOf(copied.phone, promised);
  for (let n = 0; n < 6; ++n) await work(pick(phones), 1 + Math.floor(random() * 3));
  if (random() < 0.5) copied.phone = before;  // set back
  for (let n = 0; n < 3; ++n) await work(pick(phones), 1);
  // Each takes in what each has, twice, across restarts.
  for (let round = 0; round < 2; ++round) {
    for (const one of phones) {
      for (const other of phones) {
        if (one === other) continue;
        const page = one.phone.page();
        const app = await waited(started(new App(page, promised, one.device)));
        await elapse(10);
        takeIn(app, await lines(other.phone));
        await elapse(10);
        page.kill();
      }
    }
  }
  const back = await lines(phones[0].phone);
  for (const {phone} of phones) assert.deepEqual(await lines(phone), back, `seed ${seed}: the phones are not equal`);
  let twice = 0;
  const seen = new Set();
  for (const line of back) {
    const id = line.split(' ').slice(0, 2).join(' ');
    if (seen.has(id)) ++twice;
    seen.add(id);
  }
  return {size: back.size, twice, lost: [...made].filter((line) => !back.has(line)), setBack: copied.phone === before};
}

test(`${kHistories} histories of three phones, one copied or set back`, {timeout: 60_000 + kHistories * 500}, async () => {
  let twice = 0;
  for (let seed = 1; seed <= kHistories; ++seed) {
    const {lost, setBack, twice: here} = await history(seed);
    // What a phone made and nobody took in is gone with it when it is set back.
    if (!setBack) assert.deepEqual(lost, [], `seed ${seed}`);
    twice += here;
    forgetTimers();
  }
  assert.ok(twice > kHistories / 4, `${twice} numbers were used twice`);
  console.log(`${kHistories} histories, ${twice} numbers used twice`);
});
