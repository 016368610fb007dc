// Firefox in a window under Xvfb (without one it has no WebGL), driven by its own Marionette: WebDriver's commands over a
// socket, each message with its length before it.
import {spawn} from 'node:child_process';
import {once} from 'node:events';
import {mkdirSync, writeFileSync} from 'node:fs';
import {connect} from 'node:net';

import {driven, endGroup, freePort, soon} from './window.mjs';

/** A server of Marionette's protocol, 3: [0, id, command, parameters] is answered by [1, id, error, result]. */
function speak(socket) {
  const waiting = new Map();
  let unread = Buffer.alloc(0);
  let last = 0;
  socket.on('data', (some) => {
    unread = Buffer.concat([unread, some]);
    for (;;) {
      const colon = unread.indexOf(':');
      const end = colon + 1 + Number(unread.subarray(0, Math.max(colon, 0)));
      if (colon < 0 || unread.length < end) return;
      const message = JSON.parse(unread.subarray(colon + 1, end));
      unread = unread.subarray(end);
      if (Array.isArray(message)) waiting.get(message[1])(message[2], message[3]);
    }
  });
  socket.on('close', () => waiting.forEach((answer) => answer({error: 'closed', message: 'Firefox has gone'})));
  return (command, parameters = {}) => new Promise((resolve, reject) => {
    const id = ++last;
    waiting.set(id, (error, result) => {
      waiting.delete(id);
      if (error) reject(new Error(`${command}: ${error.error} ${error.message}`));
      else resolve(result);
    });
    const text = JSON.stringify([0, id, command, parameters]);
    socket.write(`${Buffer.byteLength(text)}:${text}`);
  });
}

async function reach(port) {
  for (let tries = 0; tries < 300; ++tries) {
    const socket = connect(port, '127.0.0.1');
    const up = await Promise.race([once(socket, 'connect').then(() => true, () => false), once(socket, 'close').then(() => false)]);
    if (up) return socket;
    await soon();
  }
  throw new Error('Firefox does not answer');
}

/** Firefox on the profile in `folder`, which it finds as it was left; kill() ends every process of it at once. */
export async function drive(t, env, folder) {
  const port = await freePort();
  mkdirSync(folder, {recursive: true});
  const settings = {
    'marionette.port': port, 'browser.shell.checkDefaultBrowser': false, 'datareporting.policy.dataSubmissionEnabled': false,
    'app.update.enabled': false, 'network.captive-portal-service.enabled': false, 'network.connectivity-service.enabled': false,
    'browser.safebrowsing.downloads.remote.enabled': false, 'extensions.getAddons.cache.enabled': false,
    'browser.sessionstore.resume_from_crash': false, 'toolkit.startup.max_resumed_crashes': -1,
  };
  writeFileSync(`${folder}/user.js`,
      Object.entries(settings).map((s) => `user_pref(${s.map((v) => JSON.stringify(v)).join(', ')});\n`).join(''));
  const firefox = spawn('firefox-esr', ['--marionette', '--no-remote', '--profile', folder, '--width', '500', '--height', '900',
    'about:blank'], {env, stdio: 'ignore', detached: true});
  t.after(() => endGroup(firefox));
  const socket = await reach(port);
  socket.on('error', () => {});  // it was killed
  t.after(() => socket.destroy());
  const call = speak(socket);
  await call('WebDriver:NewSession', {});
  await call('WebDriver:SetTimeouts', {script: 60_000, pageLoad: 60_000});
  const run = async (script, ...args) => (await call('WebDriver:ExecuteScript', {script, args, sandbox: null})).value;
  return {
    ...driven({
      go: (url) => call('WebDriver:Navigate', {url}),
      /** As its user does it: the driver's own command passes the service worker by. */
      async reload() {
        await run('window.before = true; setTimeout(() => location.reload(), 0)');
        while (await run('return window.before').catch(() => true)) await soon();
      },
      run,
      screenshot: async () => Buffer.from((await call('WebDriver:TakeScreenshot', {full: false})).value, 'base64'),
    }),
    async kill() {
      const gone = once(firefox, 'exit');
      endGroup(firefox);
      await gone;
    },
  };
}
