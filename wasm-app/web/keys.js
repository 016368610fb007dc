// Keys of a real keyboard for the screens. The focus is on a mirrored element or on nothing; what such an element uses
// itself (Tab, Enter and Space on a button, arrows in a slider, typing in a field) stays with it.

/** screens::Key */
const keys = {
  Tab: 0, Enter: 1, Escape: 2, Backspace: 3, Delete: 4, ArrowLeft: 5, ArrowRight: 6, ArrowUp: 7, ArrowDown: 8,
  Home: 9, End: 10, PageUp: 11, PageDown: 12,
};

function usedBy(target, key) {
  if (key === 'Tab') return true;
  if (target.localName === 'button') return key === 'Enter' || key === ' ';
  if (target.localName !== 'input') return false;
  if (target.type === 'checkbox') return key === ' ' || key === 'Enter';
  if (target.type === 'range') return key.startsWith('Arrow') || ['Home', 'End', 'PageUp', 'PageDown'].includes(key);
  return key !== 'Escape' && key !== 'Enter';
}

export function forwardKeys(core) {
  function forward(event, down) {
    if (event.isComposing || usedBy(event.target, event.key)) return;
    if (event.key in keys) {
      core.key(keys[event.key], down, event.shiftKey, event.ctrlKey || event.metaKey);
    } else if (down && !event.ctrlKey && !event.metaKey && !event.altKey && [...event.key].length === 1) {
      core.character(event.key.codePointAt(0));
    } else {
      return;
    }
    event.preventDefault();
  }
  window.addEventListener('keydown', (event) => forward(event, true));
  window.addEventListener('keyup', (event) => forward(event, false));
}
