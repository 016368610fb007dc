// WebKit, as near as Debian gets to a phone's: MiniBrowser under Xvfb, driven through WebKitWebDriver (W3C WebDriver),
// or started plainly, where the page itself reports to the test's server.
import {spawn} from 'node:child_process';
import {once} from 'node:events';
import {existsSync, readdirSync} from 'node:fs';

import {driven, endGroup, environment as windowed, freePort, soon} from './window.mjs';

const kLibraries = '/usr/lib/x86_64-linux-gnu';

export function miniBrowser() {
  for (const folder of readdirSync(kLibraries).filter((f) => f.startsWith('webkit2gtk-')).sort().reverse()) {
    const file = `${kLibraries}/${folder}/MiniBrowser`;
    if (existsSync(file)) return file;
  }
  throw new Error('MiniBrowser is not installed');
}

/** No sandbox, which needs rights that a container does not give. */
export const environment = (home, name) =>
  ({...windowed(home, name), WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1'});

export async function startPlainly(t, env, url) {
  const browser = spawn(miniBrowser(), ['--geometry=500x900', url], {env, stdio: 'ignore', detached: true});
  const end = () => endGroup(browser);
  t.after(end);
  return {
    async end() {
      const gone = once(browser, 'exit');
      end();
      await gone;
    },
  };
}

/** A WebDriver session: driven() of window.mjs. */
export async function drive(t, env) {
  const port = await freePort();
  const driver = spawn('WebKitWebDriver', [`--port=${port}`, '--host=127.0.0.1'], {env, stdio: 'ignore', detached: true});
  t.after(() => endGroup(driver));
  const base = `http://127.0.0.1:${port}`;

  async function call(method, path, body) {
    const response = await fetch(base + path, {method, body: body && JSON.stringify(body)});
    const {value} = await response.json();
    if (!response.ok) throw new Error(`${path}: ${value.error} ${value.message}`);
    return value;
  }

  for (let tries = 0;; ++tries) {
    const up = await fetch(`${base}/status`).then(() => true, () => false);
    if (up) break;
    if (tries === 50) throw new Error('WebKitWebDriver does not answer');
    await soon();
  }
  const {sessionId} = await call('POST', '/session', {capabilities: {alwaysMatch: {
    'webkitgtk:browserOptions': {binary: miniBrowser(), args: ['--automation', '--geometry=500x900']},
  }}});
  const session = `/session/${sessionId}`;
  t.after(() => call('DELETE', session).catch(() => {}));
  await call('POST', `${session}/timeouts`, {script: 60_000, pageLoad: 60_000});
  const run = (script, ...args) => call('POST', `${session}/execute/sync`, {script, args});
  return driven({
    go: (url) => call('POST', `${session}/url`, {url}),
    reload: () => call('POST', `${session}/refresh`, {}),
    run,
    screenshot: async () => Buffer.from(await call('GET', `${session}/screenshot`), 'base64'),
  });
}
