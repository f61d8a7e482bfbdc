/** The questions about a file, in words, each with its choices or a field for a text. */
import { el } from './elements.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('intake');
const say = await sayings('intake');

export function questions({ questions: open }, answer) {
  return open.map((question, number) => (question.choices.length > 0 ? choice(question, answer) : text(question, number, answer)));
}

function choice({ key, words, choices }, answer) {
  return el('fieldset', { class: 'mapping-question' }, el('legend', {}, say(words)),
    el('div', { class: 'mapping-choices' }, choices.map(({ value, words: meaning }) =>
      el('button', { type: 'button', class: 'quiet', data: { answers: key }, on: { click: () => answer(key, value) } }, say(meaning)))));
}

function text({ key, words }, number, answer) {
  const id = `mapping-answer-${number}`;
  const input = el('input', { id, type: 'text', maxlength: 200, data: { answers: key } });
  const take = () => input.value.trim() && answer(key, input.value.trim());
  input.addEventListener('keydown', (event) => event.key === 'Enter' && take());
  return el('div', { class: 'mapping-question' }, el('label', { for: id }, say(words)),
    el('div', { class: 'mapping-choices' }, input, el('button', { type: 'button', class: 'quiet', on: { click: take } }, t('takeThis'))));
}
