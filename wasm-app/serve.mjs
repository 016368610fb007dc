// A small static server for trying the phone app: node serve.mjs FOLDER [PORT]
// Port 0 takes any free one; the address is printed when it listens. Nothing outside FOLDER is served.
import { createServer } from 'node:http';
import { readFile, stat } from 'node:fs/promises';
import { extname, join, normalize, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

const kTypes = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.wasm': 'application/wasm',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ico': 'image/x-icon',
  '.txt': 'text/plain; charset=utf-8',
};

export const kSecurityHeaders = {
  'Content-Security-Policy':
    "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; " +
    "object-src 'none'; base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; " +
    "trusted-types bentbook; frame-ancestors 'none'",
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Permissions-Policy': 'camera=(self), geolocation=(), microphone=()',
};

async function fileFor(root, url) {
  let path = decodeURIComponent(new URL(url, 'http://localhost').pathname);
  if (path.endsWith('/')) path += 'index.html';
  const file = normalize(join(root, path));
  if (file.includes('\0') || !file.startsWith(root + sep)) return null;
  return (await stat(file)).isFile() ? file : null;
}

async function answer(root, request, response) {
  for (const [name, value] of Object.entries(kSecurityHeaders)) response.setHeader(name, value);
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.writeHead(405, { Allow: 'GET, HEAD' }).end();
    return;
  }
  let file = null;
  let body = null;
  try {
    file = await fileFor(root, request.url);
    if (file) body = await readFile(file);
  } catch {
    file = null; // no such file, or a path that cannot be read: the same answer
  }
  if (!file) {
    response.writeHead(404, { 'Content-Type': 'text/plain; charset=utf-8' }).end('not here\n');
    return;
  }
  // Always asked again: the service worker keeps the app, a browser's own cache would only hide a new version.
  response.writeHead(200, {
    'Content-Type': kTypes[extname(file)] ?? 'application/octet-stream',
    'Content-Length': body.length,
    'Cache-Control': 'no-cache',
  });
  response.end(request.method === 'HEAD' ? undefined : body);
}

/** Serves `folder`; resolves to the http.Server once it listens on `port` (0: any free one) of this machine. */
export function serve(folder, port) {
  const root = resolve(folder);
  const server = createServer((request, response) => {
    answer(root, request, response).catch(() => response.destroy());
  });
  return new Promise((done, fail) => {
    server.once('error', fail);
    server.listen(port, process.env.HOST ?? '127.0.0.1', () => done(server));
  });
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const [folder, port = '8080'] = process.argv.slice(2);
  serve(folder, Number(port)).then(
    (server) => console.log(`Bentbook is on http://localhost:${server.address().port}`),
    (error) => {
      console.error(error.code === 'EADDRINUSE' ? `port ${port} is taken: PORT=… picks another` : String(error));
      process.exit(1);
    },
  );
}
