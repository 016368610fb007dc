// Reading aloud by a voice of the device itself. A voice that sends the words away to be spoken is never used.

import {Event} from './bridge.js';

const primary = (tag) => tag.split(/[-_]/)[0].toLowerCase();  // Android writes en_US

export function makeAloud(post) {
  const synth = window.speechSynthesis;
  if (!synth) return {find() {}, ready() {}, speak() {}, hush() {}};

  const local = () => synth.getVoices().filter((voice) => voice.localService);

  /** The nearest to the language's own form, else the one that the device prefers. */
  function voiceFor(tag) {
    const same = local().filter((voice) => primary(voice.lang) === primary(tag));
    return same.find((voice) => voice.lang.replace('_', '-') === tag) ?? same.find((voice) => voice.default) ?? same[0];
  }

  // Safari speaks only after it spoke in a touch; the canvas acts on a touch in the frame after it.
  const unlock = () => synth.speak(new SpeechSynthesisUtterance(''));

  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') synth.cancel();
  });

  return {
    find() {
      const tell = () => post(Event.voices, '', [...new Set(local().map((voice) => primary(voice.lang)))].join(' '));
      synth.addEventListener?.('voiceschanged', tell);
      tell();
    },
    ready(on) {
      removeEventListener('touchend', unlock, true);
      if (on) addEventListener('touchend', unlock, {capture: true, once: true});
    },
    speak(tag, text, ticket) {
      synth.cancel();
      const ended = () => post(Event.spoken, '', '', ticket);
      const voice = voiceFor(tag);
      if (!voice) return void ended();
      const said = new SpeechSynthesisUtterance(text);
      said.voice = voice;
      said.lang = voice.lang;
      said.onend = said.onerror = ended;
      synth.speak(said);
    },
    hush: () => synth.cancel(),
  };
}
