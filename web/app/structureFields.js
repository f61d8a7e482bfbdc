/**
 * Fields of the structure form: a label, an input, and under it what is wrong with what stands in it. `read()` gives the value,
 * undefined where nothing stands there, and null where it is wrong, which the field then says.
 */
import { el, setText } from './elements.js';
import { exact, lengthIn, plainNumber } from './structureNumbers.js';
import { unit } from './format.js';
import { room } from './text.js';

const t = await room('structures');
let count = 0;

function field(label, input, { sign = '', tag = '' } = {}) {
  const id = `structure-field-${(count += 1)}`;
  const wrong = el('p', { class: 'field-error', id: `${id}-wrong` });
  input.id = id;
  input.setAttribute('aria-describedby', wrong.id);
  const node = el('div', { class: 'structure-field', data: { field: tag } }, el('label', { for: id }, label, sign ? [' ', el('span', { class: 'unit' }, sign)] : ''), input, wrong);

  function complain(words) {
    setText(wrong, words);
    input.setAttribute('aria-invalid', String(words !== ''));
    return words === '' ? undefined : null;
  }
  input.addEventListener('input', () => complain(''));
  return { node, input, complain, isWrong: () => wrong.textContent !== '' };
}

const textInput = (value, attributes = {}) => el('input', { type: 'text', autocomplete: 'off', spellcheck: 'false', value, ...attributes });

/** `needed` is what to say where nothing stands there. */
export function textOf(label, value, { needed = '', tag = '', maxlength = 120, sign = '' } = {}) {
  const made = field(label, textInput(value ?? '', { maxlength }), { tag, sign });
  const read = () => {
    const text = made.input.value.trim();
    return text === '' && needed !== '' ? made.complain(needed) : (made.complain(''), text);
  };
  return { ...made, read };
}

/** A length in the unit that was chosen. What was not typed anew stays as exact as it came. */
export function lengthOf(label, um, tag = '') {
  const made = field(label, textInput(exact(um), { inputmode: 'decimal' }), { tag, sign: unit() });
  let held = { text: exact(um), um };
  const read = () => {
    const text = made.input.value.trim();
    if (text === held.text) {
      return made.complain('') ?? held.um;
    }
    const given = lengthIn(text);
    return given === null ? made.complain(t('notALength', { text, example: exact(14) })) : (made.complain(''), given);
  };
  made.input.addEventListener('change', read);
  const show = (value) => {
    held = { text: exact(value), um: value };
    made.input.value = held.text;
    made.complain('');
  };
  return { ...made, read, show };
}

/** A number above zero with a unit of its own. */
export function numberOf(label, value, { sign, example, tag }) {
  const made = field(label, textInput(value === undefined ? '' : plainNumber.write(value), { inputmode: 'decimal' }), { sign, tag });
  const read = () => {
    const text = made.input.value.trim();
    const given = plainNumber.read(text);
    return given === null ? made.complain(t('notANumber', { text, example: plainNumber.write(example) })) : (made.complain(''), given);
  };
  made.input.addEventListener('change', read);
  return { ...made, read };
}

export function choiceOf(label, options, chosen, tag = '') {
  const select = el('select', {}, options.map(([value, words]) => el('option', { value, selected: value === chosen }, words)));
  const made = field(label, select, { tag });
  return { ...made, read: () => select.value };
}

/** Target and limits; checks that the lower one is below the upper one. */
export function limitsOf(labels, spec, tag = '') {
  const fields = Object.entries(labels).map(([part, label]) => [part, lengthOf(label, spec[part], `${tag}${part}`)]);
  const by = Object.fromEntries(fields);
  const read = () => {
    const values = Object.fromEntries(fields.map(([part, each]) => [part, each.read()]));
    if (values.lower !== undefined && values.lower !== null && values.upper !== undefined && values.upper !== null && !(values.lower < values.upper)) {
      by.lower.complain(t('lowerNotBelow', { upper: exact(values.upper), unit: unit() }));
    }
    const kept = Object.keys(spec).filter((part) => !(part in labels)).map((part) => [part, spec[part]]);
    return Object.fromEntries([...kept, ...Object.entries(values).filter(([, value]) => value !== undefined)]);
  };
  return { by, nodes: fields.map(([, each]) => each.node), all: fields.map(([, each]) => each), read };
}
