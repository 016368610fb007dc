// node tests/bench/size.mjs BUILD_DIR MODULE: each room's share of a WebAssembly module.
//
// A function belongs to the room whose object file defines its symbol; templates and inline functions that several
// rooms make belong to the library that they come from. Sizes are bytes in the module, and the share of its brotli size
// that the room's functions take when all functions are compressed room by room. Static data stands as one row.

import {execFileSync} from 'node:child_process';
import {existsSync, readFileSync, readdirSync, statSync} from 'node:fs';
import {join} from 'node:path';
import {brotliCompressSync, constants} from 'node:zlib';

const [build, module] = process.argv.slice(2);
const brotli = (bytes) => brotliCompressSync(bytes, {params: {[constants.BROTLI_PARAM_QUALITY]: 11}}).length;
const wasm = readFileSync(join(build, 'wasm-app', `${module}.wasm`));
const symbolFile = join(build, 'wasm-app', `${module}.js.symbols`);

/** An unsigned LEB128 number at `at.i`, which moves on. */
function number(at) {
  let value = 0, shift = 0;
  for (;;) {
    const byte = wasm[at.i++];
    value += (byte & 127) * 2 ** shift;
    if (byte < 128) return value;
    shift += 7;
  }
}

/** Function bodies by index, and the bytes of the data section. */
function parts() {
  const bodies = new Map();
  let imported = 0, data = Buffer.alloc(0);
  const at = {i: 8};
  while (at.i < wasm.length) {
    const id = wasm[at.i++], size = number(at), end = at.i + size;
    if (id === 2) imported = importedFunctions(at);
    if (id === 11) data = wasm.subarray(at.i, end);
    if (id === 10) {
      const count = number(at);
      for (let f = 0; f < count; ++f) {
        const length = number(at);
        bodies.set(imported + f, wasm.subarray(at.i, at.i + length));
        at.i += length;
      }
    }
    at.i = end;
  }
  return {bodies, data};
}

function importedFunctions(at) {
  let functions = 0;
  for (let left = number(at); left > 0; --left) {
    for (const _ of [1, 2]) {
      const length = number(at); // evaluated before at.i is read again
      at.i += length;
    }
    const kind = wasm[at.i++];
    if (kind === 0) ++functions, number(at);
    else if (kind === 1) at.i++, limits(at);
    else if (kind === 2) limits(at);
    else at.i += 2;
  }
  return functions;
}

function limits(at) {
  const most = wasm[at.i++] & 1;
  number(at);
  if (most) number(at);
}

function objects(folder) {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? objects(path) : /\.o$/.test(name) ? [path] : [];
  });
}

function roomOf(path) {
  const own = path.match(/\/core\/(.*)\/[^/]*\.o$/);
  if (own) return own[1].startsWith('screens') || own[1].includes('/') ? own[1] : own[1];
  if (path.includes('/generated/')) return 'made at build (words, fonts)';
  for (const part of ['imgui', 'rapidjson', 'lp_solver', 'qrcodegen', 'libm', 'SDL2']) if (path.includes(part)) return part;
  if (path.includes('wasm-app')) return 'wasm-app';
  return 'other';
}

/** symbol -> room; weak ones, which several rooms may make, by their namespace. */
function rooms() {
  const nm = ['/usr/lib/llvm-14/bin/llvm-nm', 'llvm-nm'].find((p) => p === 'llvm-nm' || existsSync(p));
  const found = new Map();
  for (const path of objects(build)) {
    const room = roomOf(path);
    const lines = execFileSync(nm, ['-C', '--defined-only', '--no-sort', path], {maxBuffer: 1 << 28, stdio: ['ignore', 'pipe', 'ignore']}).toString();
    for (const line of lines.split('\n')) {
      const [, kind, symbol] = line.match(/^\S+ (\w) (.*)$/) ?? [];
      if (symbol && 'TtWw'.includes(kind) && !(kind.toLowerCase() === 'w' && found.has(symbol))) found.set(symbol, room);
    }
  }
  return found;
}

const {bodies, data} = parts();
const known = rooms();
const byRoom = new Map();
const names = new Map(readFileSync(symbolFile, 'utf8').split('\n').filter(Boolean).map((line) => {
  const colon = line.indexOf(':');
  return [Number(line.slice(0, colon)), line.slice(colon + 1).replace(/\\([0-9a-f]{2})/g, (_, hex) => String.fromCharCode(parseInt(hex, 16)))];
}));
for (const [index, body] of bodies) {
  const name = names.get(index) ?? '';
  const plain = name.replace(/\.\d+$/, '');
  const standard = /^(void |bool |unsigned |int |char\*? |long )*std::/.test(plain);
  const room = standard ? 'C++ library' : known.get(name) ?? known.get(plain) ?? (plain.startsWith('SDL') ? 'SDL2' : 'C library and the rest');
  if (!byRoom.has(room)) byRoom.set(room, []);
  byRoom.get(room).push({name, body});
}
const rows = [...byRoom].map(([room, list]) => ({room, count: list.length,
  bytes: list.reduce((sum, f) => sum + f.body.length, 0), small: brotli(Buffer.concat(list.map((f) => f.body)))}));
rows.push({room: 'static data (words, fonts, tables)', count: 0, bytes: data.length, small: brotli(data)});
rows.sort((a, b) => b.small - a.small);
const scale = brotli(wasm) / rows.reduce((sum, r) => sum + r.small, 0);
console.log(`${module}.wasm: ${wasm.length} bytes, ${(brotli(wasm) / 1024).toFixed(1)} KB brotli`);
for (const r of rows)
  console.log(`${(r.small * scale / 1024).toFixed(1).padStart(7)} KB ${String(r.bytes).padStart(8)} bytes ${String(r.count || '').padStart(5)}  ${r.room}`);
if (process.env.BENTBOOK_LARGEST) {
  const all = [...byRoom.values()].flat().sort((a, b) => b.body.length - a.body.length);
  for (const f of all.slice(0, Number(process.env.BENTBOOK_LARGEST))) console.log(`${String(f.body.length).padStart(7)}  ${f.name}`);
}
