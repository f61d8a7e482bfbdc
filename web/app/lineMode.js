/** Says what a line is doing. While it is down, starting or changing over it raises no alarm. */
import { postJson } from './api.js';
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { askWho } from './person.js';
import { nowMs } from './plantClock.js';

const MODES = [
  ['running', 'Running'],
  ['starting', 'Starting'],
  ['changing-over', 'Changing over'],
  ['down', 'Down'],
];
const AGO = [['0', 'now'], ['5', '5 min ago'], ['15', '15 min ago'], ['30', '30 min ago'], ['60', '1 h ago'], ['120', '2 h ago']];
const MEANS = {
  running: 'Alarms are raised as usual. Nothing of what is stored changes.',
  starting: 'No alarm for the next 3 samples; then it counts as running by itself.',
  'changing-over': 'No alarm for the next 3 samples; then it counts as running by itself.',
  down: 'No alarm until somebody says that it runs again.',
};

export function modeInWords(mode) {
  return (MODES.find(([name]) => name === mode) ?? [mode, mode])[1].toLowerCase();
}

/** A quiet button in the line's head that opens the question. */
export function lineMode(line) {
  const dialog = el('dialog', { class: 'sheet line-mode', 'aria-label': `What ${line.line} is doing` });
  const button = el('button', { type: 'button', class: 'quiet small', 'aria-haspopup': 'dialog', data: { action: 'line-mode' }, on: { click: open } });
  let shown = line;

  function open() {
    const means = el('p', { class: 'soft', role: 'status' });
    const said = el('p', { class: 'said', role: 'status' });
    const reason = el('input', { id: 'mode-reason', maxlength: 200, autocomplete: 'off' });
    const choice = chips('mode', `What is ${shown.line} doing?`, MODES);
    const since = chips('since', 'Since', AGO);
    const form = el('form', { class: 'line-mode-form', novalidate: true, on: { submit: (event) => event.preventDefault(), change: () => setText(means, MEANS[form.elements.mode.value] ?? '') } },
      choice, means, since,
      el('div', {}, el('label', { for: 'mode-reason' }, 'Why (may be left out)'), reason),
      askWho('Who says so?', 'Say so', () => say(form, reason, said), 'tell-line-state'), said);
    choice.querySelector(`input[value="${shown.mode}"]`).checked = true;
    since.querySelector('input').checked = true;
    setText(means, MEANS[shown.mode]);
    dialog.replaceChildren(form, el('form', { method: 'dialog' }, el('button', { class: 'quiet' }, 'Close')));
    document.body.append(dialog);
    dialog.showModal();
  }

  async function say(form, reason, said) {
    const back = Number(form.elements.since.value);
    const since = back === 0 ? {} : { since: new Date(nowMs() - back * 60_000).toISOString() };
    setText(said, 'Being kept\u2026');
    try {
      await postJson(`/api/v1/lines/${encodeURIComponent(shown.line)}/mode`, { mode: form.elements.mode.value, reason: reason.value.trim(), ...since });
      dialog.close();
    } catch (error) {
      setText(said, `Not kept. ${error.sentence ?? error.message}`);
    }
  }

  function update(now) {
    shown = now;
    setText(button, `Line ${modeInWords(now.mode)}\u2026`);
  }
  dialog.addEventListener('close', () => dialog.remove());
  update(line);
  return { node: el('span', { class: 'line-says' }, button), update };
}
