// node tests/bench/size.mjs BUILD_DIR DIST: each room's share of the first visit, then of the raising's module, in brotli.
// BENTBOOK_LARGEST=30 adds the largest functions. BUILD_DIR is built with the symbol map.
//
// A function belongs to the room whose object file defines its symbol; what several rooms make alike (inline functions,
// templates) stands as one row, and so does static data. Each row is compressed by itself and then scaled, so that the
// rows of a module add up to the module's own brotli size.

import {execFileSync} from 'node:child_process';
import {readFileSync, readdirSync, statSync} from 'node:fs';
import {join} from 'node:path';

import {brotli, isLater} from './brotli.mjs';

const [build, dist] = process.argv.slice(2);
const kb = (bytes) => (bytes / 1024).toFixed(1).padStart(7);

/** An unsigned LEB128 number at `at.i`, which moves on. */
function number(wasm, at) {
  let value = 0, shift = 0;
  for (;;) {
    const byte = wasm[at.i++];
    value += (byte & 127) * 2 ** shift;
    if (byte < 128) return value;
    shift += 7;
  }
}

/** Function bodies by index, and the bytes of the data section. */
function parts(wasm) {
  const bodies = new Map();
  let imported = 0, data = Buffer.alloc(0);
  const at = {i: 8};
  while (at.i < wasm.length) {
    const id = wasm[at.i++], size = number(wasm, at), end = at.i + size;
    if (id === 2) imported = importedFunctions(wasm, at);
    if (id === 11) data = wasm.subarray(at.i, end);
    if (id === 10) {
      const count = number(wasm, at);
      for (let f = 0; f < count; ++f) {
        const length = number(wasm, at);
        bodies.set(imported + f, wasm.subarray(at.i, at.i + length));
        at.i += length;
      }
    }
    at.i = end;
  }
  return {bodies, data};
}

function importedFunctions(wasm, at) {
  let functions = 0;
  for (let left = number(wasm, at); left > 0; --left) {
    for (const _ of [1, 2]) {
      const length = number(wasm, at); // evaluated before at.i is read again
      at.i += length;
    }
    const kind = wasm[at.i++];
    if (kind === 0) ++functions, number(wasm, at);
    else if (kind === 1) at.i++, limits(wasm, at);
    else if (kind === 2) limits(wasm, at);
    else at.i += 2;
  }
  return functions;
}

function limits(wasm, at) {
  const most = wasm[at.i++] & 1;
  number(wasm, at);
  if (most) number(wasm, at);
}

function objects(folder) {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? objects(path) : name.endsWith('.o') ? [path] : [];
  });
}

/** The room of an object file: batches are named for their folder (cmake/batches.cmake). */
function roomOf(path) {
  const batch = path.match(/\/batches\/core_(.*)_\d+\.cpp\.o$/);
  if (batch) return batch[1].replaceAll('_', '/');
  if (path.includes('/generated/')) return 'words';
  return ['imgui', 'lp_solver', 'qrcodegen', 'libm', 'wasm-app'].find((part) => path.includes(part)) ?? 'other';
}

const kSeveral = 'inline functions of several rooms';

/** Symbol to room, of every object file of the build. */
function roomsOfSymbols() {
  const found = new Map();
  for (const path of objects(build)) {
    const lines = execFileSync('/usr/lib/llvm-14/bin/llvm-nm', ['-C', '--defined-only', '--no-sort', path],
      {maxBuffer: 1 << 28, stdio: ['ignore', 'pipe', 'ignore']}).toString().split('\n');
    for (const line of lines) {
      const [, kind, symbol] = line.match(/^\S+ ([TtWw]) (.*)$/) ?? [];
      const room = roomOf(path), before = found.get(symbol) ?? room;
      if (symbol) found.set(symbol, kind.toLowerCase() === 'w' && before !== room ? kSeveral : room);
    }
  }
  return found;
}

/** Names by index, from the symbol map: what is no letter is escaped there. */
function namesOf(module) {
  const lines = readFileSync(join(build, 'wasm-app', `${module}.js.symbols`), 'utf8').split('\n').filter(Boolean);
  return new Map(lines.map((line) => {
    const colon = line.indexOf(':');
    const name = line.slice(colon + 1).replace(/\\([0-9a-f]{2})/g, (_, hex) => String.fromCharCode(parseInt(hex, 16)));
    return [Number(line.slice(0, colon)), name];
  }));
}

function roomOfFunction(name, known) {
  if (/^([a-z]+\*? )*std::/.test(name)) return 'C++ library';
  const plain = name.replace(/\.\d+$/, '');
  if (/^SDL/.test(name)) return 'SDL2';
  if (/rapidjson::/.test(name)) return 'text';
  return known.get(name) ?? known.get(plain) ?? 'C library and the rest';
}

/** Rows {name, bytes, small} of a module, and its functions by size. */
function moduleRows(module, known) {
  const wasm = readFileSync(join(build, 'wasm-app', `${module}.wasm`));
  const {bodies, data} = parts(wasm);
  const names = namesOf(module);
  const rooms = new Map([['static data (words, fonts, tables)', [data]]]);
  const functions = [];
  for (const [index, body] of bodies) {
    const name = names.get(index) ?? '';
    const room = roomOfFunction(name, known);
    if (!rooms.has(room)) rooms.set(room, []);
    rooms.get(room).push(body);
    functions.push({name, room, bytes: body.length});
  }
  const rows = [...rooms].map(([name, pieces]) => {
    const all = Buffer.concat(pieces);
    return {name, bytes: all.length, small: brotli(all)};
  });
  const scale = brotli(wasm) / rows.reduce((sum, row) => sum + row.small, 0);
  for (const row of rows) row.small *= scale;
  return {rows, functions: functions.sort((a, b) => b.bytes - a.bytes)};
}

/** The other files of the page, or those behind it, as rows. */
const fileRows = (wanted) => readdirSync(dist).filter((file) => !/\.wasm$/.test(file) && wanted(file)).map((name) => {
  const bytes = readFileSync(join(dist, name));
  return {name, bytes: bytes.length, small: Math.min(brotli(bytes), bytes.length)};
});

function print(title, rows, functions) {
  const sum = (what) => rows.reduce((all, row) => all + row[what], 0);
  console.log(`\n${title}: ${kb(sum('small')).trim()} KB brotli, ${sum('bytes')} bytes`);
  for (const row of rows.sort((a, b) => b.small - a.small))
    console.log(`${kb(row.small)} KB ${String(row.bytes).padStart(8)} bytes  ${row.name}`);
  for (const f of functions.slice(0, Number(process.env.BENTBOOK_LARGEST ?? 0)))
    console.log(`${String(f.bytes).padStart(8)} bytes  ${f.room}: ${f.name}`);
}

const known = roomsOfSymbols();
const app = moduleRows('bentbook_app', known), raising = moduleRows('bentbook_raising', known);
print('First visit', [...app.rows, ...fileRows((file) => !isLater(file))], app.functions);
print('Module of the raising', raising.rows, raising.functions);
