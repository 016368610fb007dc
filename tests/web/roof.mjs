// temporary: stand-in
export async function enterSpan(app, n) { await app.press(app.role('button', 'Count')); await app.saved(); }
export const reading = (app) => app.role('status', 'Counted').textContent();
