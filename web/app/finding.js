/**
 * Cause and action of an alarm: asked for, never forced. Either may come first; "not found yet" is an honest answer
 * and keeps the alarm open, and so does an action that is still to come.
 */
import { postJson } from './api.js';
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { allow, signature } from './person.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('alarms');
const say = await sayings('alarms');
const NOT_FOUND_YET = 'not-found-yet';
const OTHER = 'other';
const LONGEST = 500;

/** `causes` are those of the plant's list, [{code, words, standing}]. */
export function findingForm(alarm, causes, changed) {
  const kept = alarm.finding;
  const note = el('input', { id: 'finding-note', maxlength: LONGEST, autocomplete: 'off' });
  const noteLabel = el('label', { for: 'finding-note' });
  const action = el('textarea', { id: 'finding-action', rows: 3, maxlength: LONGEST });
  const said = el('p', { class: 'said', role: 'status' });
  const form = el('form', { class: 'finding', data: { action: 'finding' }, novalidate: true, on: { submit, change: nameNote } },
    chips('cause', t('cause'), choicesOf(causes, kept)),
    el('div', {}, noteLabel, note),
    el('div', {}, el('label', { for: 'finding-action' }, t('actionLabel')), action),
    signature('tend-alarms'),
    allow(el('button', { type: 'submit' }, t('keepBoth')), 'tend-alarms'),
    said);
  const cause = () => form.elements.cause.value;
  fill();

  async function submit(event) {
    event.preventDefault();
    const body = { cause: cause(), note: note.value.trim(), action: action.value.trim() };
    const isUnnamed = body.cause === OTHER && !body.note;
    const wanting = !body.cause ? t('chooseCause') : isUnnamed ? t('whichOther') : '';
    setText(said, wanting || t('beingKept'));
    if (wanting) {
      return (!body.cause ? form.querySelector('input[name="cause"]') : note).focus();
    }
    try {
      changed(await postJson(`/api/v1/alarms/${alarm.id}/finding`, body));
      setText(said, t('kept'));
    } catch (error) {
      setText(said, t('notKept', { error: error.sentence ?? error.message }));
    }
  }

  function nameNote() {
    setText(noteLabel, cause() === OTHER ? t('otherCause') : t('moreAbout'));
  }

  function fill() {
    if (kept) {
      action.value = kept.action ?? '';
      note.value = kept.code === OTHER ? kept.cause : kept.note ?? '';
      const chip = [...form.querySelectorAll('input[name="cause"]')].find((input) => input.value === kept.code);
      if (chip) {
        chip.checked = true;
      }
    }
    nameNote();
  }
  return form;
}

/** What is active, the alarm's own cause even where it is retired, and the two answers that are always there. */
function choicesOf(causes, kept) {
  return [
    ...causes.filter(({ code, standing }) => standing === 'active' || code === kept?.code).map(({ code, words }) => [code, say(words)]),
    [OTHER, t('anotherCause')],
    [NOT_FOUND_YET, t('notFoundYet')],
  ];
}
