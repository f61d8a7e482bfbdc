/** A choice of one, as chips that are easy to tap. */
import { el } from './elements.js';

/** `choices` are texts, or [value, words]. */
export function chips(name, legend, choices) {
  return el('fieldset', {}, el('legend', {}, legend), el('div', { class: 'chips' }, choices.map((choice) => {
    const [value, words] = Array.isArray(choice) ? choice : [choice, choice];
    return el('label', { class: 'chip' }, el('input', { type: 'radio', name, value }), el('span', {}, words));
  })));
}
