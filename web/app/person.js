/**
 * The names of the people who use this screen, kept in this browser only. A shop-floor screen is
 * shared, so the last name comes first and every act asks for one tap on a name.
 */
import { el } from './elements.js';

/** Sent on the document when the remembered names have changed. */
export const PEOPLE_CHANGED = 'filmward-people';
const KEY = 'filmward.people';
const MOST = 6;
const LONGEST = 80;

export function people() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    return Array.isArray(kept) ? kept.filter((name) => typeof name === 'string' && name !== '') : [];
  } catch {
    return [];
  }
}

export function remember(name) {
  keep([name, ...people().filter((other) => other !== name)].slice(0, MOST));
}

export function forget(name) {
  keep(people().filter((other) => other !== name));
}

/**
 * Asks who it is: a big button for each remembered name, and a field for another one. `chosen` is
 * called with the name; `verb` is what happens then, for the button beside the field.
 */
export function askWho(question, verb, chosen) {
  const names = people();
  const choose = (name) => {
    remember(name);
    chosen(name);
  };
  const buttons = names.map((name) =>
    el('button', { type: 'button', class: 'name', data: { person: name }, on: { click: () => choose(name) } }, name),
  );
  return el(
    'div',
    { class: 'who', role: 'group', 'aria-label': question },
    el('p', { class: 'who-question' }, question),
    buttons.length > 0 ? el('div', { class: 'names' }, buttons) : null,
    nameForm(names.length > 0 ? 'Somebody else' : 'Your name', verb, choose),
  );
}

function nameForm(label, verb, choose) {
  const input = el('input', {
    id: 'person-name',
    name: 'person',
    maxlength: LONGEST,
    autocomplete: 'off',
    required: true,
  });
  const submit = (event) => {
    event.preventDefault();
    const name = input.value.trim();
    if (name === '') {
      input.focus();
    } else {
      choose(name);
    }
  };
  return el(
    'form',
    { class: 'name-form', novalidate: true, on: { submit } },
    el('label', { for: 'person-name' }, label),
    input,
    el('button', { type: 'submit', data: { action: 'confirm-person' } }, verb),
  );
}

function keep(names) {
  try {
    localStorage.setItem(KEY, JSON.stringify(names));
  } catch {
    // Storage is refused in some browsers; the name is then asked for each time.
  }
  document.dispatchEvent(new Event(PEOPLE_CHANGED));
}
