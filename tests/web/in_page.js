// Runs inside the page where no outer driver can press: the roof entered and read through the mirror's elements, as a
// screen reader does it.
'use strict';

const mirrored = (key) => document.querySelector(`#mirror [data-key="${key}"]`);

function until(what) {
  return new Promise((resolve) => {
    const look = () => {
      const value = what();
      if (value) resolve(value);
      else setTimeout(look, 50);
    };
    look();
  });
}

/** The place that was open last is there, past the first launch's caution. */
async function ready() {
  await until(() => document.documentElement.dataset.state === 'ready' &&
      (mirrored('welcome.understood') || mirrored('place.rafter')));
  mirrored('welcome.understood')?.click();
  await until(() => mirrored('place.rafter'));
}

/** Types into the measure `key` and waits until it is stored. */
async function enterInto(key, text) {
  const saved = window.__bentbook.store.saved;
  (await until(() => mirrored(key))).click();
  const entry = await until(() => mirrored('keypad.entry'));
  entry.value = text;
  entry.dispatchEvent(new Event('input'));
  await until(() => window.__bentbook.idle());
  (await until(() => mirrored('keypad.done'))).click();
  await until(() => !mirrored('keypad.done') && window.__bentbook.store.saved > saved);
  await until(() => window.__bentbook.idle());
}

async function enterSpan(text) {
  await ready();
  await enterInto('rafter.span', text);
}

/** The Frame place, with the open book's drawing. */
async function toFrame() {
  (await until(() => mirrored('place.frame'))).click();
  await until(() => mirrored('frame.bent.span') && window.__bentbook.idle());
}

const frameReading = async () => {
  await toFrame();
  await until(() => window.__bentbook.store.pending === 0);
  return `${mirrored('frame.bent.span').textContent}; ${mirrored('frame.bent.peak_top').textContent}`;
};

/** The first post in the shop, with its steps. */
async function toPost() {
  for (const key of ['place.shop', 'shop.all', 'shop.timber.P-A1']) {
    (await until(() => mirrored(key) ?? mirrored('shop.steps'))).click();
    await until(() => window.__bentbook.idle());
  }
  await until(() => mirrored('shop.steps'));
}

const steps = () => [...document.querySelectorAll('#mirror [data-key^="shop.step."]')].map((e) => e.textContent);

/** So many steps ticked off by holding, each on disk before the next. */
async function tickPost(count) {
  await toPost();
  for (let n = 1; n <= count; ++n) {
    (await until(() => mirrored('shop.next.tick'))).dispatchEvent(new MouseEvent('click', {bubbles: true, shiftKey: true}));
    await until(() => steps().filter((s) => s.includes('done by') && !s.includes('being saved')).length === n);
  }
}

const shopReading = async () => (await until(() => steps().length && steps())).join('; ');

const reading = async () => (await until(() => mirrored('rafter.answer_left.tip_to_tip'))).textContent;
