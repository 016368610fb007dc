// The Frame place as a lead uses it: four numbers, then the timbers' sheets, on a phone and by touch.

export async function digits(app, text) {
  for (const d of String(text)) await app.press(app.key(`keypad.digit.${d}`));
}

/** Types whole numbers into what is named and waits until it is stored where `stored`. */
export async function enter(app, key, text) {
  await app.press(app.key(key));
  await digits(app, text);
  await app.press(app.key('keypad.done'));
}

/** The same, back when the outcome is on disk. */
export async function enterAndStore(app, key, text) {
  const {saved} = await app.store();
  await enter(app, key, text);
  await app.page.waitForFunction((n) => window.__bentbook.store.saved > n && window.__bentbook.store.pending === 0, saved);
}

export async function toFrame(app) {
  await app.rest();  // a short message may lie over the rows
  await app.press(app.role('tab', 'Frame'));
}

/** 20 ft wide, 24 ft long, plates at 10 ft, 8 in 12. */
export async function makeFrame(app) {
  await toFrame(app);
  await app.press(app.key('frame.row.books'));
  await app.press(app.role('button', 'New book'));
  await enter(app, 'new.span', 20);
  await enter(app, 'new.length', 24);
  await enter(app, 'new.plate', 10);
  await enter(app, 'new.pitch', 8);
  const {saved} = await app.store();
  await app.press(app.role('button', 'Make the frame'));
  await app.page.waitForFunction((n) => window.__bentbook.store.saved > n && window.__bentbook.store.pending === 0, saved);
}

export async function openSheet(app, mark) {
  await app.press(app.key('frame.row.timbers'));
  await app.press(app.key(`list.${mark}`));
}

export const text = (app, key) => app.key(key).textContent();
