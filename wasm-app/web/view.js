// The drawable area: its size, sharpness and safe areas, watched by everything that is known to change them.

const probe = () => {
  const style = getComputedStyle(document.getElementById('safe'));
  return ['paddingTop', 'paddingRight', 'paddingBottom', 'paddingLeft'].map((side) => parseFloat(style[side]) || 0);
};

/** Calls `changed(width, height, scale, top, right, bottom, left, reducedMotion, prefersDark)` now and whenever one of
 * them differs. */
export function watchView(canvas, changed) {
  let before = '';
  const still = matchMedia('(prefers-reduced-motion: reduce)');
  const dark = matchMedia('(prefers-color-scheme: dark)');

  function measure() {
    const {width, height} = canvas.getBoundingClientRect();
    if (!width || !height) return;
    const now = [width, height, devicePixelRatio, ...probe(), still.matches, dark.matches];
    if (String(now) === before) return;
    before = String(now);
    changed(...now);
  }

  // Heights come late in a home-screen app on iOS: look again.
  function measureTwice() {
    measure();
    setTimeout(measure, 300);
  }

  function watchScale() {
    matchMedia(`(resolution: ${devicePixelRatio}dppx)`).addEventListener('change', () => {
      measureTwice();
      watchScale();
    }, {once: true});
  }

  new ResizeObserver(measureTwice).observe(canvas);
  window.visualViewport?.addEventListener('resize', measureTwice);
  window.addEventListener('orientationchange', measureTwice);
  window.addEventListener('pageshow', measureTwice);
  still.addEventListener('change', measure);
  dark.addEventListener('change', measure);
  watchScale();
  measure();
}
