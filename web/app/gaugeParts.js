/** Small parts that the calibration page is made of: fields, forms with a reason, figures with their uncertainty. */
import { el, setText } from './elements.js';
import { fromUnit, number } from './format.js';
import { allow, signature } from './person.js';
import { room } from './text.js';

const t = await room('gauge');
const LONGEST = 500;
let made = 0;

/** A label above an input; `unit` stands behind the words. */
export function field(words, input, unit = '') {
  made += 1;
  input.id ||= `gauge-field-${made}`;
  return el('div', { class: 'gauge-field' }, el('label', { for: input.id }, words, unit && el('span', { class: 'unit' }, ` ${unit}`)), input);
}

export const text = (attributes = {}) => el('input', { type: 'text', maxlength: 120, autocomplete: 'off', ...attributes });

export const figure = (attributes = {}) => el('input', { type: 'text', inputmode: 'decimal', autocomplete: 'off', ...attributes });

export const moment = (attributes = {}) => el('input', { type: 'datetime-local', ...attributes });

export function choice(options, attributes = {}) {
  const node = el('select', attributes);
  setChoices(node, options);
  return node;
}

/** `options`: [value, words]; the chosen one stays chosen where it is still there. */
export function setChoices(node, options) {
  const before = node.value;
  node.replaceChildren(...options.map(([value, words]) => el('option', { value }, words)));
  if (options.some(([value]) => value === before)) {
    node.value = before;
  }
}

/** A number as people type it, with point or comma; null where there is none, NaN where it is no number. */
export function numberOf(input) {
  const typed = input.value.trim().replace(',', '.');
  return typed === '' ? null : Number(typed);
}

/** The same for a thickness in the unit that was chosen; um. */
export function umOf(input) {
  const typed = numberOf(input);
  return typed === null ? null : fromUnit(typed);
}

/** A form with a reason, whose button needs a permission. `send(reason)` gives the words to say afterwards, or throws. */
export function reasonForm(verb, permission, fields, send) {
  const reason = el('textarea', { rows: 2, maxlength: LONGEST });
  const said = el('p', { class: 'said', role: 'status' });
  const button = allow(el('button', { type: 'submit' }, verb), permission);
  return el('form', { class: 'gauge-form', novalidate: true, on: { submit } }, fields, field(t('reason'), reason), signature(permission), button, said);

  async function submit(event) {
    event.preventDefault();
    if (reason.value.trim() === '') {
      setText(said, t('needsReason'));
      return reason.focus();
    }
    setText(said, t('beingKept'));
    try {
      const words = await send(reason.value.trim());
      reason.value = '';
      setText(said, words);
    } catch (error) {
      setText(said, t('notKept', { why: error.sentence ?? error.message }));
    }
  }
}

/** 1950.1 ± 2.4 m/s, the uncertainty expanded with k = 2. */
export function withUncertainty(value, standard, decimals, of) {
  return standard > 0 ? t('withU', { value: number(value, decimals), u: number(2 * standard, decimals), of }) : t('uNotKnown', { value: number(value, decimals), of });
}

export function part(title, ...body) {
  return el('section', { class: 'gauge-part' }, el('h2', { tabindex: -1 }, title), body);
}

export function fold(words, ...body) {
  return el('details', {}, el('summary', {}, words), body);
}
