/** All layers and the total before and after, in figures; lanes fold out below. */
import { el } from './elements.js';
import { decimalsFor, number, micrometres as um } from './format.js';
import { shape } from './marks.js';

export function changeTable(sides, moves) {
  if (sides === null) {
    return [];
  }
  const moved = new Map(moves.map((move) => [move.position, move]));
  return [
    el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': 'Before and since, layer by layer' },
      el('table', { class: 'change-table' },
        el('caption', {}, 'Means of the samples\u2019 means before and since, \u00b5m; \u201cby now\u201d is where a drift has come to'),
        el('thead', {}, el('tr', {}, heads(['Layer', 'Before', 'Since', 'Change by now', 'Share of the total', 'How clear']))),
        el('tbody', {}, sides.rows.map((row) => rowOf(row, moved.get(row.position)))))),
    lanes(sides),
  ];
}

function heads(words) {
  return words.map((word, i) => el('th', { scope: 'col', class: i === 0 ? null : 'figure' }, word));
}

function rowOf(row, move) {
  const decimals = decimalsFor(row.before?.mean ?? row.after?.mean ?? 0);
  const percent = move ? move.percent : row.before && row.after ? 100 * (row.after.mean / row.before.mean - 1) : null;
  return el('tr', { data: { clear: move?.clear ?? false, total: row.position === 0 } },
    el('th', { scope: 'row' }, row.name || `layer ${row.position}`),
    el('td', { class: 'figure' }, um(row.before?.mean, decimals)),
    el('td', { class: 'figure' }, um(row.after?.mean, decimals)),
    el('td', { class: 'figure' }, percent === null ? '\u2013' : `${sign(percent, 1)}${number(percent, 1)} %`),
    el('td', { class: 'figure' }, !move || row.position === 0 ? '\u2013' : `${sign(move.sharePoints, 2)}${number(move.sharePoints, 2)} points`),
    el('td', { class: 'figure' }, clearness(move)));
}

/** A plus where the figure, so rounded, is above zero. */
const sign = (value, decimals) => (Number(value.toFixed(decimals)) > 0 ? '+' : '');

function clearness(move) {
  if (!move) {
    return '\u2013';
  }
  const words = `${number(Math.abs(move.z), 1)} standard errors`;
  return move.clear ? [shape('watch'), ` ${words}`] : words;
}

function lanes({ rows }) {
  const numbers = [...new Set(rows.flatMap((row) => [...(row.before?.lanes ?? []), ...(row.after?.lanes ?? [])].map(({ lane }) => lane)))].sort((a, b) => a - b);
  if (numbers.length < 2) {
    return null;
  }
  return el('details', {}, el('summary', {}, 'Lane by lane'),
    el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': 'Change lane by lane' },
      el('table', { class: 'change-table' },
        el('caption', {}, 'Change of each lane\u2019s mean, \u00b5m'),
        el('thead', {}, el('tr', {}, heads(['Layer', ...numbers.map((lane) => `lane ${lane}`)]))),
        el('tbody', {}, rows.map((row) => el('tr', {}, el('th', { scope: 'row' }, row.name), numbers.map((lane) => el('td', { class: 'figure' }, laneChange(row, lane)))))))));
}

function laneChange(row, lane) {
  const of = (side) => side?.lanes.find((one) => one.lane === lane)?.um;
  const [before, after] = [of(row.before), of(row.after)];
  return before === undefined || after === undefined ? '\u2013' : `${sign(after - before, 2)}${um(after - before, 2)}`;
}
