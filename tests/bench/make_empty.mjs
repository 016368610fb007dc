// node make_empty.mjs BUILD_DIR OUT_DIR: the empty page with the app's own style sheet and service worker around it.
import {execFileSync} from 'node:child_process';
import {createHash} from 'node:crypto';
import {copyFileSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync} from 'node:fs';
import {dirname, join, resolve} from 'node:path';
import {fileURLToPath} from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const web = join(here, '../../wasm-app/web');
const [buildDir, out] = process.argv.slice(2);
const emitted = (name) => resolve(buildDir, 'tests/bench', name);

rmSync(out, {recursive: true, force: true});
mkdirSync(out, {recursive: true});
copyFileSync(emitted('bench_empty.wasm'), join(out, 'empty.wasm'));
copyFileSync(join(here, 'empty/index.html'), join(out, 'index.html'));
writeFileSync(join(out, 'page.js'), execFileSync('esbuild', [join(here, 'empty/page.js'), '--bundle', '--minify',
  '--format=esm', '--target=es2022', '--log-level=error', `--alias:bench_empty.js=${emitted('bench_empty.js')}`]));
writeFileSync(join(out, 'page.css'), execFileSync('esbuild', [join(web, 'page.css'), '--minify', '--log-level=error']));
const files = Object.fromEntries(readdirSync(out).map((f) =>
  [f, createHash('sha256').update(readFileSync(join(out, f))).digest('hex')]));
writeFileSync(join(out, 'sw.js'), `const kBuild="empty",kFiles=${JSON.stringify(files)};${readFileSync(join(web, 'sw.js'), 'utf8')}`);
