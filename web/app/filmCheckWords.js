/** What a film check says in words: the sentence on top, what to report as one, what to look at. */
import { el } from './elements.js';
import { count, list, number, plural } from './format.js';
import { shape } from './marks.js';

const WEIGHTS = { wrong: ['act', 'Cannot work like this'], look: ['watch', 'Look at it'], note: [null, 'Good to know'] };

export function summaryOf({ layers, echoes, polarities }) {
  const by = (word) => layers.filter(({ resolution }) => resolution === word).length;
  const parts = [
    [by('resolved'), 'resolved'], [by('fitted'), 'fitted'], [by('cannot be resolved'), 'cannot be resolved'], [by(null), 'not known'],
  ].filter(([n]) => n > 0).map(([n, words]) => `${count(n)} ${words}`);
  const hard = echoes.filter(({ place, sight }) => place !== 'within' && (sight === 'weak' || sight === 'too weak to see')).length;
  return [
    `${plural(layers.length, 'reported layer')}: ${list(parts)}. `,
    hard === 0 ? 'No boundary is weak. ' : `${plural(hard, 'boundary is', 'boundaries are')} weak or too weak to see. `,
    'Signs of the echoes behind the front: ', el('b', { class: 'polarities' }, polarities.replaceAll('-', '\u2212')), '.'];
}

/** What to report as one, as it would stand in the structures file. */
export function proposalOf({ proposal: { changes, reported } }) {
  if (!changes) {
    return [];
  }
  const groups = reported.filter((group) => group.length > 1);
  return [el('section', { class: 'check-proposal' }, el('h2', {}, 'Report as one'),
    el('ul', {}, groups.map((group) => el('li', {}, 'report ', el('b', {}, group.join(' + ')), ' as one'))),
    el('p', { class: 'soft' }, 'The gauge sees no boundary there. In the structures file:'),
    el('code', {}, `reported: [${reported.map((group) => `[${group.join(', ')}]`).join(', ')}]`))];
}

export function remarksOf({ remarks }) {
  const of = (weight) => remarks.filter((remark) => remark.weight === weight);
  const item = ({ place, words }) => el('li', {}, el('b', {}, place), ': ', words.replaceAll(/(\d) um\b/g, '$1\u202fµm'));
  const urgent = ['wrong', 'look'].filter((weight) => of(weight).length > 0).map((weight) => {
    const [mark, words] = WEIGHTS[weight];
    return el('section', { data: { weight } }, el('h2', {}, shape(mark), words), el('ul', { class: 'plain' }, of(weight).map(item)));
  });
  const notes = of('note');
  const rest = notes.length === 0 ? [] : [el('details', { open: urgent.length === 0 }, el('summary', {}, `${WEIGHTS.note[1]}: ${plural(notes.length, 'note')}`), el('ul', { class: 'plain' }, notes.map(item)))];
  return [...(urgent.length === 0 ? [el('p', {}, 'Nothing to look at first.')] : urgent), ...rest];
}

/** Of an echo: its sign, its strength in dB (of the reflection alone where that is all that is known), and whether it is seen. */
export function echoWords({ place, polarity, strengthDb, decibels, sight }) {
  const sign = polarity.replace('-', '\u2212');
  const db = strengthDb ?? decibels;
  const size = db === null ? '' : `${strengthDb === null ? 'R ' : ''}${number(Math.round(db) + 0, 0)}\u202fdB`;
  const word = place !== 'within' ? sight : sight === 'good' ? 'seen, one too many' : sight === 'not known' ? sight : 'not seen, as reported';
  return { sign, size, word: place === 'front' ? `front, ${word}` : place === 'back' ? `back wall, ${word}` : word };
}
