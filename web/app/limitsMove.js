/** Asks for the reason before limits are doubted, stood by or retired; nothing moves without one. */
import { postJson } from './api.js';
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { REMEDIES } from './limitsWords.js';
import { askWho } from './person.js';

const LONGEST = 500;

/** `address` is {line, structure}; `moved(words)` is called after success. */
export function moveDialog(address, moved) {
  const dialog = el('dialog', { class: 'sheet', 'aria-labelledby': 'move-title' });
  dialog.addEventListener('close', () => dialog.replaceChildren());

  function open({ version }, { to, doing, verb, then }) {
    const reason = el('textarea', { id: 'move-reason', rows: 2, maxlength: LONGEST });
    const trouble = el('p', { class: 'trouble', role: 'alert', hidden: true });
    const remedy = el('form', { hidden: true }, chips('autocorrelation', 'What is done about samples that are alike', Object.entries(REMEDIES)));
    const say = (text) => (setText(trouble, text), (trouble.hidden = false));
    const send = async (by) => {
      if (reason.value.trim() === '') {
        say('Please write the reason first: whoever reads the chart next year will ask.');
        return reason.focus();
      }
      try {
        const chosen = remedy.elements.autocorrelation.value;
        await postJson('/api/v1/limits/state', { ...address, version, state: to, reason: reason.value.trim(), ...(chosen ? { autocorrelation: chosen } : {}) });
        dialog.close();
        moved(`Version ${version} is ${to} now, by ${by}.`);
      } catch (error) {
        remedy.hidden &&= !error.message.includes('much alike');
        say(error.sentence ?? error.message);
      }
    };
    dialog.replaceChildren(
      el('h2', { id: 'move-title' }, `${doing} version ${version}`),
      el('p', {}, then),
      el('div', {}, el('label', { for: 'move-reason' }, 'Reason'), reason),
      trouble, remedy,
      askWho('Whose decision is it?', verb, send, 'decide'),
      el('form', { method: 'dialog' }, el('button', { class: 'quiet' }, 'Not now')));
    dialog.showModal();
    reason.focus();
  }
  return { dialog, open };
}
