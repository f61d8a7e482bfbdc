/** One thing that may have caused a change: how well it fits and why, what to look at first, what would tell. */
import { el } from './elements.js';
import { list } from './format.js';
import { momentOf } from './plantClock.js';
import { sayings } from './said.js';
import { layerName } from './words.js';
import { room } from './text.js';

const t = await room('change');
const say = await sayings('alarms', 'diagnosis');

const FITS_WELL = 0.85;
const FITS = 0.6;
const MET = 0.999;
const EVIDENCE_MARKS = { met: '\u2713', part: '\u223c', not: '\u2717' };

export function candidateCard(candidate, rank, alarmId) {
  return el('article', { class: 'candidate', data: { candidate: candidate.code } },
    el('div', { class: 'candidate-head' },
      el('span', { class: 'rank', 'aria-hidden': 'true' }, String(rank)),
      el('div', {},
        el('h3', {}, say(candidate.name)),
        el('p', { class: 'soft' }, whereWords(candidate))),
      fit(candidate.score)),
    el('div', { class: 'candidate-body' },
      part(t('why'), el('ul', { class: 'plain evidence' }, oneEach(candidate.evidence).map(evidenceItem))),
      part(t('causes'), el('ul', {}, candidate.causes.map(({ words }) => el('li', {}, say(words)))),
        el('a', { href: `/alarms.html#${alarmId}` }, t('nameCause'))),
      part(t('lookFirst'), el('ol', { class: 'checks' }, candidate.checks.map((check) => el('li', {}, say(check))))),
      part(t('wouldTell'), el('p', {}, say(candidate.tellsApart)))));
}

function whereWords({ kind, layers, lanes, since }) {
  const which = layers.length > 0 ? list(layers.map(layerName)) : t('allLayers');
  const across = lanes.length > 0 ? [t('lanes', { lanes: list(lanes) })] : [];
  const begun = since ? [t('since', { at: momentOf(since.at) })] : [];
  return t(`kind.${kind}`, { where: [which, ...across, ...begun].join(', ') });
}

/** A bar of the score with its word; the word counts, the bar helps. */
function fit(score) {
  const words = t(score >= FITS_WELL ? 'fitsWell' : score >= FITS ? 'fits' : 'fitsPart');
  return el('div', { class: 'fit' },
    el('span', {}, words),
    el('meter', { min: 0, max: 1, value: score, 'aria-label': t('howWell', { score: Math.round(score * 100) }) }));
}

/** A statistic that a signature asks twice, at two thresholds, is told once, with both; the mark is of the one that was missed. */
function oneEach(evidence) {
  const byStatistic = new Map();
  for (const one of evidence) {
    const statistic = one.asked.split(' ')[0];
    const before = byStatistic.get(statistic);
    byStatistic.set(statistic, before ? { said: [...before.said, one.words], asked: `${before.asked}, ${one.asked}`, degree: Math.min(before.degree, one.degree) } : { ...one, said: [one.words] });
  }
  return [...byStatistic.values()];
}

function evidenceItem({ said, asked, degree }) {
  const met = degree >= MET ? 'met' : degree > 0 ? 'part' : 'not';
  return el('li', { data: { degree: met }, title: asked },
    el('span', { class: 'evidence-mark', 'aria-hidden': 'true' }, EVIDENCE_MARKS[met]),
    el('span', {}, said.map(say).join(' '), el('span', { class: 'for-readers' }, t(`speaks.${met}`))));
}

function part(title, ...body) {
  return el('section', {}, el('h4', {}, title), body);
}
