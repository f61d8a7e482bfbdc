/** Who decides and why, at the end of a form; and what every form on the page shares. */
import { el, setText } from './elements.js';
import { allow, signature } from './person.js';
import { room } from './text.js';

const t = await room('telling');

export function field(id, label, input, help = null) {
  return el('div', { class: 'field' }, el('label', { for: id }, label), input, help ? el('p', { class: 'soft', id: `${id}-help` }, help) : null);
}

export function text(id, value, more = {}) {
  return el('input', { id, value: value ?? '', autocomplete: 'off', ...more });
}

export function select(id, choices, value) {
  const node = el('select', { id }, choices.map(([word, words]) => el('option', { value: word }, words)));
  node.value = value ?? '';
  return node;
}

export function tick(words, isOn, more = {}) {
  const input = el('input', { type: 'checkbox', ...more });
  input.checked = isOn;
  return { input, node: el('label', { class: 'tick' }, input, el('span', {}, words)) };
}

/** `keep({ reason })` sends; it is called once there is one, and its refusal is said beside the button. */
export function decision(prefix, verb, keep, leave) {
  const reason = text(`${prefix}-reason`, '', { maxlength: 500 });
  const said = el('p', { class: 'said', role: 'status' });
  const button = allow(el('button', { type: 'submit', class: 'decide', data: { action: `keep-${prefix}` } }, verb), 'administer');

  async function submit(event) {
    event.preventDefault();
    const wanting = reason.value.trim() === '' ? [reason, t('needsReason')] : null;
    setText(said, wanting ? wanting[1] : t('beingKept'));
    if (wanting) {
      return wanting[0].focus();
    }
    button.disabled = true;
    try {
      await keep({ reason: reason.value.trim() });
    } catch (error) {
      setText(said, t('notKept', { why: error.sentence ?? error.message }));
    }
    button.disabled = false;
  }
  const node = el('div', { class: 'telling-decision' },
    field(`${prefix}-reason`, t('reason'), reason),
    signature('administer'),
    el('div', { class: 'telling-buttons' }, button, el('button', { type: 'button', class: 'quiet', on: { click: leave } }, t('leave'))),
    said);
  return { node, submit };
}
