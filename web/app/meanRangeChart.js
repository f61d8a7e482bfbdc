/**
 * Turns a series of the API into what the charts of means, of their moving average and of ranges draw. Pure: knows nothing of
 * canvas or of a chart library. Lengths in um, times in ms, missing values null.
 *
 * A panel: {points, lower, centre, upper: [{x, y}], labels: [{y, text}],
 * rings: [{index, x, y, signals, isCurrent}],
 * names: {points, lower, centre, upper, other} of the lines where they are kept as data, crosses: [{x, y, isBeyond}] of samples that are held out, land: [{from, to, lower, upper}], whiskers: [{x, low, high, isOut}], steps: [{x, text}], trial, y: {min, max}}.
 */
import { bySeverity } from './words.js';
import { decimalsFor, um, unit } from './format.js';
import { scalingSteps } from './layerReadings.js';
import { room } from './text.js';

const t = await room('layer');
const AXIS_PADDING = 0.1;
/** What the lower, centre and upper line end in. */
const LINE_ENDS = ['lower', 'centre', 'upper'];

export function timeAxis({ columns: { takenAt } }) {
  const [min, max] = [takenAt[0], takenAt.at(-1)];
  const margin = Math.max((max - min) * 0.015, 60_000);
  return { min: min - margin, max: max + margin };
}

/** `scope`: 'process' shows means and control limits, 'product' adds readings and the specification. */
export function meanPanel(series, scope, withAverage) {
  const { columns } = series;
  const isProduct = scope === 'product';
  const lines = limitLines(columns, 'mean');
  const whiskers = isProduct ? whiskersOf(series) : [];
  const land = isProduct ? landOf(series) : [];
  const reach = [columns.mean, columns.meanLower, columns.meanUpper, ...(isProduct ? [columns.least, columns.greatest, specOf(series)] : [])];
  return {
    points: pointsOf(columns, columns.mean),
    ...lines,
    labels: labelsOf(lines, 'mean', isRetired(series)),
    names: namesOf('meanOf'),
    rings: ringsOf(series, withAverage ? ['xbar'] : ['xbar', 'ewma'], columns.mean),
    land,
    whiskers,
    crosses: crossesOf(series, axisOf(reach.flat())),
    steps: stepsOf(series),
    trial: isTrial(series),
    y: axisOf(reach.flat()),
  };
}

/** Null where the server gave none: nobody asked for it, or no limits held. */
export function averagePanel(series) {
  const { columns } = series;
  if (!columns.average) {
    return null;
  }
  const lines = limitLines(columns, 'average');
  return {
    points: pointsOf(columns, columns.average),
    ...lines,
    labels: labelsOf(lines, 'average', isRetired(series)),
    names: namesOf('averageOf'),
    rings: ringsOf(series, ['ewma'], columns.average),
    land: [],
    whiskers: [],
    crosses: [],
    steps: [],
    trial: isTrial(series),
    y: axisOf([columns.average, columns.averageLower, columns.averageUpper].flat()),
  };
}

export function rangePanel(series) {
  const { columns } = series;
  const lines = limitLines(columns, 'range');
  const y = axisOf([columns.range, columns.rangeUpper, columns.rangeLower, [0]].flat());
  return {
    points: pointsOf(columns, columns.range),
    ...lines,
    labels: labelsOf(lines, 'range', isRetired(series)),
    names: namesOf('rangeOf'),
    rings: ringsOf(series, ['range'], columns.range),
    land: [],
    whiskers: [],
    crosses: [],
    steps: [],
    trial: isTrial(series),
    y: { min: 0, max: y.max },
  };
}

/** Where the specification is so much wider than the control limits that it would flatten the chart, it is left for a tap. */
export function suitableScope(series) {
  return whiskersOf(series).some(({ isOut }) => isOut) ? 'product' : 'process';
}

export function hasSpec({ specs }) {
  return specs.some(({ spec }) => spec.lower !== undefined || spec.upper !== undefined);
}

/** What was asked at a moment. */
export function specAt({ specs }, at) {
  return (specs.findLast(({ from }) => from === null || from <= at) ?? specs[0]).spec;
}

/** What was asked, with the time for which it was. */
function landOf({ specs }) {
  return specs.map(({ from, spec }, i) => ({ from: from ?? -Infinity, to: specs[i + 1]?.from ?? Infinity, lower: spec.lower, upper: spec.upper }))
    .filter(({ lower, upper }) => lower !== undefined || upper !== undefined);
}

