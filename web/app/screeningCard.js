/** One sample that looks misread: where, why, how it was read beside what is usual, and two decisions. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { mark } from './marks.js';
import { may, signature, whyNot } from './person.js';
import { momentOf } from './plantClock.js';
import { screeningFilm } from './screeningFilm.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('screening');
const say = await sayings('gauge');

export const STATES = ['held-out', 'marked', 'put-back', 'confirmed', 'left-out'];

/** `decided()` is told after a decision was kept. */
export function screeningCard(suspect, decided) {
  const { line, structure, roll, sample, takenAt, state, flags, decisions } = suspect;
  const said = el('p', { class: 'said', role: 'status' });
  const isOut = ['held-out', 'confirmed', 'left-out'].includes(state);
  return el('li', { class: 'suspect', data: { id: suspect.id, state } },
    el('div', { class: 'suspect-words' },
      el('h2', {}, mark('gauge'), ` ${headOf(flags, state)}`),
      el('p', {}, t('place', { line, structure, roll, sample })),
      el('p', { class: 'soft' }, t('now', { at: momentOf(takenAt), state: t(`state.${state}`) })),
      el('ul', { class: 'plain evidence' }, flags.map((flag) => el('li', {}, `${say(flag.evidence)} `, el('span', { class: 'soft' }, placeOf(flag))))),
      decisions.map((one) => el('p', { class: 'soft' }, t('decidedBy', { state: t(`state.${one.state}`), by: one.by, at: momentOf(one.at), reason: one.reason }))),
      deciding(suspect, isOut, said, decided), said),
    screeningFilm(suspect));
}

function headOf(flags, state) {
  const words = [...new Set(flags.map((flag) => t.maybe(`kind.${flag.kind}`) ?? say(flag.words)))].join(', ');
  return words === '' ? t(`state.${state}`) : words[0].toUpperCase() + words.slice(1);
}

function placeOf({ positions, lanes, strength }) {
  const layers = t(positions.length === 1 ? 'layerIs' : 'layersAre', { numbers: runs(positions) });
  return t('flagPlace', { layers, lanes: t(lanes.length === 1 ? 'laneIs' : 'lanesAre', { numbers: runs(lanes) }), strength: t.maybe(`strength.${strength}`) ?? strength });
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
      setText(said, t('sayWhy'));
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
    el('label', { for: `why-${id}` }, t('reason')), reason,
    el('div', { class: 'suspect-buttons' },
      button('confirm', t('confirm'), 'tend-alarms', state !== 'confirmed' && state !== 'left-out'),
      button('put-back', t('putBack'), 'decide', isOut)),
    may('decide') || !isOut ? null : el('p', { class: 'soft' }, t('putBackWho')),
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
  return parts.map(([from, to]) => (to - from > 1 ? t('run', { from, to }) : to > from ? `${from}, ${to}` : String(from))).join(', ');
}
