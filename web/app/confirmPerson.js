/** Asks an administrator for the password once more, in a sheet over the page, before something is done. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { field } from './password.js';
import { who } from './person.js';
import { room } from './text.js';

const t = await room('signin');

let asking = null;

/** Whether it was given; one sheet for all who ask at the same time. */
export function confirmPerson() {
  asking ??= ask().finally(() => (asking = null));
  return asking;
}

function ask() {
  return new Promise((answer) => {
    let isProven = false;
    const current = field('confirm-current', t('yourPassword'), 'current-password');
    const said = el('p', { class: 'said', role: 'alert' });
    const dialog = el('dialog', { class: 'sheet confirm', 'aria-labelledby': 'confirm-title' },
      el('h2', { id: 'confirm-title' }, t('isItYou', { name: who().name })),
      el('p', {}, t('onceMore')),
      el('form', { novalidate: true, data: { action: 'confirm-password' }, on: { submit } },
        el('input', { type: 'hidden', name: 'username', autocomplete: 'username', value: who().name }),
        current.node, el('button', { type: 'submit' }, t('goOn')), said),
      el('form', { method: 'dialog' }, el('button', { class: 'quiet' }, t('notNow'))));

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