const namesOf = (chart) => ({ points: `${t(chart)} ${unit()}`, ...Object.fromEntries([...LINE_ENDS, 'other'].map((end) => [end, `${t(`end.${end}`)} ${unit()}`])) });

function pointsOf({ takenAt }, values) {
  return takenAt.map((x, i) => ({ x, y: values[i] }));
}

function limitLines(columns, kind) {
  return {
    lower: ends(pointsOf(columns, columns[`${kind}Lower`])),
    centre: ends(pointsOf(columns, columns[`${kind}Centre`])),
    upper: ends(pointsOf(columns, columns[`${kind}Upper`])),
  };
}

/** Of stretches of one height the first and the last point: the line is the same, and drawn in a fraction of the time. */
function ends(points) {
  return points.filter(({ y }, i) => y !== points[i - 1]?.y || y !== points[i + 1]?.y);
}

/** Limits that were retired after the newest sample say so, for their lines still reach it. */
function labelsOf({ lower, centre, upper }, kind, isRetired) {
  const ends = [lower, centre, upper]
    .map((line, i) => ({ y: line.at(-1)?.y ?? null, word: LINE_ENDS[i] }))
    .filter(({ y, word }) => y !== null && !(kind === 'range' && word === 'lower' && y === 0));
  const decimals = Math.max(...ends.map(({ y }) => decimalsFor(y)));
  return ends.map(({ y, word }) => ({ y, isCentre: word === 'centre', text: t(isRetired ? 'endWas' : 'endIs', { word: t(`end.${word}`), um: um(y, decimals) }) }));
}

/** Rings of one chart, oldest first; those of the run that the newest sample is part of are current. */
function ringsOf({ columns, signals }, charts, values) {
  const byIndex = new Map();
  for (const signal of signals.filter((one) => charts.includes(one.chart))) {
    byIndex.set(signal.index, [...(byIndex.get(signal.index) ?? []), signal]);
  }
  let firstCurrent = columns.takenAt.length;
  while (byIndex.has(firstCurrent - 1)) {
    firstCurrent -= 1;
  }
  return [...byIndex]
    .map(([index, found]) => ({ index, x: columns.takenAt[index], y: values[index], signals: found.sort(bySeverity), isCurrent: index >= firstCurrent }))
    .sort((a, b) => a.index - b.index);
}

function whiskersOf(series) {
  const { columns } = series;
  return columns.takenAt.map((x, i) => {
    const [low, high] = [columns.least[i], columns.greatest[i]];
    const spec = specAt(series, x);
    const isOut = low !== null && (low < (spec.lower ?? -Infinity) || high > (spec.upper ?? Infinity));
    return { x, low, high, isOut };
  });
}

/** Misread samples, as exported; those beyond the axis stand at its edge and say so. */
function crossesOf({ heldOut = [] }, { min, max }) {
  return heldOut.map(({ takenAt, mean }) => ({
    x: takenAt,
    y: mean === null ? min : Math.max(min, Math.min(max, mean)),
    isBeyond: mean === null || mean < min || mean > max,
  }));
}

function stepsOf(series) {
  const steps = series.limits.map(({ holdsFrom, version, state, retiredAt }) => ({ x: Date.parse(holdsFrom), text: retiredAt ? t('limitsRetired', { version }) : t('limitsStep', { version, state: t.maybe(`state.${state}`) ?? state }) }));
  return [...steps, ...specSteps(series), ...scalingSteps(series)].sort((a, b) => a.x - b.x);
}

/** A change of what is asked is marked while the specification is not drawn too. */
function specSteps({ specs }) {
  return specs.filter(({ from }) => from !== null).map(({ from }) => ({ x: from, text: t('specStep') }));
}

function isTrial({ limits }) {
  return limits.at(-1)?.state === 'trial';
}

function isRetired({ limits }) {
  return limits.at(-1)?.retiredAt !== undefined;
}

function specOf(series) {
  const [first, last] = [series.columns.takenAt[0] ?? -Infinity, series.columns.takenAt.at(-1) ?? Infinity];
  return landOf(series).filter(({ from, to }) => from <= last && to > first).flatMap(({ lower, upper }) => [lower, upper]).filter((value) => value !== undefined);
}

function axisOf(values) {
  const given = values.filter((value) => value !== null);
  const min = given.reduce((a, b) => Math.min(a, b), Infinity);
  const max = given.reduce((a, b) => Math.max(a, b), -Infinity);
  const padding = Math.max((max - min) * AXIS_PADDING, 1e-6);
  return given.length === 0 ? { min: 0, max: 1 } : { min: min - padding, max: max + padding };
}
