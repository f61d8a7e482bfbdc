/** What a film check says in words: the sentence on top, what to report as one, what to look at. */
import { el } from './elements.js';
import { count, list, number } from './format.js';
import { shape } from './marks.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('film-check');
const say = await sayings('gauge');
const WEIGHTS = { wrong: ['act', t('cannotWork')], look: ['watch', t('lookAtIt')] };

export function summaryOf({ layers, echoes, polarities }) {
  const by = (word) => layers.filter(({ resolution }) => resolution === word).length;
  const parts = [
    [by('resolved'), 'resolved'], [by('fitted'), 'fitted'], [by('cannot be resolved'), 'cannot'], [by(null), 'unknown'],
  ].filter(([n]) => n > 0).map(([n, words]) => t(`res.${words}`, { n: count(n) }));
  const hard = echoes.filter(({ place, sight }) => place !== 'within' && (sight === 'weak' || sight === 'too weak to see')).length;
  return [
    t('layersAre', { n: layers.length, parts: list(parts) }),
    hard === 0 ? t('noneWeak') : t('weak', { n: hard }),
    ...t.nodes('signs', { signs: el('b', { class: 'polarities' }, polarities.replaceAll('-', '\u2212')) })];
}

/** What to report as one, as it would stand in the structures file. */
export function proposalOf({ proposal: { changes, reported } }) {
  if (!changes) {
    return [];
  }
  const groups = reported.filter((group) => group.length > 1);
  return [el('section', { class: 'check-proposal' }, el('h2', {}, t('reportAsOne')),
    el('ul', {}, groups.map((group) => el('li', {}, t.nodes('reportGroup', { group: el('b', {}, group.join(' + ')) })))),
    el('p', { class: 'soft' }, t('seesNone')),
    el('code', {}, `reported: [${reported.map((group) => `[${group.join(', ')}]`).join(', ')}]`))];
}

export function remarksOf({ remarks }) {
  const of = (weight) => remarks.filter((remark) => remark.weight === weight);
  const item = ({ place, words }) => el('li', {}, t.nodes('remark', { place: el('b', {}, say(place)), words: say(words) }));
  const urgent = ['wrong', 'look'].filter((weight) => of(weight).length > 0).map((weight) => {
    const [mark, words] = WEIGHTS[weight];
    return el('section', { data: { weight } }, el('h2', {}, shape(mark), words), el('ul', { class: 'plain' }, of(weight).map(item)));
  });
  const notes = of('note');
  const rest = notes.length === 0 ? [] : [el('details', { open: urgent.length === 0 }, el('summary', {}, t('notes', { n: notes.length })), el('ul', { class: 'plain' }, notes.map(item)))];
  return [...(urgent.length === 0 ? [el('p', {}, t('nothingFirst'))] : urgent), ...rest];
}

/** Of an echo: its sign, its strength in dB (of the reflection alone where that is all that is known), and whether it is seen. */
export function echoWords({ place, polarity, strengthDb, decibels, sight }) {
  const sign = polarity.replace('-', '\u2212');
  const db = strengthDb ?? decibels;
  const size = db === null ? '' : sizeOf(db, strengthDb === null);
  const seen = t.maybe(`sight.${sight}`) ?? sight;
  const word = place !== 'within' ? seen : sight === 'good' ? t('oneTooMany') : sight === 'not known' ? seen : t('notSeen');
  return { sign, size, word: place === 'front' ? t('front', { word }) : place === 'back' ? t('backWall', { word }) : word };
}

/** `isReflection`: of the reflection alone. */
function sizeOf(db, isReflection) {
  const words = `${number(Math.round(db) + 0, 0)}\u202fdB`;
  return isReflection ? t('reflectionOf', { db: words }) : words;
}
