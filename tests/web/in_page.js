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

const ready = () => until(() => document.documentElement.dataset.state === 'ready' && mirrored('rafter.span'));

async function enterSpan(text) {
  const saved = window.__bentbook.store.saved;
  (await until(() => mirrored('rafter.span'))).click();
  const entry = await until(() => mirrored('keypad.entry'));
  entry.value = text;
  entry.dispatchEvent(new Event('input'));
  await new Promise((resolve) => setTimeout(resolve, 400));
  (await until(() => mirrored('keypad.done'))).click();
  await until(() => !mirrored('keypad.done') && window.__bentbook.store.saved > saved);
  await new Promise((resolve) => setTimeout(resolve, 400));
}

const reading = async () => (await until(() => mirrored('rafter.answer_left.tip_to_tip'))).textContent;
