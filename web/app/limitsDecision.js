/** The decision: provisional or frozen, why, and one button. It sends exactly the baseline that is on show. */
import { postJson } from './api.js';
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { plural } from './format.js';
import { MEANINGS, REMEDIES } from './limitsWords.js';
import { momentOf } from './plantClock.js';
import { may, signature } from './person.js';

const LONGEST = 500;
const ENOUGH_TO_FREEZE = 100;
const STATES = [['provisional', 'Provisional'], ['frozen', 'Frozen']];

/** `asked()` gives the body of the proposal on show, or null; `done(words)` is called after success. */
export function decision(asked, done) {
  const reason = el('textarea', { id: 'decision-reason', rows: 3, maxlength: LONGEST });
  const meaning = el('p', {});
  const effect = el('p', { class: 'caution' });
  const said = el('p', { class: 'said', role: 'status' });
  const button = el('button', { type: 'submit', class: 'decide', data: { action: 'put-in-force' } }, 'Put these limits in force');
  const remedy = el('div', { hidden: true });
  const form = el('form', { class: 'decision', novalidate: true, on: { submit, input: touched } },
    el('div', {}, chips('state', 'As', STATES), meaning, remedy, effect),
    el('div', {},
      el('div', {}, el('label', { for: 'decision-reason' }, 'Reason'), reason),
      signature('decide'),
      button, said));
  let isChosen = false;
  let isAlike = false;

  function touched(event) {
    isChosen ||= event.target.name === 'state';
    mean();
  }

  function mean() {
    setText(meaning, MEANINGS[form.elements.state.value]);
    remedy.hidden = !isAlike || form.elements.state.value !== 'frozen';
  }

  /** `isFirst`: nobody put limits in force before. */
  function show({ proposal, isFirst }) {
    const made = (proposal?.characteristics ?? []).filter(({ proposed }) => proposed);
    button.disabled = made.length === 0 || !may('decide');
    alike(made);
    if (!isChosen) {
      const enough = made.length > 0 && Math.min(...made.map(({ subgroups }) => subgroups)) >= ENOUGH_TO_FREEZE;
      form.querySelector(`input[value="${enough ? 'frozen' : 'provisional'}"]`).checked = true;
    }
    mean();
    setText(effect, made.length === 0 ? 'This baseline gives no limits, so there is nothing to decide yet.' : isFirst ? first(proposal) : LATER);
  }

  /** Strong autocorrelation is frozen only where somebody says what is done about it. */
  function alike(made) {
    const strong = made.filter(({ autocorrelation }) => autocorrelation?.strong);
    isAlike = strong.length > 0;
    if (isAlike && !remedy.hasChildNodes()) {
      remedy.append(el('p', { class: 'caution' }, 'Neighbouring samples are much alike, so these limits alarm without cause. To freeze them all the same, say what is done about it:'), chips('autocorrelation', 'What is done', Object.entries(REMEDIES)));
    }
  }

  async function submit(event) {
    event.preventDefault();
    const why = reason.value.trim();
    const body = asked();
    const isFrozen = form.elements.state.value === 'frozen';
    const chosenRemedy = isAlike && isFrozen ? form.elements.autocorrelation.value : '';
    const wanting = isAlike && isFrozen && !chosenRemedy ? 'Say what is done about samples that are alike, or make the limits provisional.' : !body ? 'The proposal is being worked out; look at it first.' : !why ? 'Write the reason: whoever reads the chart next year will ask.' : '';
    setText(said, wanting || 'Being put in force\u2026');
    if (wanting) {
      return (isAlike && isFrozen && !chosenRemedy ? remedy.querySelector('input') : reason).focus();
    }
    button.disabled = true;
    try {
      const answer = await postJson('/api/v1/limits/freeze', { ...body, reason: why, state: form.elements.state.value, ...(chosenRemedy ? { autocorrelation: chosenRemedy } : {}) });
      reason.value = '';
      setText(said, '');
      done(`Version ${answer.version} is in force from ${momentOf(answer.holdsFrom)} on.`);
    } catch (error) {
      setText(said, `Not put in force. ${error.sentence ?? error.message}`);
    }
    button.disabled = false;
  }

  return { node: form, show };
}

const LATER = 'They hold from the next sample on. What was judged so far stays as it was judged. An alarm that is open now goes on until the film is usual under the new limits, and still wants its cause.';

function first({ alarmsUnderProposed: alarms }) {
  const then = alarms.length === 0 ? 'None of the samples stored would have raised an alarm.' : `Expect up to ${plural(alarms.length, 'alarm')}, as listed above.`;
  return `These are the first limits, so they hold from the beginning of their baseline, and every sample since then is judged by them at once. ${then}`;
}
