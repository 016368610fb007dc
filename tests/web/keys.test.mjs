// Names under which the page stores something, as is_key in core/ui/platform.h.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import {isKey} from '../../wasm-app/web/store.js';

test('a name that the app would not give is no key', () => {
  for (const key of ['kit', 'shelf', 'device', 'book12', 'demo', '00000000000000b1b', 'demo.shop', 'demo.out', 'a'.repeat(64)]) {
    assert(isKey(key), key);
  }
  for (const key of ['', '.', '..', '../x', 'a/b', 'kit/0', 'kit\0', 'Kit', 'kit.json', 'kit ', 'kit\n', '.shop',
    'a.shop.shop', 'a.out.shop', 'é', 'a'.repeat(65)]) {
    assert(!isKey(key), JSON.stringify(key));
  }
});
