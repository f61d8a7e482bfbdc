/** The decision: provisional or frozen, why, and one button. It sends exactly the baseline that is on show. */
import { postJson } from './api.js';
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { MEANINGS, REMEDIES } from './limitsWords.js';
import { longWork } from './longWork.js';
import { momentOf } from './plantClock.js';
import { may, signature } from './person.js';
import { room } from './text.js';

const t = await room('limits');

const LONGEST = 500;
const ENOUGH_TO_FREEZE = 100;
const STATES = ['provisional', 'frozen'].map((state) => [state, t(`as.${state}`)]);

/** `asked()` gives the body of the proposal on show, or null; `done(words)` is called after success. */
export function decision(asked, done) {
  const reason = el('textarea', { id: 'decision-reason', rows: 3, maxlength: LONGEST });
  const meaning = el('p', {});
  const effect = el('p', { class: 'caution' });
  const said = el('p', { class: 'said', role: 'status' });
  const button = el('button', { type: 'submit', class: 'decide', data: { action: 'put-in-force' } }, t('putInForce'));
  const remedy = el('div', { hidden: true });
  const form = el('form', { class: 'decision', novalidate: true, on: { submit, input: touched } },
    el('div', {}, chips('state', t('as'), STATES), meaning, remedy, effect),
    el('div', {},
      el('div', {}, el('label', { for: 'decision-reason' }, t('reason')), reason),
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
    setText(effect, made.length === 0 ? t('noLimitsMade') : isFirst ? first(proposal) : t('later'));
  }

  /** Strong autocorrelation is frozen only where somebody says what is done about it. */
  function alike(made) {
    const strong = made.filter(({ autocorrelation }) => autocorrelation?.strong);
    isAlike = strong.length > 0;
    if (isAlike && !remedy.hasChildNodes()) {
      remedy.append(el('p', { class: 'caution' }, t('muchAlike')), chips('autocorrelation', t('whatIsDone'), Object.entries(REMEDIES)));
    }
  }

  async function submit(event) {
    event.preventDefault();
    const why = reason.value.trim();
    const body = asked();
    const isFrozen = form.elements.state.value === 'frozen';
    const chosenRemedy = isAlike && isFrozen ? form.elements.autocorrelation.value : '';
    const wanting = isAlike && isFrozen && !chosenRemedy ? t('sayRemedy') : !body ? t('beingWorkedOut') : !why ? t('writeReason') : '';
    setText(said, wanting || t('beingPut'));
    if (wanting) {
      return (isAlike && isFrozen && !chosenRemedy ? remedy.querySelector('input') : reason).focus();
    }
    button.disabled = true;
    try {
      const order = { ...body, reason: why, state: form.elements.state.value, ...(chosenRemedy ? { autocorrelation: chosenRemedy } : {}) };
      const answer = await longWork(said, t('beingPut'), (waiting) => postJson('/api/v1/limits/freeze', order, waiting));
      reason.value = '';
      setText(said, '');
      done(t('isInForce', { version: answer.version, from: momentOf(answer.holdsFrom) }));
    } catch (error) {
      setText(said, t('notInForce', { error: error.sentence ?? error.message }));
    }
    button.disabled = false;
  }

  return { node: form, show };
}

function first({ alarmsUnderProposed: alarms }) {
  return t('areFirst', { then: alarms.length === 0 ? t('noneThen') : t('alarmsThen', { n: alarms.length }) });
}
