/** Why these tests are chosen, kept under the name of whoever is signed in. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { allow, signature } from './person.js';
import { room } from './text.js';

const t = await room('tests');

const LONGEST = 500;

/** `asked()` gives what is to be kept, or null where nothing differs; `done(words)` is called after success. */
export function testsDecision(asked, done) {
  const reason = el('textarea', { id: 'tests-reason', rows: 2, maxlength: LONGEST });
  const said = el('p', { class: 'said', role: 'status' });
  const button = allow(el('button', { type: 'submit', class: 'decide', data: { action: 'choose-tests' } }, t('letHold')), 'decide');
  const form = el('form', { class: 'tests-decision', novalidate: true, on: { submit } },
    el('p', {}, t('holdFrom')),
    el('div', {}, el('label', { for: 'tests-reason' }, t('reason')), reason),
    signature('decide'),
    button, said);

  async function submit(event) {
    event.preventDefault();
    const why = reason.value.trim();
    const body = asked();
    const wanting = !body ? t('nothingDiffers') : !why ? t('writeReason') : '';
    setText(said, wanting || t('beingKept'));
    if (wanting) {
      return body && reason.focus();
    }
    button.disabled = true;
    try {
      const { version } = await postJson('/api/v1/tests', { ...body, reason: why });
      reason.value = '';
      setText(said, '');
      done(t('holdsNow', { version }));
    } catch (error) {
      setText(said, t('notKept', { error: error.sentence ?? error.message }));
    }
    button.disabled = false;
  }
  return { node: form };
}
