// WebKit, as near as Debian gets to a phone's: MiniBrowser under Xvfb, driven through WebKitWebDriver (W3C WebDriver),
// or started plainly, where the page itself reports to the test's server.
import {spawn} from 'node:child_process';
import {once} from 'node:events';
import {existsSync, readdirSync} from 'node:fs';
import {createServer} from 'node:net';

const kLibraries = '/usr/lib/x86_64-linux-gnu';

export function miniBrowser() {
  for (const folder of readdirSync(kLibraries).filter((f) => f.startsWith('webkit2gtk-')).sort().reverse()) {
    const file = `${kLibraries}/${folder}/MiniBrowser`;
    if (existsSync(file)) return file;
  }
  throw new Error('MiniBrowser is not installed');
}

async function freePort() {
  const server = createServer();
  await once(server.listen(0, '127.0.0.1'), 'listening');
  const {port} = server.address();
  await new Promise((resolve) => server.close(resolve));
  return port;
}

/** Ends the whole process group of a child that was started detached. */
function endGroup(child) {
  try {
    process.kill(-child.pid, 'SIGKILL');
  } catch {
    return;  // it has ended by itself
  }
}

/** An X server of our own on a free display; returns its name. */
export async function display(t) {
  const x = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1280x1000x24', '-nolisten', 'tcp'],
      {stdio: ['ignore', 'ignore', 'ignore', 'pipe'], detached: true});
  t.after(() => endGroup(x));
  const [number] = await once(x.stdio[3], 'data');
  return `:${String(number).trim()}`;
}

/** Its own home, software GL, no sandbox (which needs rights that a container does not give). */
export const environment = (home, name) => ({
  ...process.env, DISPLAY: name, HOME: home, XDG_DATA_HOME: `${home}/data`, XDG_CACHE_HOME: `${home}/cache`,
  XDG_CONFIG_HOME: `${home}/config`, LIBGL_ALWAYS_SOFTWARE: '1', WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1',
  LANG: 'C.UTF-8', GDK_BACKEND: 'x11', NO_AT_BRIDGE: '1',
});

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

/** A WebDriver session: go(url), run(script, ...arguments), screenshot(). */
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
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  const {sessionId} = await call('POST', '/session', {capabilities: {alwaysMatch: {
    'webkitgtk:browserOptions': {binary: miniBrowser(), args: ['--automation', '--geometry=500x900']},
  }}});
  const session = `/session/${sessionId}`;
  t.after(() => call('DELETE', session).catch(() => {}));
  await call('POST', `${session}/timeouts`, {script: 60_000, pageLoad: 60_000});
  const run = (script, ...args) => call('POST', `${session}/execute/sync`, {script, args});
  return {
    go: (url) => call('POST', `${session}/url`, {url}),
    reload: () => call('POST', `${session}/refresh`, {}),
    run,
    /** Runs `script` again and again until it returns something true. */
    async until(script, ...args) {
      for (let tries = 0; tries < 300; ++tries) {
        const value = await run(script, ...args);
        if (value) return value;
        await new Promise((resolve) => setTimeout(resolve, 100));
      }
      throw new Error(`waited in vain for: ${script}`);
    },
    screenshot: async () => Buffer.from(await call('GET', `${session}/screenshot`), 'base64'),
  };
}
