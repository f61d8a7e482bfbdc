/** One film of the report: its figures and indices, the trend of Ppk, alarms, the gauge, limits, whether the data are whole. */
import { el, svg } from './elements.js';
import { age, count, number, um, unit } from './format.js';
import { momentOf } from './plantClock.js';
import { anchorOf } from './reportFirst.js';
import { boundsInWords, indexInWords, nameOf, verdictInWords, verdictMark } from './reportWords.js';
import { room } from './text.js';

const t = await room('report');
const TREND = { width: 120, height: 28 };

export function reportFilm(film, report) {
  const { line, structure, name, verdict, characteristics } = film;
  return el('section', { class: 'report-film', id: anchorOf(film) },
    el('h2', {}, t('filmOn', { structure, line }), ' ', el('span', { class: 'soft' }, name)),
    el('p', { class: 'lead' }, verdictMark(verdict), ' ', verdictInWords(verdict), ' ', el('a', { class: 'report-weeks', href: `/capability.html?${new URLSearchParams({ line, structure, week: report.week })}` }, t('overWeeks'))),
    figures(film, characteristics.filter(({ kind }) => kind !== 'SHARE'), report.asked),
    earlierSpecs(film, report),
    el('details', {}, el('summary', {}, t('shares')), shares(characteristics.filter(({ kind }) => kind === 'SHARE'))),
    el('div', { class: 'report-facts' }, alarms(film.alarms), gauge(film.gauge), limits(film.limits), samples(film.samples, film.leftOut)));
}

function figures({ line, structure }, rows, asked) {
  const heads = [[t('layer')], [t('n'), true], [`${t('mean')} ${unit()}`, true], [t('spec'), true], [t('within'), true], [t('overall'), true], [t('index')], [t('outside'), true], [t('trend', { index: number(asked.index, 2) })]];
  return el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('figuresOf', { film: t('filmOn', { structure, line }) }) }, el('table', { class: 'report-table' },
    el('thead', {}, el('tr', {}, heads.map(([words, isFigure]) => el('th', { scope: 'col', class: isFigure ? 'figure' : null }, words)))),
    el('tbody', {}, rows.map((row) => el('tr', { data: { standing: row.index.standing } },
      el('th', { scope: 'row' }, nameOf(row)),
      [count(row.readings), um(row.mean, 2), boundsInWords(row.individual), um(row.sigmaWithin, 3), um(row.sigmaOverall, 3)].map(figure),
      el('td', { class: 'report-index' }, indexInWords(row.index)),
      figure(outside(row.observedPpm)),
      el('td', {}, trend(row.trend, asked.index)))))));
}

const figure = (words) => el('td', { class: 'figure' }, words);

const outside = (ppm) => (ppm === null ? '\u2013' : t('ppm', { ppm: count(Math.round(ppm)) }));

/** What was made in the week before a specification changed, by the one that held then. */
function earlierSpecs(film, report) {
  const rows = film.characteristics.flatMap((one) => one.earlier.map((earlier) => ({ ...earlier, name: nameOf(one) })));
  const heads = [[t('layer')], [t('from')], [t('n'), true], [`${t('mean')} ${unit()}`, true], [t('spec'), true], [t('overall'), true], [t('index')], [t('outside'), true]];
  return rows.length === 0 ? null : [el('h3', {}, t('beforeChange')), el('p', {}, t('beforeChangeMeans')),
    el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('beforeChange') }, el('table', { class: 'report-table', data: { specs: 'earlier' } },
      el('thead', {}, el('tr', {}, heads.map(([words, isFigure]) => el('th', { scope: 'col', class: isFigure ? 'figure' : null }, words)))),
      el('tbody', {}, rows.map((row) => el('tr', { data: { standing: row.index.standing } }, el('th', { scope: 'row' }, row.name), el('td', {}, momentOf(row.from ?? report.from)),
        [count(row.readings), um(row.mean, 2), boundsInWords(row.individual), um(row.sigmaOverall, 3)].map(figure), el('td', { class: 'report-index' }, indexInWords(row.index)), figure(outside(row.observedPpm)))))))];
}

