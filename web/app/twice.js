/** A button that asks once more before it does what cannot be taken back. */
import { el } from './elements.js';
import { room } from './text.js';

const t = await room('frame');

export function twice(words, again, act) {
  const place = el('span', { class: 'people-ways' });
  const first = el('button', { type: 'button', class: 'quiet', on: { click: ask } }, words);

  function ask() {
    const sure = el('button', { type: 'button', on: { click: () => (rest(), act()) } }, `${again}?`);
    place.replaceChildren(sure, el('button', { type: 'button', class: 'quiet', on: { click: () => (rest(), first.focus()) } }, t('notNow')));
    sure.focus();
  }

  function rest() {
    place.replaceChildren(first);
  }
  rest();
  return place;
}
