// Reading aloud in the browser, with voices put in the place of the device's.
import assert from 'node:assert/strict';
import {test} from 'node:test';

import * as h from './harness.mjs';

/** A speechSynthesis with these voices, [language, of the device itself]; what it is asked stands in window.asked. */
function standIn(voices) {
  window.asked = [];
  const synth = Object.assign(new EventTarget(), {
    getVoices: () => voices.map(([lang, localService]) => ({lang, localService, default: false})),
    speak: (said) => {
      window.asked.push([said.voice?.lang ?? '', said.text]);
      window.finish = () => said.onend();
    },
    cancel: () => window.asked.push('silent'),
  });
  Object.defineProperty(window, 'speechSynthesis', {value: synth});
  window.SpeechSynthesisUtterance = function(text) { this.text = text; };
}

async function openWith(t, voices, locale = 'en-US') {
  const site = await h.server(t);
  const context = await h.phone(t, h.scratch(), {locale});
  await context.addInitScript(standIn, voices);
  return h.open(context, site.url);
}

async function toSettings(app) {
  for (const key of ['bar.menu', 'menu.settings']) await app.press(app.key(key));
  await app.rest();
}

test('a voice of the device reads the answers, one of the network never does', async (t) => {
  const app = await openWith(t, [['en-US', false], ['en_GB', true], ['es-ES', true]]);
  await toSettings(app);
  await app.press(app.key('settings.aloud'));
  for (let i = 0; i < 2; ++i) await app.press(app.key('bar.back'));
  await app.press(app.key('place.angles'));
  await app.press(app.key('angles.aloud'));
  const words = (await app.page.evaluate(() => window.asked)).filter((said) => said !== 'silent' && said[1]);
  assert.equal(words.length, 1);
  assert.equal(words[0][0], 'en_GB');
  assert.match(words[0][1], /^Plumb cut: [a-z]+(-[a-z]+)?( point [a-z]+)? degrees/);
  await app.page.evaluate(() => window.finish());
  await app.rest();
  assert.equal(await app.key('angles.aloud').getAttribute('aria-label') ?? await app.key('angles.aloud').textContent(), 'Read aloud');
  assert.deepEqual(await app.page.evaluate(() => window.violations), []);
});

test('where no voice of the device speaks the language, nothing offers it', async (t) => {
  const app = await openWith(t, [['en-US', false], ['fr-FR', true]]);
  await toSettings(app);
  assert.equal(await app.key('settings.awake').count(), 1);
  assert.equal(await app.key('settings.aloud').count(), 0);
});
