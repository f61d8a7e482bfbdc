/** Why these tests are chosen, kept under the name of whoever is signed in. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { allow, signature } from './person.js';

const LONGEST = 500;

/** `asked()` gives what is to be kept, or null where nothing differs; `done(words)` is called after success. */
export function testsDecision(asked, done) {
  const reason = el('textarea', { id: 'tests-reason', rows: 2, maxlength: LONGEST });
  const said = el('p', { class: 'said', role: 'status' });
  const button = allow(el('button', { type: 'submit', class: 'decide', data: { action: 'choose-tests' } }, 'Let these tests hold'), 'decide');
  const form = el('form', { class: 'tests-decision', novalidate: true, on: { submit } },
    el('p', {}, 'They hold from the next sample on. What was judged so far stays as it was judged, and a sample that comes late is judged by the tests of its own time.'),
    el('div', {}, el('label', { for: 'tests-reason' }, 'Reason'), reason),
    signature('decide'),
    button, said);

  async function submit(event) {
    event.preventDefault();
    const why = reason.value.trim();
    const body = asked();
    const wanting = !body ? 'Nothing differs from what is in force.' : !why ? 'Write the reason: whoever wonders why there was no alarm will ask.' : '';
    setText(said, wanting || 'Being kept\u2026');
    if (wanting) {
      return body && reason.focus();
    }
    button.disabled = true;
    try {
      const { version } = await postJson('/api/v1/tests', { ...body, reason: why });
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
