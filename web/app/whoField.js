/** Who does it: one tap on a name that this browser knows, or a field for another one. */
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { people, PEOPLE_CHANGED } from './person.js';

/** `name()` is what is chosen or written; `prefix` keeps the ids of a page apart. */
export function whoField(prefix, question) {
  const input = el('input', { id: `${prefix}-by`, maxlength: 80, autocomplete: 'off' });
  const label = el('label', { for: input.id });
  const known = el('div', {});
  const node = el('div', { class: 'who-field' }, known, el('div', {}, label, input));
  const chosen = () => known.querySelector('input:checked')?.value ?? '';
  let drawn = false;

  /** Names that became known meanwhile are there to tap, the last one first. */
  function draw() {
    if (drawn && !node.isConnected) {
      document.removeEventListener(PEOPLE_CHANGED, draw);
      return;
    }
    drawn = true;
    const names = people();
    known.replaceChildren(...(names.length > 0 ? [chips(`${prefix}-who`, question, names)] : []));
    known.hidden = names.length === 0;
    setText(label, names.length > 0 ? 'or somebody else' : question);
    const first = known.querySelector('input');
    if (first) {
      first.checked = true;
    }
  }
  document.addEventListener(PEOPLE_CHANGED, draw);
  draw();
  return { node, name: () => input.value.trim() || chosen(), focus: () => input.focus() };
}
