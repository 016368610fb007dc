// The Rafter place as a framer uses it: tap a dimension of the drawing, type on the keypad, read the answers.

/** The tape's tick, in smallest divisions, by a finger on the drawn inch. */
async function pickTick(app, tick) {
  const tape = app.key('keypad.tape');
  const box = await tape.boundingBox();
  const {max} = (await app.registry()).find((i) => i.key === 'keypad.tape');
  const inset = 14;  // the drawn inch stands a finger's half away from the ends
  const x = box.x + inset + ((box.width - 2 * inset) * tick) / (max + 1);
  await app.page.touchscreen.tap(x, box.y + box.height / 2);
  await app.still();
}

async function digits(app, text) {
  for (const d of String(text)) await app.press(app.key(`keypad.digit.${d}`));
}

/** Feet, inches and the tick on the tape, into the dimension that is named, by touch alone. */
export async function enterLength(app, dimension, feet, inches = 0, tick = 0) {
  await app.press(dimension);
  await app.press(app.key('keypad.slot.0'));
  await digits(app, feet);
  await app.press(app.key('keypad.slot.1'));
  await digits(app, inches);
  await pickTick(app, tick);
  const echo = await app.key('keypad.echo').textContent();
  await app.press(app.key('keypad.done'));
  return echo;
}

/** A whole number of feet as the span, by touch; back when it is stored. */
export async function enterSpan(app, feet) {
  const {saved} = await app.store();
  await enterLength(app, app.key('rafter.span'), feet);
  await app.page.waitForFunction((n) => window.__bentbook.store.saved > n, saved);
  await app.saved();
}

export const reading = (app) => app.role('status', 'Tip to tip').first().textContent();
