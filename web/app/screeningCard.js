/** One sample that looks misread: where, why, how it was read beside what is usual, and two decisions. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { mark } from './marks.js';
import { may, signature, whyNot } from './person.js';
import { momentOf } from './plantClock.js';
import { screeningFilm } from './screeningFilm.js';

export const STATES = { 'held-out': 'held out of charts', marked: 'marked, charted', 'put-back': 'put back', confirmed: 'confirmed misread', 'left-out': 'left out by hand' };

/** `decided()` is told after a decision was kept. */
export function screeningCard(suspect, decided) {
  const { line, structure, roll, sample, takenAt, state, flags, decisions } = suspect;
  const said = el('p', { class: 'said', role: 'status' });
  const isOut = ['held-out', 'confirmed', 'left-out'].includes(state);
  return el('li', { class: 'suspect', data: { id: suspect.id, state } },
    el('div', { class: 'suspect-words' },
      el('h2', {}, mark('gauge'), ` ${headOf(flags, state)}`),
      el('p', {}, `${line}, ${structure}, roll ${roll}, sample ${sample}`),
      el('p', { class: 'soft' }, `${momentOf(takenAt)}. Now: ${STATES[state]}.`),
      el('ul', { class: 'plain evidence' }, flags.map((flag) => el('li', {}, `${flag.evidence.replaceAll(/ um\b/g, ' µm')} `, el('span', { class: 'soft' }, `${placeOf(flag)}, ${flag.strength}.`)))),
      decisions.map((one) => el('p', { class: 'soft' }, `${STATES[one.state]} by ${one.by}, ${momentOf(one.at)}: ${one.reason}`)),
      deciding(suspect, isOut, said, decided), said),
    screeningFilm(suspect));
}

function headOf(flags, state) {
  const words = [...new Set(flags.map((flag) => flag.words))].join(', ');
  return words === '' ? STATES[state] : words[0].toUpperCase() + words.slice(1);
}

function placeOf({ positions, lanes }) {
  const layers = positions.length === 1 ? `layer ${positions[0]}` : `layers ${runs(positions)}`;
  return `${layers}, ${lanes.length === 1 ? 'lane' : 'lanes'} ${runs(lanes)}`;
}

/** A reason and the ways from here; what a person may not do is said, not hidden. */
function deciding({ id, state }, isOut, said, decided) {
  if (!may('tend-alarms')) {
    return whyNot('tend-alarms');
  }
  const reason = el('input', { type: 'text', id: `why-${id}`, maxlength: 400, autocomplete: 'off' });
  const button = (verb, words, permission, isOffered) => (isOffered
    ? el('button', { type: 'button', class: 'quiet', disabled: !may(permission), data: { action: verb }, on: { click: () => decide(verb) } }, words)
    : null);

  async function decide(verb) {
    if (reason.value.trim() === '') {
      setText(said, 'Say why in a few words first; it is kept with your name.');
      reason.focus();
      return;
    }
    try {
      await postJson(`/api/v1/screening/${id}/${verb}`, { reason: reason.value.trim() });
      decided();
    } catch (error) {
      setText(said, error.sentence);
    }
  }

  return el('div', { class: 'deciding' },
    el('label', { for: `why-${id}` }, 'Reason'), reason,
    el('div', { class: 'suspect-buttons' },
      button('confirm', 'Confirm misread', 'tend-alarms', state !== 'confirmed' && state !== 'left-out'),
      button('put-back', 'Put back into the charts', 'decide', isOut)),
    may('decide') || !isOut ? null : el('p', { class: 'soft' }, 'Putting back is for engineers and quality.'),
    signature('tend-alarms'));
}

/** 1 to 4, 7: numbers that follow each other as runs of three and more. */
function runs(numbers) {
  const parts = [];
  for (const number of numbers) {
    const last = parts.at(-1);
    if (last && number === last[1] + 1) {
      last[1] = number;
    } else {
      parts.push([number, number]);
    }
  }
  return parts.map(([from, to]) => (to - from > 1 ? `${from} to ${to}` : to > from ? `${from}, ${to}` : String(from))).join(', ');
}
