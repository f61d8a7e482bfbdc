/** One thing that may have caused a change: how well it fits and why, what to look at first, what would tell. */
import { el } from './elements.js';
import { list } from './format.js';
import { momentOf } from './plantClock.js';

const KIND_WORDS = { process: 'the film', measurement: 'only the readings' };
const FITS_WELL = 0.85;
const FITS = 0.6;
const MET = 0.999;

export function candidateCard(candidate, rank, alarmId) {
  return el('article', { class: 'candidate', data: { candidate: candidate.code } },
    el('div', { class: 'candidate-head' },
      el('span', { class: 'rank', 'aria-hidden': 'true' }, String(rank)),
      el('div', {},
        el('h3', {}, candidate.name),
        el('p', { class: 'soft' }, whereWords(candidate))),
      fit(candidate.score)),
    el('div', { class: 'candidate-body' },
      part('Why', el('ul', { class: 'plain evidence' }, oneEach(candidate.evidence).map(evidenceItem))),
      part('Likely causes', el('ul', {}, candidate.causes.map(({ words }) => el('li', {}, words))),
        el('a', { href: `/alarms.html#${alarmId}` }, 'Name the true cause at the alarm')),
      part('Look at first', el('ol', { class: 'checks' }, candidate.checks.map((check) => el('li', {}, check)))),
      part('What would tell', el('p', {}, candidate.tellsApart))));
}

function whereWords({ kind, layers, lanes, since }) {
  const which = layers.length > 0 ? list(layers.map(({ name, position }) => name || `layer ${position}`)) : 'all layers';
  const across = lanes.length > 0 ? `, lane ${list(lanes.map(String))}` : '';
  const begun = since ? `, since ${momentOf(since.at)}` : '';
  return `Would be ${KIND_WORDS[kind]}: ${which}${across}${begun}`;
}

/** A bar of the score with its word; the word counts, the bar helps. */
function fit(score) {
  const words = score >= FITS_WELL ? 'fits well' : score >= FITS ? 'fits' : 'fits in part';
  return el('div', { class: 'fit' },
    el('span', {}, words),
    el('meter', { min: 0, max: 1, value: score, 'aria-label': `How well it fits: ${Math.round(score * 100)} of 100` }));
}

/** A statistic that a signature asks twice, at two thresholds, is told once: as the stricter one, or as what was missed. */
function oneEach(evidence) {
  const byStatistic = new Map();
  for (const one of evidence) {
    const statistic = one.asked.split(' ')[0];
    const before = byStatistic.get(statistic);
    byStatistic.set(statistic, before && before.degree < one.degree ? before : one);
  }
  return [...byStatistic.values()];
}

function evidenceItem({ words, asked, degree }) {
  const [mark, meaning] = degree >= MET ? ['\u2713', 'speaks for it'] : degree > 0 ? ['\u223c', 'speaks for it in part'] : ['\u2717', 'speaks against it'];
  return el('li', { data: { degree: degree >= MET ? 'met' : degree > 0 ? 'part' : 'not' }, title: asked },
    el('span', { class: 'evidence-mark', 'aria-hidden': 'true' }, mark),
    el('span', {}, words, el('span', { class: 'for-readers' }, `, ${meaning}`)));
}

function part(title, ...body) {
  return el('section', {}, el('h4', {}, title), body);
}
