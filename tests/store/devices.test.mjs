// A log of as many devices as somebody made up is read as fast as a crew's, and with the same answer.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import {Event} from '../../wasm-app/web/bridge.js';
import {App, Promised, bytes, text} from './app.mjs';
import {Phone, elapse, forgetTimers} from './phone.mjs';

const record = (device, sequence) => `${device}\n${sequence}\n${device} ${sequence} text\n`;

async function told(app, kind) {
  const found = () => app.events.find((event) => event[0] === kind);
  for (let turns = 0; !found() && turns < 100; ++turns) await elapse(1);
  return found();
}

async function put(app, ticket, log, packed) {
  app.tickets.set(ticket, []);
  app.events.length = 0;
  app.store.append(log, ticket, bytes(packed));
  assert.ok(await told(app, Event.appended));
}

/** What the log's lines are but for those that are known, and how many calls to the storage that took. */
async function read(app, known) {
  app.events.length = 0;
  let calls = 0;
  app.page.phone.fault = () => {
    calls += 1;
    return null;
  };
  app.store.readLog('log', bytes(known.map(([device, sequence]) => `${device}\n${sequence}\n\n`).join('')));
  const [, , said, trouble] = await told(app, Event.logRead);
  return {calls, trouble, lines: trouble ? [] : text(said).split('\n').filter(Boolean)};
}

for (const devices of [3, 16, 17, 3000]) {
  test(`a log of ${devices} devices is read with few calls, from the start or from what is known`, {timeout: 60_000}, async () => {
    const app = new App(new Phone().page(), new Promised());
    app.start();
    await elapse(100);
    const names = Array.from({length: devices}, (_, i) => `d${String(i).padStart(4, '0')}`);
    await put(app, 1, 'log', names.map((d) => record(d, 1) + record(d, 2)).join(''));
    await put(app, 2, 'other', record('d0000', 1));
    const all = names.flatMap((d) => [`${d} 1 text`, `${d} 2 text`]);

    const whole = await read(app, []);
    assert.deepEqual([whole.lines, whole.trouble], [all, 0]);
    const rest = await read(app, names.map((d) => [d, 1]));
    assert.deepEqual(rest.lines, names.map((d) => `${d} 2 text`));
    assert.deepEqual((await read(app, names.slice(1).map((d) => [d, 2]))).lines, ['d0000 1 text', 'd0000 2 text']);
    assert.equal((await read(app, names.map((d) => [d, 3]))).trouble, 2, 'more is known than there is');
    assert.equal((await read(app, [...names.map((d) => [d, 2]), ['x', 1]])).trouble, 2, 'a device that is not there');
    for (const {calls} of [whole, rest]) assert.ok(calls < 60, `${calls} calls`);

    // Unlike records under one number are both read, and are no beginning.
    await put(app, 3, 'log', 'd0000\n1\nanother\n');
    assert.equal((await read(app, [])).lines.length, all.length + 1);
    assert.equal((await read(app, names.map((d) => [d, 1]))).trouble, 2);
    app.page.kill();
    forgetTimers();
  });
}
