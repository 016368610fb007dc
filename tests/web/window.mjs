// What browsers in a real window need: an X server of their own, a free port, an end. And a page of theirs, driven by
// WebDriver's commands, however those are sent.
import {spawn} from 'node:child_process';
import {once} from 'node:events';
import {readFileSync} from 'node:fs';
import {createServer} from 'node:net';

import {join, root} from './site.mjs';

export const helpers = join(root, 'tests/web/in_page.js');

export const soon = () => new Promise((resolve) => setTimeout(resolve, 100));

export async function freePort() {
  const server = createServer();
  await once(server.listen(0, '127.0.0.1'), 'listening');
  const {port} = server.address();
  await new Promise((resolve) => server.close(resolve));
  return port;
}

/** Ends the whole process group of a child that was started detached. */
export function endGroup(child) {
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

/** Its own home and software GL. */
export const environment = (home, name) => ({
  ...process.env, DISPLAY: name, HOME: home, XDG_DATA_HOME: `${home}/data`, XDG_CACHE_HOME: `${home}/cache`,
  XDG_CONFIG_HOME: `${home}/config`, LIBGL_ALWAYS_SOFTWARE: '1', LANG: 'C.UTF-8', GDK_BACKEND: 'x11', NO_AT_BRIDGE: '1',
});

/** @param commands {go(url), reload(), run(script, ...arguments), screenshot()} */
export function driven(commands) {
  const {run} = commands;
  const browser = {
    ...commands,
    /** Runs `script` again and again until it returns something true. */
    async until(script, ...args) {
      for (let tries = 0; tries < 300; ++tries) {
        const value = await run(script, ...args);
        if (value) return value;
        await soon();
      }
      throw new Error(`waited in vain for: ${script}`);
    },
    /** What the steps, in words of in_page.js, come to. */
    async does(steps, ...args) {
      await run(`${readFileSync(helpers, 'utf8')}; window.done = null;
        (async (...args) => { ${steps} })(...arguments).then((r) => { window.done = {r}; }, (e) => { window.done = {e: String(e)}; })`, ...args);
      const {r, e} = await browser.until('return window.done');
      if (e) throw new Error(e);
      return r;
    },
    /** The page has loaded, and can be used. */
    async ready() {
      await browser.until("return document.documentElement.dataset.state !== 'loading'");
      return run('return document.documentElement.dataset.state');
    },
  };
  return browser;
}
