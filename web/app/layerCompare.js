/**
 * The same layer in another time, or on another line that makes the same film: its means under those of the chart, the figures side
 * by side, and whether they differ. The choice stands in the address as `compare`: before, day, week, or line:NAME.
 */
import { getJson } from './api.js';
import { el } from './elements.js';
import { count, length, number, um, unit } from './format.js';
import { moment } from './plantClock.js';
import { room } from './text.js';
import { writeSpan } from './timeRange.js';
import { troubleLine } from './trouble.js';

const t = await room('compare');
const DAY_MS = 86_400_000;
const TIMES = ['before', 'day', 'week'];

/** `charts` gives its `extent()` and takes another span by `lay`. */
export function layerCompare(params, wanted, charts) {
  const select = el('select', { id: 'compare-with', on: { change: () => choose(select.value) } });
  const result = el('div', { class: 'compare-result', 'aria-live': 'polite' });
  const trouble = troubleLine();
  const node = el('section', { class: 'compare' }, el('h2', {}, t('title')),
    el('div', { class: 'compare-choice' }, el('label', { for: 'compare-with' }, t('with')), select), trouble.node, result);
  let lines = [];
  let done = '';

  function show(board) {
    lines = board.lines.filter((line) => line.structure.code === wanted.structure && line.line !== wanted.line).map(({ line }) => line);
    const choice = params.get('compare') ?? '';
    const options = [['', t('nothing')], ...TIMES.map((name) => [name, t(`with.${name}`)]), ...lines.map((line) => [`line:${line}`, t('withLine', { line })])];
    select.replaceChildren(...options.map(([value, words]) => el('option', { value, selected: value === choice }, words)));
    compare(choice);
  }

  function choose(choice) {
    if (choice === '') {
      params.delete('compare');
    } else {
      params.set('compare', choice);
    }
    writeSpan(params, null, 'replace');
    compare(choice);
  }

  async function compare(choice) {
    const extent = charts.extent();
    const side = extent && sideOf(choice, extent, wanted.line);
    const asked = JSON.stringify([choice, extent]);
    if (asked === done) {
      return;
    }
    done = asked;
    if (!side) {
      result.replaceChildren();
      charts.lay(null);
      return;
    }
    try {
      const common = { ...wanted, from: extent.from, to: extent.to };
      const [figures, series] = await Promise.all([
        getJson('/api/v1/series/comparison', { ...common, otherLine: side.line, otherFrom: side.from, otherTo: side.to }),
        getJson('/api/v1/series', { ...wanted, line: side.line, from: side.from, to: side.to, pixels: innerWidth }),
      ]);
      if (done === asked) {
        const { takenAt, mean } = series.columns;
        charts.lay(takenAt.map((ms, i) => ({ x: ms - side.from + extent.from, y: mean[i] })));
        result.replaceChildren(verdict(figures), table(figures, extent, side));
        trouble.say('');
      }
    } catch (error) {
      trouble.show(error);
    }
  }
  return { node, show };
}

function sideOf(choice, { from, to }, line) {
  const shift = { before: to - from + 1, day: DAY_MS, week: 7 * DAY_MS }[choice];
  if (shift) {
    return { line, from: from - shift, to: to - shift };
  }
  return choice.startsWith('line:') ? { line: choice.slice(5), from, to } : null;
}

function verdict({ first, second, difference }) {
  if (second.samples === 0) {
    return el('p', {}, t('noSamples'));
  }
  if (difference === null) {
    return el('p', {}, t('tooFew', { n: Math.min(first.samples, second.samples) }));
  }
  const { level, levelsDiffer, spread } = difference;
  const off = -level.value;
  const levels = levelsDiffer
    ? t(off > 0 ? 'thicker' : 'thinner', { by: length(Math.abs(off), 2), from: length(Math.min(Math.abs(level.lower), Math.abs(level.upper)), 2), to: length(Math.max(Math.abs(level.lower), Math.abs(level.upper)), 2) })
    : t('sameLevel', { p: number(difference.p, 2) });
  return el('p', {}, levels, ' ', spread === null ? '' : spreads(spread));
}

/** The ratio is of the other over this one. */
function spreads({ value, lower, upper }) {
  const isSame = lower <= 1 && upper >= 1;
  return isSame ? t('sameSpread') : t(value < 1 ? 'wider' : 'narrower', { percent: number(100 * Math.abs(1 / value - 1), 0) });
}

function table({ first, second }, extent, side) {
  const span = ({ from, to }) => t('span', { from: moment(from), to: moment(to) });
  const rows = [
    [t('samples'), ({ samples }) => count(samples)],
    [`${t('mean')} ${unit()}`, ({ mean }) => um(mean, 3)],
    [`${t('within')} ${unit()}`, ({ sigmaWithin }) => um(sigmaWithin, 3)],
    [`${t('overall')} ${unit()}`, ({ sigmaOverall }) => um(sigmaOverall, 3)],
    ['Pp', ({ capability }) => number(capability?.pp ?? null, 2)],
    ['Ppk', ({ capability }) => number(capability?.ppk ?? null, 2)],
  ];
  return el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('title') },
    el('table', {}, el('caption', {}, t('caption')),
      el('thead', {}, el('tr', {}, el('td', {}), el('th', { scope: 'col', class: 'figure' }, span(extent)), el('th', { scope: 'col', class: 'figure' }, `${side.line}, ${span(side)}`))),
      el('tbody', {}, rows.map(([words, of]) => el('tr', {}, el('th', { scope: 'row' }, words), el('td', { class: 'figure' }, of(first)), el('td', { class: 'figure' }, of(second)))))));
}
