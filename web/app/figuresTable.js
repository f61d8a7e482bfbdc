/** The measures of the alarms beside their targets, and the priorities beside theirs. */
import { el } from './elements.js';
import { age, list, number } from './format.js';
import { mark } from './marks.js';
import { momentOf } from './plantClock.js';

/** Three decimals for what is rare, one for what is common. */
const rate = (value) => (value === 0 ? '0' : value < 0.095 ? number(value, 3) : number(value, 1));
const isWhole = (value) => Math.abs(value - Math.round(value)) < 1e-9;
const percent = (share) => `${number(share * 100, share < 0.0995 && !isWhole(share * 100) ? 1 : 0)}\u202f%`;

export function figuresTable({ figures, targets }) {
  const peak = ({ peak: most, peakAt }) => (peakAt ? `at most ${most}, ${momentOf(peakAt)}` : '');
  const rates = [
    ['in 10 minutes', figures.perTenMinutes, targets.perTenMinutes, targets.perTenMinutesAtMost],
    ['an hour', figures.perHour, targets.perHour, targets.perHourAtMost],
    ['a day', figures.perDay, targets.perDay, targets.perDayAtMost],
  ].map(([words, here, good, most]) => row(`Alarms ${words}`, rate(here.average), peak(here), `about ${good}, at most ${most}`, here.average > most ? 'over' : here.average > good ? 'near' : 'within'));
  const { stale, chattering, answered } = figures;
  const rows = [
    ...rates,
    row('Alarms a shift', rate(figures.perShift.average), peak(figures.perShift), '', null),
    row('Most in 10 minutes', String(figures.perTenMinutes.peak), '', `${targets.inTenMinutes} or fewer`, figures.perTenMinutes.peak > targets.inTenMinutes ? 'over' : 'within'),
    row('Hours with more than 30', percent(figures.shareOfBusyHours), '', `below ${percent(targets.shareOfBusyHours)}`, figures.shareOfBusyHours >= targets.shareOfBusyHours ? 'over' : 'within'),
    row('Time in a flood', percent(figures.shareInFlood), floods(figures), `below ${percent(targets.shareInFlood)}`, figures.shareInFlood >= targets.shareInFlood ? 'over' : 'within'),
    row('Stale, most on one day', String(stale.mostOnADay), stale.now > 0 ? `${stale.now} now; signalling for more than 24 h` : 'signalling for more than 24 h', `fewer than ${targets.staleOnADay}`, stale.mostOnADay >= targets.staleOnADay ? 'over' : 'within'),
    row('Chattering', String(chattering.length), chattering.length > 0 ? list(chattering.map(({ line, title }) => `${line}, ${title}`)) : '3 raises within 10 samples, or 3 changes within a minute', 'none', chattering.length > 0 ? 'over' : 'within'),
    row('Fleeting', String(figures.fleeting), 'one sample alone, over before anybody took it', 'none', figures.fleeting > 0 ? 'over' : 'within'),
    row('Share of the ten most frequent', percent(figures.frequentShare), `of ${figures.topics} that there were`, `below ${percent(targets.frequentShare)}`, figures.topics <= 10 ? null : figures.frequentShare > targets.frequentShare ? 'over' : 'within'),
    row('Until somebody took it', answered.medianSeconds === null ? '\u2013' : age(answered.medianSeconds), answered.nineOfTenSeconds === null ? '' : `half of them; nine of ten within ${age(answered.nineOfTenSeconds)}; ${answered.waiting} not taken`, '', null),
  ];
  return el('div', { class: 'table-frame figures-table', role: 'region', 'aria-label': 'Measures and targets', tabindex: 0 }, el('table', {},
    el('thead', {}, el('tr', {}, ['For one operator position', 'Here', 'Target', 'So it is'].map((words, i) => el('th', { scope: 'col', class: i === 1 ? 'figure' : null }, words)))),
    el('tbody', {}, rows)));
}

const floods = ({ floodCount, floods: some }) =>
  floodCount === 0 ? 'more than 10 in 10 minutes, until fewer than 5' : `${floodCount} of them, the first ${momentOf(some[0].from)} with ${some[0].alarms} alarms`;

const VERDICTS = { over: ['watch', 'over the target'], near: ['watch', 'more than wanted'], within: ['calm', 'within'] };

function row(words, here, detail, target, verdict) {
  return el('tr', {},
    el('th', { scope: 'row' }, words, detail ? el('span', { class: 'soft' }, detail) : null),
    el('td', { class: 'figure' }, here), el('td', {}, target),
    el('td', {}, verdict ? mark(...VERDICTS[verdict]) : null));
}

export function prioritiesOf({ figures, targets }) {
  const all = figures.announced;
  const rows = ['high', 'medium', 'low'].map((name) => {
    const share = all === 0 ? 0 : figures.priorities[name] / all;
    return el('li', {}, el('span', {}, name), el('meter', { min: 0, max: 1, value: share, 'aria-label': `${name} priority` }), el('span', { class: 'figure' }, percent(share)), el('span', { class: 'soft' }, `target about ${percent(targets[name])}`));
  });
  return el('section', {}, el('h2', {}, 'Priorities'), el('ul', { class: 'plain priorities' }, rows));
}
