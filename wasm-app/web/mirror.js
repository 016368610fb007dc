// The accessibility mirror: real elements over the canvas, one for each widget, for screen readers, the keyboard and
// the tests. They are seen only as a focus ring and never take a touch. A keyed diff, at most ten a second.

import {Act, Role, Touch} from './bridge.js';

const kIntervalMs = 100;

const tags = {
  [Role.button]: 'button', [Role.checkbox]: 'input', [Role.radio]: 'button', [Role.tab]: 'button',
  [Role.slider]: 'input', [Role.textField]: 'input', [Role.text]: 'p', [Role.answer]: 'output',
  [Role.dialog]: 'section', [Role.image]: 'div',
};
const inputTypes = {[Role.checkbox]: 'checkbox', [Role.slider]: 'range', [Role.textField]: 'text'};

const tagOf = (item) => item.role === Role.heading ? `h${item.level}` : tags[item.role];

/** The keypad's entry: a text field that no finger opens, read back with each letter. */
const isEntry = (item) => item.role === Role.textField && item.touch === Touch.none;

/** Headings without a gap: a page that uses levels 1 and 3 is read as 1 and 2. */
function closeLevels(items) {
  let above = 0;
  for (const item of items) {
    if (item.role === Role.heading) above = item.level = Math.min(Math.max(item.level, 1), above + 1, 3);
  }
}

