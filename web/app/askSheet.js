/** Asks in a sheet over the page who does something; gives the name, or null where the sheet was closed. */
import { el } from './elements.js';
import { askWho } from './person.js';

export function askSheet(title, words, verb, permission = 'tend-alarms') {
  return new Promise((answer) => {
    let name = null;
    const dialog = el('dialog', { class: 'sheet', 'aria-label': title });
    dialog.append(
      el('h2', {}, title),
      words ? el('p', {}, words) : '',
      askWho(words ?? title, verb, (chosen) => ((name = chosen), dialog.close()), permission),
      el('form', { method: 'dialog' }, el('button', { class: 'quiet' }, 'Not now')));
    dialog.addEventListener('close', () => (dialog.remove(), answer(name)));
    document.body.append(dialog);
    dialog.showModal();
  });
}
