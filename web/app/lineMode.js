/** Says what a line is doing. While it is down, starting or changing over it raises no alarm. */
import { postJson } from './api.js';
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { askWho } from './person.js';
import { nowMs } from './plantClock.js';
import { room } from './text.js';

const t = await room('board');

const MODES = ['running', 'starting', 'changing-over', 'down'].map((name) => [name, t(`mode.${name}`)]);
const AGO = ['0', '5', '15', '30', '60', '120'].map((minutes) => [minutes, t(`ago.${minutes}`)]);

export function modeInWords(mode) {
  return (MODES.find(([name]) => name === mode) ?? [mode, mode])[1].toLowerCase();
}

/** A quiet button in the line's head that opens the question. */
export function lineMode(line) {
  const dialog = el('dialog', { class: 'sheet line-mode', 'aria-label': t('whatDoing', { line: line.line }) });
  const button = el('button', { type: 'button', class: 'quiet small', 'aria-haspopup': 'dialog', data: { action: 'line-mode' }, on: { click: open } });
  let shown = line;

  function open() {
    const means = el('p', { class: 'soft', role: 'status' });
    const said = el('p', { class: 'said', role: 'status' });
    const reason = el('input', { id: 'mode-reason', maxlength: 200, autocomplete: 'off' });
    const choice = chips('mode', t('whatIsDoing', { line: shown.line }), MODES);
    const since = chips('since', t('since'), AGO);
    const form = el('form', { class: 'line-mode-form', novalidate: true, on: { submit: (event) => event.preventDefault(), change: () => setText(means, t.maybe(`means.${form.elements.mode.value}`) ?? '') } },
      choice, means, since,
      el('div', {}, el('label', { for: 'mode-reason' }, t('why')), reason),
      askWho(t('whoSays'), t('saySo'), () => say(form, reason, said), 'tell-line-state'), said);
    choice.querySelector(`input[value="${shown.mode}"]`).checked = true;
    since.querySelector('input').checked = true;
    setText(means, t.maybe(`means.${shown.mode}`) ?? '');
    dialog.replaceChildren(form, el('form', { method: 'dialog' }, el('button', { class: 'quiet' }, t('close'))));
    document.body.append(dialog);
    dialog.showModal();
  }

  async function say(form, reason, said) {
    const back = Number(form.elements.since.value);
    const since = back === 0 ? {} : { since: new Date(nowMs() - back * 60_000).toISOString() };
    setText(said, t('beingKept'));
    try {
      await postJson(`/api/v1/lines/${encodeURIComponent(shown.line)}/mode`, { mode: form.elements.mode.value, reason: reason.value.trim(), ...since });
      dialog.close();
    } catch (error) {
      setText(said, t('notKept', { error: error.sentence ?? error.message }));
    }
  }

  function update(now) {
    shown = now;
    setText(button, t('line', { mode: modeInWords(now.mode) }));
  }
  dialog.addEventListener('close', () => dialog.remove());
  update(line);
  return { node: el('span', { class: 'line-says' }, button), update };
}
