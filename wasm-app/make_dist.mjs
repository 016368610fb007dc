// node wasm-app/make_dist.mjs BUILD_DIR DIST_DIR: puts the phone app's files together, ready for any static host.
//
// Scripts are bundled and made small, every file but the entry points is named by its content, and the service worker
// gets the list of all with their SHA-256. The folder is made beside and put in place whole.

import {execFileSync} from 'node:child_process';
import {createHash} from 'node:crypto';
import {existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync} from 'node:fs';
import {basename, dirname, extname, join} from 'node:path';
import {fileURLToPath} from 'node:url';
import {brotliCompressSync, constants} from 'node:zlib';

import {smallPng} from './small_png.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const root = dirname(here);
const [buildDir, distDir] = process.argv.slice(2);
if (!distDir) {
  console.error('usage: node make_dist.mjs BUILD_DIR DIST_DIR');
  process.exit(2);
}
const stage = `${distDir}.new`;
const sha256 = (bytes) => createHash('sha256').update(bytes).digest('hex');

/** Emitted modules lie in the build's wasm-app folder. */
const emitted = (name) => join(buildDir, 'wasm-app', name);

/** A unit of the cache of dependencies (cmake/deps.sh). */
const unit = (name) => run('bash', [join(root, 'cmake/deps.sh'), 'where', name]).toString().trim();

function run(program, args) {
  try {
    return execFileSync(program, args, {stdio: ['ignore', 'pipe', 'inherit']});
  } catch (error) {
    console.error(`make_dist: ${program} ${error.code === 'ENOENT' ? 'is not installed' : 'failed'}`);
    process.exit(1);
  }
}

/** Words of the page, made from the string tables: [{tag, words}], English first. */
const kPageWords = join(buildDir, 'generated', 'words', 'page_words.json');
const languages = JSON.parse(readFileSync(kPageWords, 'utf8'));
/** Files of the texts that are not in the module: tag → path. */
const putTexts = () => Object.fromEntries(languages.slice(1).map(({tag}) =>
  [tag, later(putHashed(`texts-${tag}.txt`, readFileSync(join(dirname(kPageWords), `texts_${tag}.txt`))))]));
/** One message in every language, a paragraph each. */
const paragraphs = (id) => languages.map(({tag, words}) => `<p lang="${tag}">${words[id]}</p>`).join('');

/** A script and all that it imports, but for the emitted module, which page and worker share: `core` is its file. */
function bundle(entry, core) {
  const shared = core ? [`--alias:bentbook_app.js=./${core}`, `--external:./${core}`] : [];
  return run('esbuild', [entry, '--bundle', '--minify', '--format=esm', '--target=es2020', '--legal-comments=none',
    '--log-level=error', `--alias:jsqr=${join(unit('scanner'), 'dist/jsQR.js')}`, `--alias:page_words=${kPageWords}`, ...shared]);
}

function put(name, bytes) {
  writeFileSync(join(stage, name), bytes);
  return name;
}

/** Written under a name that holds its content's hash, so that no cache can serve another build's file. */
function putHashed(name, bytes) {
  const extension = extname(name);
  return put(`${basename(name, extension)}-${sha256(bytes).slice(0, 10)}${extension}`, bytes);
}

function putIcons() {
  const folder = join(buildDir, 'generated', 'icons');
  const icons = {};
  if (!existsSync(folder)) return icons;
  for (const file of readdirSync(folder)) icons[file] = putHashed(file, smallPng(readFileSync(join(folder, file))));
  return icons;
}

function manifest(icons) {
  const sized = (size, purpose) => {
    const src = icons[purpose === 'maskable' ? `maskable-${size}.png` : `icon-${size}.png`];
    return src ? [{src, sizes: `${size}x${size}`, type: 'image/png', purpose}] : [];
  };
  return JSON.stringify({
    id: './', name: 'Bentbook', short_name: 'Bentbook',
    description: languages[0].words.description, lang: languages[0].tag, dir: 'ltr',
    start_url: './', scope: './', display: 'standalone', orientation: 'any',
    background_color: '#ffffff', theme_color: '#ffffff', categories: ['utilities', 'productivity'],
    icons: [...sized(192, 'any'), ...sized(512, 'any'), ...sized(192, 'maskable'), ...sized(512, 'maskable')],
  });
}

