// The built page on a server of its own, and folders that go away with the test.
import {mkdirSync, mkdtempSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {dirname, join} from 'node:path';
import {fileURLToPath} from 'node:url';

import {serve} from '../../wasm-app/serve.mjs';

export const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
export const dist = process.env.BENTBOOK_DIST ?? join(root, 'build/wasm/dist');
export const shots = join(root, 'build/screenshots');
mkdirSync(shots, {recursive: true});

/** A throw-away folder, gone when the tests have ended. (A test's own end is too soon: its browser may still write.) */
export function scratch() {
  const folder = mkdtempSync(join(tmpdir(), 'bentbook-web-'));
  folders.push(folder);
  return folder;
}

const folders = [];
process.on('exit', () => folders.forEach((f) => rmSync(f, {recursive: true, force: true, maxRetries: 5})));

/** Serves `folder`; stop() really stops it, start() brings it back on the same port. */
export async function server(t, folder = dist) {
  let running = await serve(folder, 0);
  const {port} = running.address();
  const requests = [];
  const listen = () => running.on('request', (request) => requests.push(request.url));
  listen();
  const site = {
    url: `http://localhost:${port}/`,
    requests,
    async stop() {
      if (!running) return;
      const closed = new Promise((resolve) => running.close(resolve));
      running.closeAllConnections();
      await closed;
      running = null;
    },
    async start() {
      running = await serve(folder, port);
      listen();
    },
  };
  t.after(() => site.stop());
  return site;
}

export {join};
