// Names and notes are typed into a real field laid over the drawn one, so that the phone's own keyboard, autocorrect
// and input methods work. iOS opens its keyboard only inside the gesture: the field is laid and focused in `touchend`,
// before the screens have seen the touch; their beginText() then confirms it.

import {Event, Role, Touch} from './bridge.js';

const kConfirmMs = 600;
const kTapPx = 10;

const bytesOf = (text) => new TextEncoder().encode(text).length;

/** @param registry () → items; @param post platform event to the screens */
export function makeTextEntry(canvas, registry, post) {
  const field = document.createElement('input');
  field.id = 'field';
  field.type = 'text';
  field.hidden = true;
  field.autocomplete = 'off';
  field.enterKeyHint = 'done';
  document.body.append(field);

  let editing = null;  // the request being answered
  let confirmed = false;
  let confirmTimer = 0;
  let down = null;

  function place() {
    if (!editing) return;
    const view = window.visualViewport;
    const bottom = view ? view.offsetTop + view.height : innerHeight;
    const height = Math.max(editing.h, 48);
    field.style.left = `${Math.max(0, editing.x)}px`;
    field.style.top = `${Math.max(0, Math.min(editing.y, bottom - height - 8))}px`;
    field.style.width = `${editing.w}px`;
    field.style.height = `${height}px`;
  }

  function open(request) {
    editing = request;
    field.setAttribute('aria-label', request.label);
    field.value = request.value;
    field.hidden = false;
    place();
    field.focus();
    field.select();
  }

  function close() {
    clearTimeout(confirmTimer);
    const was = editing;
    editing = null;
    confirmed = false;
    field.hidden = true;
    return was;
  }

  function commit() {
    const asked = confirmed;
    const was = close();
    if (was && asked) post(Event.textCommitted, was.key, field.value);
  }

  function cancel() {
    const asked = confirmed;
    const was = close();
    if (was && asked) post(Event.textCancelled, was.key);
  }

  function trim() {
    while (bytesOf(field.value) > editing.maxBytes) field.value = [...field.value].slice(0, -1).join('');
  }

  field.addEventListener('input', () => editing?.maxBytes && trim());
  field.addEventListener('blur', () => editing && commit());
  field.addEventListener('keydown', (event) => {
    if (event.isComposing) return;
    if (event.key === 'Enter') commit();
    else if (event.key === 'Escape') cancel();
    event.stopPropagation();
  });
  window.visualViewport?.addEventListener('resize', place);
  window.visualViewport?.addEventListener('scroll', place);

  const pointOf = (event) => {
    const touch = event.changedTouches[0];
    return {x: touch.clientX, y: touch.clientY};
  };
  const inside = ({x, y}, r) => x >= r.x && x < r.x + r.w && y >= r.y && y < r.y + r.h;

  canvas.addEventListener('touchstart', (event) => {
    down = event.touches.length === 1 ? pointOf(event) : null;
    if (editing) field.blur();
  }, {passive: true});

  canvas.addEventListener('touchend', (event) => {
    const at = pointOf(event);
    if (!down || Math.hypot(at.x - down.x, at.y - down.y) > kTapPx) return;
    const hit = registry().filter((i) => i.enabled && i.touch !== Touch.none && inside(at, i)).pop();
    if (hit?.role !== Role.textField) return;
    open({key: hit.key, label: hit.name, value: hit.value, x: hit.x, y: hit.y, w: hit.w, h: hit.h, maxBytes: 0});
    confirmTimer = setTimeout(() => !confirmed && close(), kConfirmMs);
  }, {passive: true});

  return {
    begin(request) {
      const open_already = editing?.key === request.key && !field.hidden;
      confirmed = true;
      clearTimeout(confirmTimer);
      if (!open_already) {
        open(request);
        return;
      }
      editing = request;
      place();
    },
    /** The screens took the field away themselves. */
    end() {
      close();
    },
    get editing() {
      return editing?.key ?? null;
    },
  };
}
