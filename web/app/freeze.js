/** Freezing limits: how many first samples, why, and who. Limits never move by themselves; this is the person who moves them. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { askWho } from './person.js';

const USUAL_BASELINE = 25;
const LEAST_BASELINE = 2;

/** `series()` gives the series on show when the dialog opens; `frozen` is called after success. */
export function freezeDialog(series, frozen) {
  const dialog = el('dialog', { class: 'sheet', 'aria-labelledby': 'freeze-title' });
  const button = el('button', { type: 'button', data: { action: 'freeze' }, on: { click: open } }, 'Freeze limits from the first samples');

  dialog.addEventListener('close', () => dialog.replaceChildren());

  function open() {
    const samples = el('input', { id: 'freeze-samples', type: 'number', min: LEAST_BASELINE, step: 1, value: USUAL_BASELINE });
    const reason = el('textarea', { id: 'freeze-reason', rows: 2, maxlength: 500 });
    const trouble = el('p', { class: 'trouble', role: 'alert', hidden: true });
    const say = (text) => (setText(trouble, text), (trouble.hidden = false));
    const send = async (by) => {
      if (reason.value.trim() === '') {
        say('Please write the reason first: whoever reads the chart next year will ask.');
        return reason.focus();
      }
      const { line, structure } = series();
      try {
        await postJson('/api/limits/freeze', { line, structure: structure.code, by, reason: reason.value.trim(), subgroups: Number(samples.value) });
        dialog.close();
        frozen();
      } catch (error) {
        say(error.sentence ?? error.message);
      }
    };
    dialog.replaceChildren(
      el('h2', { id: 'freeze-title' }, 'Freeze the limits'),
      el('p', {}, 'Limits of all layers and of the total of this film are computed from the first samples and held from then on. Only a person can change them, as a new version.'),
      el('div', {}, el('label', { for: 'freeze-samples' }, 'First samples to compute from'), samples),
      el('div', {}, el('label', { for: 'freeze-reason' }, 'Reason'), reason),
      trouble,
      askWho('Who freezes them?', 'Freeze', send),
      el('form', { method: 'dialog' }, el('button', { class: 'quiet' }, 'Not now')));
    dialog.showModal();
  }
  return { button, dialog, open };
}
