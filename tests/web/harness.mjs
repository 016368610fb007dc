// What the browser tests stand on: Chromium as a phone, and the app seen through its
// mirror. Playwright's click waits for an element that takes the pointer, which the mirror's never do: press() touches
// the canvas where the mirrored element lies, as a finger would.
import {execFileSync} from 'node:child_process';
import {readFileSync, readdirSync, writeFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import {join} from 'node:path';

import {pixels} from './png.mjs';
import {root, shots} from './site.mjs';

export * from './png.mjs';
export * from './site.mjs';

// npm packages lie in the dependency cache.
const npm = execFileSync('bash', [join(root, 'cmake/deps.sh'), 'where', 'npm'], {encoding: 'utf8'}).trim();
const need = createRequire(join(npm, 'package.json'));
export const {chromium} = need('playwright-core');
export const axeSource = readFileSync(need.resolve('axe-core/axe.min.js'), 'utf8');

export const kPhone = {width: 390, height: 844};
export const kSmall = {width: 320, height: 568};

// Software WebGL must be asked for, or nothing is drawn and every test passes on nothing. No talk to the outside.
const kFlags = ['--no-sandbox', '--enable-unsafe-swiftshader', '--use-gl=angle', '--use-angle=swiftshader',
  '--disable-background-networking', '--disable-component-update', '--disable-sync', '--disable-quic', '--no-first-run',
  '--disable-features=OptimizationHints,MediaRouter,Translate'];

/** A phone with its own profile in `profile`. Calling it again on the same folder is opening the browser again. */
export async function phone(t, profile, options = {}, flags = []) {
  const {viewport = kPhone, ...rest} = options;
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: '/usr/bin/chromium', args: [...kFlags, ...flags], viewport, screen: viewport, deviceScaleFactor: 3, hasTouch: true,
    isMobile: true, locale: 'en-US', ...rest,
  });
  t.after(() => context.close().catch(() => {}));
  return context;
}

/** Ends every process of the browser on this profile at once, as the phone's system does. */
export function killBrowser(profile) {
  for (const pid of readdirSync('/proc').filter((n) => /^\d+$/.test(n))) {
    let command = '';
    try {
      command = readFileSync(`/proc/${pid}/cmdline`, 'utf8');
    } catch {
      continue;  // it has just ended
    }
    if (command.includes(profile)) {
      try {
        process.kill(Number(pid), 'SIGKILL');
      } catch {
        continue;
      }
    }
  }
}

/** Opens the app in `context`, past the first launch's caution, and waits until it can be used. Console errors, page errors and violations of the
 * Content-Security-Policy are gathered in app.trouble. */
export async function open(context, url) {
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  const app = makeApp(page);
  await page.addInitScript(() => {
    window.violations = [];
    document.addEventListener('securitypolicyviolation', (e) => window.violations.push(`${e.violatedDirective} ${e.blockedURI}`));
  });
  await page.goto(url);
  await app.ready();
  if (await app.key('welcome.understood').count()) {
    await app.press(app.key('welcome.understood'));
    await app.saved();
    await page.waitForFunction(() => window.__bentbook.store.persistent !== null);
    await app.still();
  }
  if (await app.key('notice.understood').count()) await app.press(app.key('notice.understood'));
  return app;
}

function makeApp(page) {
  const trouble = [];
  page.on('pageerror', (error) => trouble.push(String(error)));
  page.on('console', (message) => message.type() === 'error' && trouble.push(message.text()));
  const hook = (name) => page.evaluate((n) => window.__bentbook[n], name);

  const app = {
    page, trouble,
    frames: () => hook('frames'),
    store: () => hook('store'),
    registry: () => page.evaluate(() => window.__bentbook.registry()),
    violations: () => page.evaluate(() => window.violations),

    async ready() {
      await page.waitForSelector('html[data-state="ready"], html[data-state="failed"]', {state: 'attached', timeout: 60_000});
      const state = await page.evaluate(() => document.documentElement.dataset.state);
      if (state !== 'ready') throw new Error(`the app did not start: ${trouble.join('; ')}`);
      await page.waitForFunction(() => {
        const {writer, readOnly} = window.__bentbook.store;
        return document.querySelector('#mirror').childElementCount > 0 && (writer || readOnly);
      });
      await app.still();
    },

    /** What was done is drawn, and the mirror shows it. */
    still: () => page.waitForFunction(() => window.__bentbook.idle(), null, {polling: 20}),

    /** Nothing more comes by itself: the build is stored, and no short message stands there. */
    async rest() {
      await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
      await page.waitForTimeout(500);
      await page.waitForFunction(() => !document.querySelector('#mirror [data-key="toast"]'));
      await app.still();
    },

    role: (role, name) => page.locator('#mirror').getByRole(role, {name, includeHidden: false}),
    /** An element of the mirror by its stable key. */
    key: (key) => page.locator(`#mirror [data-key="${key}"]`),

    /** A finger on the middle of a mirrored element. */
    async press(locator) {
      const box = await app.intoView(locator);
      await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
      await app.still();
    },

    async intoView(locator) {
      let box = await locator.boundingBox();
      if (box.width < 8 || box.height < 8) {  // scrolled away: the focus brings it in, as for a screen reader
        await locator.focus();
        await app.still();
        box = await locator.boundingBox();
      }
      return box;
    },

    /** Finger down at (x, y), along to (x, y + dy) in steps, up. */
    async drag(x, y, dx, dy, steps = 12) {
      const cdp = await page.context().newCDPSession(page);
      const point = (n) => [{x: x + (dx * n) / steps, y: y + (dy * n) / steps}];
      await cdp.send('Input.dispatchTouchEvent', {type: 'touchStart', touchPoints: point(0)});
      for (let n = 1; n <= steps; ++n) {
        await cdp.send('Input.dispatchTouchEvent', {type: 'touchMove', touchPoints: point(n)});
        await page.waitForTimeout(16);
      }
      await cdp.send('Input.dispatchTouchEvent', {type: 'touchEnd', touchPoints: []});
      await cdp.detach();
    },

    /** Everything handed to storage is on disk. */
    async saved() {
      await page.waitForFunction(() => window.__bentbook.store.pending === 0 && window.__bentbook.store.saved > 0);
    },

    async shot(name) {
      writeFileSync(join(shots, `${name}.png`), await page.screenshot());
    },

    /** How many different colours the page shows, and whether a WebGL 2 context lives under it. */
    async drawn() {
      const image = pixels(await page.screenshot());
      const live = await page.evaluate(() => {
        const gl = document.getElementById('canvas').getContext('webgl2');
        return !!gl && !gl.isContextLost();
      });
      return {live, colours: new Set(image.colours).size, image};
    },
  };
  return app;
}