function setAttribute(element, name, value) {
  if (value === null) element.removeAttribute(name);
  else if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

function setText(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

/** Name and state, as the role wants them. */
function describe(element, item) {
  const named = item.value ? `${item.name} ${item.value}` : item.name;
  switch (item.role) {
    case Role.heading:
      setText(element, named);
      break;
    case Role.text:
      setAttribute(element, 'aria-live', item.live ? 'polite' : null);
      setText(element, named);
      break;
    case Role.button:
      setText(element, named);
      setAttribute(element, 'aria-pressed', item.checked ? 'true' : null);
      break;
    case Role.radio:  // its text is set with its group's
      setAttribute(element, 'aria-checked', String(item.checked));
      break;
    case Role.tab:
      setText(element, named);
      setAttribute(element, 'aria-selected', String(item.checked));
      break;
    case Role.answer:
      setAttribute(element, 'aria-label', item.name);
      setAttribute(element, 'aria-live', item.live ? 'polite' : 'off');
      setAttribute(element, 'tabindex', item.value && item.key !== 'keypad.echo' ? '0' : null);
      setText(element, item.value);
      break;
    case Role.checkbox:
      setAttribute(element, 'aria-label', named);
      element.checked = item.checked;
      break;
    case Role.slider:
      setAttribute(element, 'aria-label', item.name);
      setAttribute(element, 'aria-valuetext', item.value || null);
      element.min = item.min;
      element.max = item.max;
      element.step = item.step || 'any';
      if (document.activeElement !== element || Number(element.value) !== item.number) element.value = item.number;
      break;
    case Role.textField:
      setAttribute(element, 'aria-label', item.name);
      if (document.activeElement !== element) element.value = item.value;
      break;
    default:
      setAttribute(element, 'aria-label', named);
  }
}

/** @param act (kind, key, text, number) → queued action of the screens */
export function makeMirror(root, act) {
  const elements = new Map();  // key → {element, tag, item, text, seen}
  let timer = 0;
  let last = -kIntervalMs;
  let moving = false;

  function make(item) {
    const element = document.createElement(tagOf(item));
    const {key, role} = item;
    element.dataset.key = key;
    if (element.localName === 'button') element.type = 'button';
    if (inputTypes[role]) element.type = inputTypes[role];
    if (role === Role.radio) element.setAttribute('role', 'radio');
    if (role === Role.tab) element.setAttribute('role', 'tab');
    if (role === Role.image) element.setAttribute('role', 'img');
    if (role === Role.dialog) element.setAttribute('role', 'dialog');
    if ([Role.button, Role.radio, Role.tab, Role.checkbox].includes(role)) {
      element.addEventListener('click', (event) => {
        event.preventDefault();  // the screens say what is checked
        act(event.shiftKey ? Act.hold : Act.press, key);
      });
    }
    if (role === Role.answer) {  // held: in other units, copied, handed on
      const hold = () => act(Act.hold, key);
      element.addEventListener('click', hold);
      element.addEventListener('keydown', (event) => event.key === 'Enter' && hold());
    }
    if (role === Role.slider) element.addEventListener('input', () => act(Act.setNumber, key, '', Number(element.value)));
    if (role === Role.textField) {
      const commit = () => act(Act.setText, key, element.value);
      element.addEventListener(isEntry(item) ? 'input' : 'change', commit);
      element.addEventListener('keydown', (event) => event.key === 'Enter' && commit());
      if (isEntry(item)) element.inputMode = 'none';  // the drawn keypad is there already
    }
    element.addEventListener('focus', () => {
      if (!moving) act(Act.focus, key);
    });
    return element;
  }

  function place(element, item) {
    const {style} = element;
    style.left = `${item.x}px`;
    style.top = `${item.y}px`;
    style.width = `${Math.max(item.w, 1)}px`;
    style.height = `${Math.max(item.h, 1)}px`;
  }

  function elementOf(item) {
    const before = elements.get(item.key);
    const tag = tagOf(item) + item.role;
    let entry = before;
    if (!before || before.tag !== tag) {
      before?.element.remove();
      entry = {element: make(item), tag, text: ''};
      elements.set(item.key, entry);
    }
    const text = JSON.stringify(item);
    if (entry.text !== text) {
      entry.text = text;
      entry.item = item;
      place(entry.element, item);
      describe(entry.element, item);
      if ('disabled' in entry.element) entry.element.disabled = !item.enabled;
    }
    entry.seen = true;
    return entry.element;
  }

  /** Runs of tabs, and of radio buttons of one key ("saw.kind.0", "saw.kind.1"), are groups; what follows a dialog is in
   * the dialog. */
  function tree(items) {
    const top = {element: root, children: []};
    const branches = [top];
    let parent = top;
    let run = null;
    for (const item of items) {
      const wanted = groupKey(item);
      if (run?.key !== wanted) run = null;
      if (wanted && !run) parent.children.push(run = {key: wanted, first: item, children: [], values: new Set()});
      const element = elementOf(item);
      (run ?? parent).children.push(element);
      run?.values.add(item.value);
      if (item.role !== Role.dialog) continue;
      branches.push(parent = {element, children: []});
    }
    for (const branch of [...branches]) {
      branch.children = branch.children.map((child) => {
        if (!child.first) return child;
        if (child.children.length === 1 && child.first.role === Role.radio) {
          nameGroup(child);
          return child.children[0];
        }
        child.element = groupElement(child.first);
        branches.push(child);
        return child.element;
      });
    }
    return branches;
  }

  const groups = new Map();  // key of the first item → element
  const groupKey = ({role, key}) => role === Role.tab ? 'tabs' : role === Role.radio ? key.replace(/\.[^.]*$/, '') : '';

  function groupElement({key, role}) {
    let element = groups.get(key);
    if (!element) {
      element = document.createElement('div');
      element.setAttribute('role', role === Role.tab ? 'tablist' : 'radiogroup');
      element.dataset.group = key;
      groups.set(key, element);
    }
    return element;
  }

  /** A group of radio buttons is called by the value that they share; otherwise each says its own. */
  function nameGroup({element, first, children, values}) {
    if (first.role !== Role.radio) return;
    const [label] = values;
    const shared = element && values.size === 1 && label;
    if (element) setAttribute(element, 'aria-label', shared || null);
    for (const child of children) {
      const {item} = elements.get(child.dataset.key);
      setText(child, shared || !item.value ? item.name : `${item.name} ${item.value}`);
    }
  }

  /** Children in order, moving as few as need be: what has the focus would lose it. */
  function arrange(parent, children) {
    let cursor = parent.firstChild;
    for (const child of children) {
      if (child === cursor) cursor = cursor.nextSibling;
      else parent.insertBefore(child, cursor);
    }
    while (cursor) {
      const next = cursor.nextSibling;
      cursor.remove();
      cursor = next;
    }
  }

  function show(items) {
    last = performance.now();
    const focused = document.activeElement;
    moving = true;
    for (const entry of elements.values()) entry.seen = false;
    closeLevels(items);
    const branches = tree(items);
    for (const [key, entry] of elements) {
      if (entry.seen) continue;
      entry.element.remove();
      elements.delete(key);
    }
    for (const branch of branches) {
      arrange(branch.element, branch.children);
      if (branch.first) nameGroup(branch);
    }
    for (const [key, element] of groups) {
      if (!element.isConnected) groups.delete(key);
    }
    if (focused?.dataset?.key && focused.isConnected && document.activeElement !== focused) focused.focus();
    followEntry(items, focused);
    moving = false;
  }

  /** Who works by keyboard or screen reader goes on in the keypad's entry when it opens, and is back after it. */
  function followEntry(items, focused) {
    const entry = items.find(isEntry)?.key ?? '';
    if (entry && !openEntry && focused?.dataset?.key) {
      cameFrom = focused.dataset.key;
      const {element} = elements.get(entry);
      element.focus();
      element.select();
    } else if (!entry && openEntry && cameFrom) {
      if (document.activeElement === document.body) elements.get(cameFrom)?.element.focus();
      cameFrom = '';
    }
    openEntry = entry;
  }
  let openEntry = '';
  let cameFrom = '';

  return {
    show,
    get pending() {
      return !!timer;
    },
    /** Ask `registry` for the items soon, at most every kIntervalMs. */
    soon(registry) {
      if (timer) return;
      timer = setTimeout(() => {
        timer = 0;
        show(registry());
      }, Math.max(0, last + kIntervalMs - performance.now()));
    },
  };
}