/** Ppk of 13 weeks with the index that is asked for as a line; open where the week was not stable. */
function trend(weeks, asked) {
  const known = weeks.filter(({ ppk }) => ppk !== null);
  if (known.length < 2) {
    return el('span', { class: 'soft' }, t('noTrend'));
  }
  const most = Math.max(asked * 1.2, ...known.map(({ ppk }) => ppk));
  const x = (i) => 4 + (i * (TREND.width - 8)) / (weeks.length - 1);
  const y = (ppk) => TREND.height - 3 - (Math.max(0, ppk) / most) * (TREND.height - 6);
  const label = known.map(({ week, ppk }) => `${week} ${number(ppk, 2)}`).join(', ');
  return svg('svg', { class: 'report-trend', viewBox: `0 0 ${TREND.width} ${TREND.height}`, width: TREND.width, height: TREND.height, role: 'img', 'aria-label': label },
    svg('line', { class: 'asked', x1: 0, x2: TREND.width, y1: y(asked), y2: y(asked) }),
    weeks.map(({ ppk, stable }, i) => (ppk === null ? null : svg('circle', { cx: x(i), cy: y(ppk), r: 2.4, class: stable ? 'steady' : 'open' }))));
}

function shares(rows) {
  return el('table', { class: 'report-table' }, el('thead', {}, el('tr', {}, [t('layer'), t('meanShare'), t('overallShare')].map((words, i) => el('th', { scope: 'col', class: i > 0 ? 'figure' : null }, words)))),
    el('tbody', {}, rows.map((row) => el('tr', {}, el('th', { scope: 'row' }, row.name), [row.mean, row.sigmaOverall].map((value) => figure(value === null ? '\u2013' : `${number(100 * value, 2)}\u202f%`))))));
}

function part(title, ...body) {
  return el('section', {}, el('h3', {}, title), body);
}

function alarms({ opened, openAtEnd, unexplained, medianSeconds, causes }) {
  return part(t('alarms'),
    el('p', {}, t('alarmsOpened', { n: opened, open: openAtEnd, unexplained })),
    medianSeconds === null ? null : el('p', {}, t('taken', { time: age(medianSeconds) })),
    causes.length === 0 ? null : el('ul', {}, causes.map(({ words, alarms: n }) => el('li', {}, t('causeOf', { cause: words, n })))));
}

function gauge({ calibrations, flagged, heldOut, study, scalings, limitsOtherwise }) {
  return part(t('gauge'),
    el('p', {}, t('flagged', { n: flagged, held: heldOut })),
    calibrations.length === 0 ? el('p', {}, t('noCalibration')) : el('ul', {}, calibrations.map((one) => el('li', {}, t('calibrated', { layer: one.layer, gauge: one.gauge, at: momentOf(one.at), before: number(one.beforeMps, 0), found: number(one.foundMps, 0) })))),
    scalings.length === 0 ? el('p', {}, t('asExported')) : el('ul', {}, scalings.map((one) => el('li', {}, shownWords(one)))),
    limitsOtherwise.length === 0 ? null : el('p', { class: 'caution' }, t('limitsOtherwise', { versions: limitsOtherwise.join(', ') })),
    study === null ? el('p', {}, t('noStudy')) : [el('p', {}, t('studied', { gauge: study.gauge, at: momentOf(study.finishedAt) })), el('ul', {}, study.layers.map(({ layer, percentTolerance, accepted }) => t('studyLayer', { layer, percent: percentTolerance === null ? '\u2013' : number(percentTolerance, 0), accepted: accepted === null ? '\u2013' : number(100 * accepted, 1) })).map((words) => el('li', {}, words)))]);
}

function limits(moves) {
  return part(t('limits'), moves.length === 0 ? el('p', {}, t('noLimits')) : el('ul', {}, moves.map(({ at, by, version, state, reason }) => el('li', {}, t('limitsMove', { at: momentOf(at), by, version, state, reason })))));
}

/** From when on readings of a layer are shown with which velocity. */
function shownWords({ layer, version, from, factor, velocityMps, percentPerKelvin, atC, by, reason }) {
  const words = { layer, version, at: momentOf(from), factor: number(factor, 5), mps: number(velocityMps, 1), percent: number(percentPerKelvin, 2), celsius: number(atC, 1), by, reason };
  return t(percentPerKelvin === null ? 'shownFrom' : 'shownFromWarm', words);
}

function samples({ received, charted, expected, missingReadings, structureChanged }, leftOut) {
  return part(t('data'),
    el('p', {}, expected === 0 ? t('received', { n: received }) : t('receivedOf', { n: received, expected: count(expected) })),
    charted === received ? null : el('p', {}, t('charted', { n: charted })),
    missingReadings === 0 ? null : el('p', {}, t('notMeasured', { n: missingReadings })),
    structureChanged === 0 ? null : el('p', {}, t('changed', { n: structureChanged })),
    leftOut.length === 0 ? null : el('details', {}, el('summary', {}, t('leftOut', { n: leftOut.length })), el('ul', {}, leftOut.slice(0, 100).map(({ at, roll, sample, by, reason }) => el('li', {}, t('leftOutOne', { at: momentOf(at), roll, sample, by, reason }))))));
}
