/** Asks for a last word in a sheet over the page; gives the name it is kept under, or null where the sheet was closed. */
import { el, setText } from './elements.js';
import { lastWord } from './person.js';
import { room } from './text.js';

const t = await room('person');

/** `fields` are asked for as well; `wanting()` says what is missing in them, '' where nothing is. */
export function askSheet(title, words, verb, { fields = [], wanting = () => '' } = {}) {
  return new Promise((answer) => {
    let name = null;
    const said = el('p', { class: 'said', role: 'status' });
    const dialog = el('dialog', { class: 'sheet', 'aria-label': title },
      el('h2', {}, title),
      el('p', {}, words),
      fields,
      lastWord(verb, chosen, 'tend-alarms'), said,
      el('form', { method: 'dialog' }, el('button', { class: 'quiet' }, t('notNow'))));

    function chosen(by) {
      const missing = wanting();
      setText(said, missing);
      if (missing === '') {
        name = by;
        dialog.close();
      }
    }
    dialog.addEventListener('close', () => (dialog.remove(), answer(name)));
    document.body.append(dialog);
    dialog.showModal();
  });
}
