/** The measures of the alarms beside their targets, and the priorities beside theirs. */
import { el } from './elements.js';
import { age, list, number } from './format.js';
import { mark } from './marks.js';
import { momentOf } from './plantClock.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('figures');
const say = await sayings('alarms');

/** Three decimals for what is rare, one for what is common. */
const rate = (value) => (value === 0 ? '0' : value < 0.095 ? number(value, 3) : number(value, 1));
const isWhole = (value) => Math.abs(value - Math.round(value)) < 1e-9;
const percent = (share) => `${number(share * 100, share < 0.0995 && !isWhole(share * 100) ? 1 : 0)}\u202f%`;

export function figuresTable({ figures, targets }) {
  const peak = ({ peak: most, peakAt }) => (peakAt ? t('peak', { most, at: momentOf(peakAt) }) : '');
  const rates = [
    ['tenMinutes', figures.perTenMinutes, targets.perTenMinutes, targets.perTenMinutesAtMost],
    ['hour', figures.perHour, targets.perHour, targets.perHourAtMost],
    ['day', figures.perDay, targets.perDay, targets.perDayAtMost],
  ].map(([name, here, good, most]) => row(name, rate(here.average), peak(here), t('about', { good, most }), here.average > most ? 'over' : here.average > good ? 'near' : 'within'));
  const { stale, chattering, answered } = figures;
  const rows = [
    ...rates,
    row('shift', rate(figures.perShift.average), peak(figures.perShift), '', null),
    row('most', String(figures.perTenMinutes.peak), '', t('orFewer', { most: targets.inTenMinutes }), figures.perTenMinutes.peak > targets.inTenMinutes ? 'over' : 'within'),
    row('busy', percent(figures.shareOfBusyHours), '', below(targets.shareOfBusyHours), figures.shareOfBusyHours >= targets.shareOfBusyHours ? 'over' : 'within'),
    row('flood', percent(figures.shareInFlood), floods(figures), below(targets.shareInFlood), figures.shareInFlood >= targets.shareInFlood ? 'over' : 'within'),
    row('stale', String(stale.mostOnADay), stale.now > 0 ? t('staleNow', { now: stale.now }) : t('staleMeans'), t('fewerThan', { most: targets.staleOnADay }), stale.mostOnADay >= targets.staleOnADay ? 'over' : 'within'),
    row('chattering', String(chattering.length), chattering.length > 0 ? list(chattering.map(({ line, title }) => t('chatterIs', { line, title: say(title) }))) : t('chatterMeans'), t('noneWanted'), chattering.length > 0 ? 'over' : 'within'),
    row('fleeting', String(figures.fleeting), t('fleetingMeans'), t('noneWanted'), figures.fleeting > 0 ? 'over' : 'within'),
    row('frequent', percent(figures.frequentShare), t('ofTopics', { topics: figures.topics }), below(targets.frequentShare), figures.topics <= 10 ? null : figures.frequentShare > targets.frequentShare ? 'over' : 'within'),
    row('taken', answered.medianSeconds === null ? '\u2013' : age(answered.medianSeconds), answered.nineOfTenSeconds === null ? '' : t('takenWithin', { age: age(answered.nineOfTenSeconds), waiting: answered.waiting }), '', null),
  ];
  return el('div', { class: 'table-frame figures-table', role: 'region', 'aria-label': t('table'), tabindex: 0 }, el('table', {},
    el('thead', {}, el('tr', {}, ['position', 'here', 'target', 'verdict'].map((head, i) => el('th', { scope: 'col', class: i === 1 ? 'figure' : null }, t(`head.${head}`))))),
    el('tbody', {}, rows)));
}

const floods = ({ floodCount, floods: some }) =>
  floodCount === 0 ? t('floodMeans') : t('floods', { n: floodCount, at: momentOf(some[0].from), alarms: some[0].alarms });

const below = (share) => t('below', { percent: percent(share) });

const VERDICTS = { over: 'watch', near: 'watch', within: 'calm' };

function row(name, here, detail, target, verdict) {
  return el('tr', {},
    el('th', { scope: 'row' }, t(`row.${name}`), detail ? el('span', { class: 'soft' }, detail) : null),
    el('td', { class: 'figure' }, here), el('td', {}, target),
    el('td', {}, verdict ? mark(VERDICTS[verdict], t(`verdict.${verdict}`)) : null));
}

export function prioritiesOf({ figures, targets }) {
  const all = figures.announced;
  const rows = ['high', 'medium', 'low'].map((name) => {
    const share = all === 0 ? 0 : figures.priorities[name] / all;
    return el('li', {}, el('span', {}, t(`priority.${name}`)), el('meter', { min: 0, max: 1, value: share, 'aria-label': t(`priorityOf.${name}`) }), el('span', { class: 'figure' }, percent(share)), el('span', { class: 'soft' }, t('targetAbout', { percent: percent(targets[name]) })));
  });
  return el('section', {}, el('h2', {}, t('priorities')), el('ul', { class: 'plain priorities' }, rows));
}
