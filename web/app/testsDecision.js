/** Who chooses these tests and why; nothing is kept without both. */
import { postJson } from './api.js';
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { people, remember } from './person.js';

const LONGEST = 500;

/** `asked()` gives what is to be kept, or null where nothing differs; `done(words)` is called after success. */
export function testsDecision(asked, done) {
  const reason = el('textarea', { id: 'tests-reason', rows: 2, maxlength: LONGEST });
  const by = el('input', { id: 'tests-by', maxlength: 80, autocomplete: 'off' });
  const said = el('p', { class: 'said', role: 'status' });
  const button = el('button', { type: 'submit', class: 'decide', data: { action: 'choose-tests' } }, 'Let these tests hold');
  const names = people();
  const form = el('form', { class: 'tests-decision', novalidate: true, on: { submit } },
    el('p', {}, 'They hold from the next sample on. What was judged so far stays as it was judged, and a sample that comes late is judged by the tests of its own time.'),
    el('div', {}, el('label', { for: 'tests-reason' }, 'Reason'), reason),
    names.length > 0 ? chips('by', 'Who decides this', names) : null,
    el('div', {}, el('label', { for: 'tests-by' }, names.length > 0 ? 'or somebody else' : 'Who decides this'), by),
    button, said);
  const first = form.querySelector('input[name="by"]');
  if (first) {
    first.checked = true;
  }

  async function submit(event) {
    event.preventDefault();
    const who = by.value.trim() || (form.elements.by?.value ?? '');
    const why = reason.value.trim();
    const body = asked();
    const wanting = !body ? 'Nothing differs from what is in force.' : !why ? 'Write the reason: whoever wonders why there was no alarm will ask.' : !who ? 'Say who decides this.' : '';
    setText(said, wanting || 'Being kept\u2026');
    if (wanting) {
      return body && (why ? by : reason).focus();
    }
    button.disabled = true;
    try {
      const { version } = await postJson('/api/v1/tests', { ...body, by: who, reason: why });
      remember(who);
      reason.value = '';
      setText(said, '');
      done(`Version ${version} of the tests holds from the next sample on.`);
    } catch (error) {
      setText(said, `Not kept. ${error.sentence ?? error.message}`);
    }
    button.disabled = false;
  }
  return { node: form };
}