function fill(template, values) {
  return template.replace(/%([A-Z_]+)%/g, (_, name) => {
    if (!(name in values)) throw new Error(`no value for %${name}%`);
    return values[name];
  });
}

/** Everything but sw.js itself, path → sha256. */
function listing() {
  return Object.fromEntries(readdirSync(stage).sort().map((f) => [f, sha256(readFileSync(join(stage, f)))]));
}

function report() {
  const brotli = (bytes) => brotliCompressSync(bytes, {params: {[constants.BROTLI_PARAM_QUALITY]: 11}}).length;
  let total = 0, after = 0;
  for (const file of readdirSync(stage).sort()) {
    const bytes = readFileSync(join(stage, file));
    const small = Math.min(brotli(bytes), bytes.length);
    if (kLater.has(file)) after += small;
    else total += small;
    console.log(`${String(bytes.length).padStart(9)} ${String(small).padStart(8)}  ${file}`);
  }
  console.log(`first visit: ${(total / 1024).toFixed(1)} KB brotli, stored behind it ${(after / 1024).toFixed(1)}`);
}

rmSync(stage, {recursive: true, force: true});
mkdirSync(stage, {recursive: true});
const icons = putIcons();
// What the app starts without; the service worker stores it all the same, behind what is on the screen by then.
const kLater = new Set();
const later = (name) => {
  kLater.add(name);
  return name;
};
const core = putHashed('core.js', bundle(emitted('bentbook_app.js')));
const raisingCore = later(putHashed('raising.js', bundle(emitted('bentbook_raising.js'))));
const paperCore = later(putHashed('paper.js', bundle(emitted('bentbook_paper.js'))));
const values = {
  CORE_JS: core,
  APP_WASM: putHashed('bentbook.wasm', readFileSync(emitted('bentbook_app.wasm'))),
  WORKER_JS: putHashed('worker.js', bundle(join(here, 'web/worker.js'), core)),
  RAISING_JS: later(putHashed('raising-worker.js', bundle(join(here, 'web/worker.js'), raisingCore))),
  RAISING_WASM: later(putHashed('raising.wasm', readFileSync(emitted('bentbook_raising.wasm')))),
  PAPER_JS: later(putHashed('paper-worker.js', bundle(join(here, 'web/worker.js'), paperCore))),
  PAPER_WASM: later(putHashed('paper.wasm', readFileSync(emitted('bentbook_paper.wasm')))),
  SCAN_JS: later(putHashed('scan.js', bundle(join(here, 'web/scan_picture.js')))),
  WORDS: JSON.stringify(putTexts()),
  PAGE_JS: putHashed('page.js', bundle(join(here, 'web/page.js'), core)),
  PAGE_CSS: putHashed('page.css', run('esbuild', [join(here, 'web/page.css'), '--minify', '--log-level=error'])),
  DESCRIPTION: languages.map(({words}) => words.description).join(' '),
  LOADING: paragraphs('loading'),
  NEEDS_SCRIPT: paragraphs('needs_script'),
  ICON: icons['icon-192.png'] ?? 'data:,',
  APPLE_ICON: icons['apple-touch-icon.png'] ?? 'data:,',
};
put('manifest.webmanifest', manifest(icons));
put('licences.txt', readFileSync(join(root, 'LICENSE')));
const template = readFileSync(join(here, 'web/index.html'), 'utf8');
const build = sha256(JSON.stringify([listing(), template, readFileSync(join(here, 'web/sw.js'), 'utf8')])).slice(0, 16);
put('index.html', fill(template, {...values, BUILD: build}));
const worker = `const kBuild="${build}",kFiles=${JSON.stringify(listing())};${readFileSync(join(here, 'web/sw.js'), 'utf8')}`;
writeFileSync(join(stage, '.sw.js'), worker);
put('sw.js', run('esbuild', [join(stage, '.sw.js'), '--minify', '--target=es2020', '--log-level=error']));
rmSync(join(stage, '.sw.js'));
report();
rmSync(distDir, {recursive: true, force: true});
mkdirSync(dirname(distDir), {recursive: true});
renameSync(stage, distDir);
