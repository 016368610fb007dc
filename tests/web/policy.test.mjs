// The page's own Content-Security-Policy and the server's are one.
import assert from 'node:assert/strict';
import {readFileSync} from 'node:fs';
import {test} from 'node:test';

import {kSecurityHeaders} from '../../wasm-app/serve.mjs';

const directives = (policy) => new Map(policy.split(';').map((part) => part.trim().split(/\s+/))
  .map(([name, ...values]) => [name, values.join(' ')]));

test('the page carries the policy that the server sends, but for what only a header can say', () => {
  const page = readFileSync(new URL('../../wasm-app/web/index.html', import.meta.url), 'utf8');
  const own = directives(/http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page)[1]);
  const sent = directives(kSecurityHeaders['Content-Security-Policy']);
  assert.equal(sent.get('frame-ancestors'), "'none'");
  sent.delete('frame-ancestors');
  assert.deepEqual(own, sent);
  assert.equal(own.get('form-action'), "'none'");
  assert.equal(own.get('require-trusted-types-for'), "'script'");
});
