/** Cause and action of an alarm: asked for, never forced. "not found yet" is an honest answer and keeps the alarm open. */
import { postJson } from './api.js';
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { allow, signature } from './person.js';

export const NOT_FOUND_YET = 'not found yet';
const LONGEST = 500;

export function findingForm(alarm, causes, changed) {
  const kept = alarm.finding;
  const other = el('input', { id: 'finding-cause', maxlength: LONGEST, autocomplete: 'off' });
  const action = el('textarea', { id: 'finding-action', rows: 3, maxlength: LONGEST });
  const said = el('p', { class: 'said', role: 'status' });
  const choices = [...causes.filter((cause) => cause !== NOT_FOUND_YET), NOT_FOUND_YET];
  const form = el('form', { class: 'finding', data: { action: 'finding' }, novalidate: true, on: { submit } },
    chips('cause', 'Cause', choices),
    el('div', {}, el('label', { for: 'finding-cause' }, 'or another cause'), other),
    el('div', {}, el('label', { for: 'finding-action' }, 'Action: what was done'), action),
    signature('tend-alarms'),
    allow(el('button', { type: 'submit' }, 'Keep cause and action'), 'tend-alarms'),
    said);
  fill();

  /** A written text counts before a tapped choice. */
  const value = (input, name) => input.value.trim() || (form.elements[name]?.value ?? '');

  async function submit(event) {
    event.preventDefault();
    const body = { cause: value(other, 'cause'), action: action.value.trim() };
    const wanting = !body.cause ? 'Choose a cause, or say "not found yet".' : !body.action ? 'Write what was done, even if it is "nothing yet".' : '';
    setText(said, wanting || 'Being kept\u2026');
    if (wanting) {
      return (!body.cause ? form.querySelector('input[name="cause"]') : action).focus();
    }
    try {
      changed(await postJson(`/api/v1/alarms/${alarm.id}/finding`, body));
      setText(said, 'Kept.');
    } catch (error) {
      setText(said, `Not kept. ${error.sentence ?? error.message}`);
    }
  }

  function fill() {
    if (kept) {
      action.value = kept.action ?? '';
      const chip = [...form.querySelectorAll('input[name="cause"]')].find((input) => input.value === kept.cause);
      if (chip) {
        chip.checked = true;
      } else {
        other.value = kept.cause ?? '';
      }
    }
  }
  return form;
}
