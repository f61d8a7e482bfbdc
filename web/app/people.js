/** Who may sign in and as what, and which machines hold a token. For administrators. */
import { el } from './elements.js';
import { may, whyNot } from './person.js';
import { peoplePart } from './peopleList.js';
import { tokensPart } from './tokenList.js';
import { troubleLine } from './trouble.js';
import { room } from './text.js';

const t = await room('people');

export function mount(root) {
  const trouble = troubleLine();
  const secret = el('div', { role: 'status' });
  const head = el('div', { class: 'people-head' }, el('h1', {}, t('title')));
  document.documentElement.dataset.ready = 'true';
  if (!may('administer')) {
    root.replaceChildren(head, whyNot('administer'));
    return () => {};
  }
  const tell = (words, text) => secret.replaceChildren(shownOnce(words, text, () => secret.replaceChildren()));
  root.replaceChildren(head, trouble.node, secret, peoplePart(tell, trouble), tokensPart(tell, trouble));
  return () => {};
}

/** A password or token: it can be seen now and never again. */
function shownOnce(words, text, done) {
  return el('div', { class: 'people-secret', data: { once: 'true' } },
    el('p', {}, words), el('code', {}, text),
    el('p', { class: 'soft' }, t('onceOnly')),
    el('button', { type: 'button', class: 'quiet', on: { click: done } }, t('haveIt')));
}
