/** A small form for one act on an alarm or a roll: fields, who does it, one button, and an honest word about the outcome. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { allow, signature } from './person.js';
import { room } from './text.js';

const t = await room('alarms');

/**
 * `fields` are nodes; `ask()` gives {path, body} or {wanting, focus} where something is missing; `done(answer)` and
 * `refused()` are told of the outcome. It is kept under the name of whoever is signed in and has the `permission`.
 */
export function careForm({ prefix, fields, verb, ask, done, refused = () => {}, permission = 'tend-alarms' }) {
  const said = el('p', { class: 'said', role: 'status' });
  const button = allow(el('button', { type: 'submit' }, verb), permission);
  const node = el('form', { class: 'care-form', data: { action: prefix }, novalidate: true, on: { submit } }, fields, signature(permission), button, said);

  async function submit(event) {
    event.preventDefault();
    const { path, body, wanting, focus } = ask();
    setText(said, wanting ?? t('beingKept'));
    if (wanting) {
      return focus?.focus();
    }
    button.disabled = true;
    try {
      const answer = await postJson(path, body);
      setText(said, t('kept'));
      done(answer);
    } catch (error) {
      setText(said, t('notKept', { error: error.sentence ?? error.message }));
      if (error.status === 409) {
        refused();
      }
    }
    button.disabled = false;
  }
  return { node, say: (text) => setText(said, text), button };
}

export function textField(id, label, attributes = {}) {
  const input = attributes.rows ? el('textarea', { id, ...attributes }) : el('input', { id, autocomplete: 'off', ...attributes });
  return { input, node: el('div', {}, el('label', { for: id }, label), input), value: () => input.value.trim() };
}

/** A folding that holds a form; opening it brings the first field into the hand. */
export function folded(words, node, data = {}) {
  const details = el('details', { data }, el('summary', {}, words), node);
  details.addEventListener('toggle', () => details.open && node.querySelector('input:not([type="radio"]), textarea')?.focus());
  return details;
}
