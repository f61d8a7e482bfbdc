/** All layers and the total before and after, in figures; lanes fold out below. */
import { el } from './elements.js';
import { decimalsFor, number, um } from './format.js';
import { shape } from './marks.js';
import { layerName } from './words.js';
import { room } from './text.js';

const t = await room('change');

export function changeTable(sides, moves) {
  if (sides === null) {
    return [];
  }
  const moved = new Map(moves.map((move) => [move.position, move]));
  return [
    el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('layerByLayer') },
      el('table', { class: 'change-table' },
        el('caption', {}, t('tableIs')),
        el('thead', {}, el('tr', {}, heads(['layer', 'before', 'since', 'change', 'share', 'clear'].map((head) => t(`head.${head}`))))),
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
    el('th', { scope: 'row' }, layerName(row)),
    el('td', { class: 'figure' }, um(row.before?.mean, decimals)),
    el('td', { class: 'figure' }, um(row.after?.mean, decimals)),
    el('td', { class: 'figure' }, percent === null ? '\u2013' : t('percent', { percent: `${sign(percent, 1)}${number(percent, 1)}` })),
    el('td', { class: 'figure' }, !move || row.position === 0 ? '\u2013' : t('points', { points: `${sign(move.sharePoints, 2)}${number(move.sharePoints, 2)}` })),
    el('td', { class: 'figure' }, clearness(move)));
}

/** A plus where the figure, so rounded, is above zero. */
const sign = (value, decimals) => (Number(value.toFixed(decimals)) > 0 ? '+' : '');

function clearness(move) {
  if (!move) {
    return '\u2013';
  }
  const words = t('errors', { errors: number(Math.abs(move.z), 1) });
  return move.clear ? [shape('watch'), ` ${words}`] : words;
}

function lanes({ rows }) {
  const numbers = [...new Set(rows.flatMap((row) => [...(row.before?.lanes ?? []), ...(row.after?.lanes ?? [])].map(({ lane }) => lane)))].sort((a, b) => a - b);
  if (numbers.length < 2) {
    return null;
  }
  return el('details', {}, el('summary', {}, t('laneByLane')),
    el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('changeByLane') },
      el('table', { class: 'change-table' },
        el('caption', {}, t('laneTable')),
        el('thead', {}, el('tr', {}, heads([t('head.layer'), ...numbers.map((lane) => t('lanes', { lanes: lane }))]))),
        el('tbody', {}, rows.map((row) => el('tr', {}, el('th', { scope: 'row' }, layerName(row)), numbers.map((lane) => el('td', { class: 'figure' }, laneChange(row, lane)))))))));
}

function laneChange(row, lane) {
  const of = (side) => side?.lanes.find((one) => one.lane === lane)?.um;
  const [before, after] = [of(row.before), of(row.after)];
  return before === undefined || after === undefined ? '\u2013' : `${sign(after - before, 2)}${um(after - before, 2)}`;
}
