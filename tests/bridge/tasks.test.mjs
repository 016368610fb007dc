// wasm-app/web/tasks.js with Workers that only remember: one task at a time, cancelled ones silent, broken ones told.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import {makeTasks} from '../../wasm-app/web/tasks.js';

/** tasks: under test; told: what it told; workers: those that were hired, in order. */
function made({hires = true} = {}) {
  const told = [], workers = [];
  const tell = Object.fromEntries(['progress', 'done', 'failed'].map((kind) => [kind, (...said) => told.push([kind, ...said])]));
  const hire = (urls) => {
    if (!hires) throw new Error('no Workers here');
    const worker = {
      urls, sent: [], ended: false,
      postMessage(message) { this.sent.push(message); },
      terminate() { this.ended = true; },
      says(data) { this.onmessage({data}); },
    };
    workers.push(worker);
    return worker;
  };
  console.error = () => {};
  return {told, workers, tasks: makeTasks(tell, {app: 'app', raising: 'raising'}, hire)};
}

test('one task runs at a time in each crew, the next one when it is done', () => {
  const {told, workers, tasks} = made();
  tasks.start('raising', 'check 1', 'r1', 'f');
  tasks.start('raising', 'explain 2', 'r2', 'f');
  tasks.start('app', 'pattern 3', 'r3', '');
  assert.deepEqual(workers.map((w) => [w.urls, w.sent]), [
    ['raising', [{request: 'r1', frame: 'f', words: null}]], ['app', [{request: 'r3', frame: '', words: null}]],
  ]);
  workers[0].says({loaded: true});
  workers[0].says({progress: 500});
  workers[0].says({bytes: 'answer'});
  assert.deepEqual(told, [['progress', 'check 1', 500], ['done', 'check 1', 'answer']]);
  assert.equal(workers[0].sent[1].request, 'r2');
});

test('a Worker that traps ends its task, and the next task runs in a new one', () => {
  const {told, workers, tasks} = made();
  tasks.start('raising', 'search 1', 'r1', 'f');
  tasks.start('raising', 'check 2', 'r2', 'f');
  workers[0].says({loaded: true});
  workers[0].says({broke: 'RuntimeError: unreachable'});
  assert.deepEqual(told, [['failed', 'search 1', true]]);
  assert.ok(workers[0].ended);
  assert.deepEqual(workers[1].sent, [{request: 'r2', frame: 'f', words: null}]);
  workers[1].says({bytes: 'answer'});
  assert.deepEqual(told[1], ['done', 'check 2', 'answer']);
});

test('what a Worker says after its end is not heard', () => {
  const {told, workers, tasks} = made();
  tasks.start('raising', 'check 1', 'r1', 'f');
  workers[0].onerror({message: 'out of memory'});
  tasks.start('raising', 'check 2', 'r2', 'f');
  workers[0].says({bytes: 'late'});
  workers[0].onerror({message: 'again'});
  assert.deepEqual(told, [['failed', 'check 1', false]]);
  workers[1].says({bytes: 'answer'});
  assert.deepEqual(told[1], ['done', 'check 2', 'answer']);
});

test('a module that cannot be loaded, or no Worker at all, is told as that', () => {
  const one = made();
  one.tasks.start('app', 'pattern 1', 'r', '');
  one.workers[0].says({broke: 'both async and sync fetching of the wasm failed'});
  assert.deepEqual(one.told, [['failed', 'pattern 1', false]]);
  const none = made({hires: false});
  none.tasks.start('app', 'pattern 1', 'r', '');
  none.tasks.start('app', 'pattern 2', 'r', '');
  assert.deepEqual(none.told, [['failed', 'pattern 1', false], ['failed', 'pattern 2', false]]);
});

test('a cancelled task says nothing; the others run on', () => {
  const {told, workers, tasks} = made();
  for (const n of [1, 2, 3]) tasks.start('raising', `check ${n}`, `r${n}`, 'f');
  tasks.cancel('check 2');
  assert.ok(!workers[0].ended);
  tasks.cancel('check 1');
  assert.ok(workers[0].ended);
  workers[0].says({bytes: 'late'});
  assert.deepEqual(workers[1].sent, [{request: 'r3', frame: 'f', words: null}]);
  workers[1].says({bytes: 'answer'});
  assert.deepEqual(told, [['done', 'check 3', 'answer']]);
  tasks.cancel('check 9');
});
