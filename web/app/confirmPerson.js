/** Asks an administrator for the password once more, in a sheet over the page, before something is done. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { field } from './password.js';
import { who } from './person.js';

let asking = null;

/** Whether it was given; one sheet for all who ask at the same time. */
export function confirmPerson() {
  asking ??= ask().finally(() => (asking = null));
  return asking;
}

function ask() {
  return new Promise((answer) => {
    let isProven = false;
    const current = field('confirm-current', 'Your password', 'current-password');
    const said = el('p', { class: 'said', role: 'alert' });
    const dialog = el('dialog', { class: 'sheet confirm', 'aria-labelledby': 'confirm-title' },
      el('h2', { id: 'confirm-title' }, `Is it you, ${who().name}?`),
      el('p', {}, 'What administrators change wants the password once more when it was not given for ten minutes.'),
      el('form', { novalidate: true, data: { action: 'confirm-password' }, on: { submit } },
        el('input', { type: 'hidden', name: 'username', autocomplete: 'username', value: who().name }),
        current.node, el('button', { type: 'submit' }, 'Go on'), said),
      el('form', { method: 'dialog' }, el('button', { class: 'quiet' }, 'Not now')));

    async function submit(event) {
      event.preventDefault();
      try {
        await postJson('/api/v1/me/confirm', { current: current.input.value });
        isProven = true;
        dialog.close();
      } catch (error) {
        setText(said, `${error.sentence ?? error.message}.`);
        current.input.select();
      }
    }
    dialog.addEventListener('close', () => (dialog.remove(), answer(isProven)));
    document.body.append(dialog);
    dialog.showModal();
    current.input.focus();
  });
}
