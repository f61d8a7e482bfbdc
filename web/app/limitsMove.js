/** Asks for the reason before limits are doubted, stood by or retired; nothing moves without one. */
import { postJson } from './api.js';
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { REMEDIES, stateWord } from './limitsWords.js';
import { askWho } from './person.js';
import { room } from './text.js';

const t = await room('limits');

const LONGEST = 500;

/** `address` is {line, structure}; `moved(words)` is called after success. */
export function moveDialog(address, moved) {
  const dialog = el('dialog', { class: 'sheet', 'aria-labelledby': 'move-title' });
  dialog.addEventListener('close', () => dialog.replaceChildren());

  function open({ version }, { to, act, verb, then }) {
    const reason = el('textarea', { id: 'move-reason', rows: 2, maxlength: LONGEST });
    const trouble = el('p', { class: 'trouble', role: 'alert', hidden: true });
    const remedy = el('form', { hidden: true }, chips('autocorrelation', t('doneAboutAlike'), Object.entries(REMEDIES)));
    const say = (text) => (setText(trouble, text), (trouble.hidden = false));
    const send = async (by) => {
      if (reason.value.trim() === '') {
        say(t('reasonFirst'));
        return reason.focus();
      }
      try {
        const chosen = remedy.elements.autocorrelation.value;
        await postJson('/api/v1/limits/state', { ...address, version, state: to, reason: reason.value.trim(), ...(chosen ? { autocorrelation: chosen } : {}) });
        dialog.close();
        moved(t('moved', { version, state: stateWord(to), by }));
      } catch (error) {
        remedy.hidden &&= !error.message.includes('much alike');
        say(error.sentence ?? error.message);
      }
    };
    dialog.replaceChildren(
      el('h2', { id: 'move-title' }, t(`doing.${act}`, { version })),
      el('p', {}, then),
      el('div', {}, el('label', { for: 'move-reason' }, t('reason')), reason),
      trouble, remedy,
      askWho(t('whose'), verb, send, 'decide'),
      el('form', { method: 'dialog' }, el('button', { class: 'quiet' }, t('notNow'))));
    dialog.showModal();
    reason.focus();
  }
  return { dialog, open };
}
