/**
 * Lanes in time under the charts: a row for each lane, on the charts' time axis. Thicker than the mean of the span is a darker
 * ink, thinner a denser hatch, so that it reads without colour. Steps by pointer and keys say a cell in words; a table of the lanes is
 * behind it.
 */
import { DRAWN } from './chartPanel.js';
import { el, setText } from './elements.js';
import { length, um, unit } from './format.js';
import { laneSummary, scaleOf } from './laneFigures.js';
import { onSchemeChange, paintOf } from './chartPaint.js';
import { moment } from './plantClock.js';
import { room } from './text.js';

const t = await room('look');
const ROW_PX = { least: 9, most: 22, height: 200 };
const DECIMALS = 2;
const MOVES = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

/** `panel` is the chart whose time axis it shares. Gives {node, show(lanes), destroy}. */
export function layerLanes(panel) {
  const canvas = el('canvas', { 'aria-hidden': 'true' });
  const map = el('div', { class: 'lane-map', role: 'img', tabindex: 0, on: { keydown, pointermove: point, pointerdown: point } }, canvas);
  const said = el('p', { class: 'lane-said', 'aria-live': 'polite' });
  const key = el('div', { class: 'lane-key' });
  const table = el('details', { class: 'lane-table' });
  const node = el('section', { class: 'lanes', hidden: true }, el('h2', {}, t('lanesTitle')), key, map, said, table);
  let shown = null;
  let cell = { column: 0, lane: 0 };

  function show(lanes) {
    node.hidden = lanes.lanes.length < 2;
    if (node.hidden) {
      return;
    }
    shown = { ...lanes, ...scaleOf(lanes) };
    const summary = laneSummary(lanes);
    map.setAttribute('aria-label', t('lanesAre', { n: lanes.lanes.length, thick: summary.thickest.lane, thin: summary.thinnest.lane, by: signed(summary.thickest.off), less: signed(summary.thinnest.off) }));
    table.replaceChildren(el('summary', {}, t('lanesAsTable')), laneTable(summary));
    setText(said, map.getAttribute('aria-label'));
    cell = { column: Math.min(cell.column, lanes.from.length - 1), lane: Math.min(cell.lane, lanes.lanes.length - 1) };
    draw();
  }

  function draw() {
    if (shown === null || node.hidden || map.clientWidth === 0) {
      return;
    }
    const paint = paintOf(map);
    const row = Math.round(Math.max(ROW_PX.least, Math.min(ROW_PX.most, ROW_PX.height / shown.lanes.length)));
    const height = row * shown.lanes.length;
    const ratio = devicePixelRatio || 1;
    map.style.height = `${height}px`;
    canvas.width = map.clientWidth * ratio;
    canvas.height = height * ratio;
    const pen = canvas.getContext('2d');
    pen.scale(ratio, ratio);
    const edges = edgesOf(shown, panel);
    drawCells(pen, { shown, row, edges, paint });
    drawNumbers(pen, { shown, row, paint, left: panel.areaOf().left });
    drawKey(key, shown.reach, paint);
  }

  function say() {
    const { column, lane } = cell;
    const value = shown.means[column]?.[lane] ?? null;
    const when = shown.from[column] === shown.to[column] ? moment(shown.from[column]) : t('fromTo', { from: moment(shown.from[column]), to: moment(shown.to[column]) });
    setText(said, value === null
      ? t('laneMissing', { lane: shown.lanes[lane], when })
      : t('laneIs', { lane: shown.lanes[lane], when, mean: length(value, DECIMALS), off: signed(value - shown.middle) }));
  }

  function point(event) {
    if (shown === null) {
      return;
    }
    const ms = panel.timeAt(event.clientX);
    const y = event.clientY - map.getBoundingClientRect().top;
    const found = shown.from.findLastIndex((from) => from <= ms);
    cell = { column: Math.max(0, found), lane: Math.max(0, Math.min(shown.lanes.length - 1, Math.floor(y / (map.clientHeight / shown.lanes.length)))) };
    say();
  }

  function keydown(event) {
    const move = MOVES[event.key];
    if (move && shown !== null && !event.ctrlKey && !event.altKey && !event.metaKey && !event.shiftKey) {
      event.preventDefault();
      event.stopPropagation();
      cell = { column: within(cell.column + move[0], shown.from.length), lane: within(cell.lane + move[1], shown.lanes.length) };
      say();
    }
  }

  const stop = onSchemeChange(draw);
  panel.node.addEventListener(DRAWN, draw);
  return { node, show, destroy: () => (stop(), panel.node.removeEventListener(DRAWN, draw)) };
}

const within = (at, count) => Math.max(0, Math.min(count - 1, at));
const signed = (off) => `${off > 0 ? '+' : ''}${length(off, DECIMALS)}`;

/** Left and right of each column, px; a column reaches half way to its neighbours. */
function edgesOf({ from, to }, panel) {
  const x = (ms) => panel.pixelOf(ms);
  return from.map((start, i) => {
    const own = (x(to[i]) - x(start)) / 2 + 1.5;
    const before = i > 0 ? (x(start) - x(to[i - 1])) / 2 : own;
    const after = i < from.length - 1 ? (x(from[i + 1]) - x(to[i])) / 2 : own;
    const most = Math.max(3, 3 * own);
    return { left: x(start) - Math.min(before, most), right: x(to[i]) + Math.min(after, most) };
  });
}

function drawCells(pen, { shown, row, edges, paint }) {
  const hatch = hatchOf(pen, paint);
  shown.means.forEach((lanes, column) => {
    const { left, right } = edges[column];
    lanes.forEach((mean, lane) => {
      if (mean === null) {
        return;
      }
      const off = Math.max(-1, Math.min(1, (mean - shown.middle) / shown.reach));
      pen.globalAlpha = 1;
      pen.fillStyle = paint.sheet;
      pen.fillRect(left, lane * row, right - left, row - 1);
      pen.globalAlpha = Math.abs(off);
      pen.fillStyle = off > 0 ? paint.ink : hatch;
      pen.fillRect(left, lane * row, right - left, row - 1);
    });
  });
  pen.globalAlpha = 1;
}

function hatchOf(pen, paint) {
  const tile = document.createElement('canvas');
  tile.width = 4;
  tile.height = 4;
  const on = tile.getContext('2d');
  on.fillStyle = paint.ink;
  on.fillRect(0, 0, 4, 1.4);
  return pen.createPattern(tile, 'repeat');
}

function drawNumbers(pen, { shown, row, paint, left }) {
  const size = Math.min(paint.font.size, row);
  const every = Math.max(1, Math.ceil(size / row));
  pen.font = `${size}px ${paint.font.family}`;
  pen.fillStyle = paint.soft;
  pen.textAlign = 'right';
  pen.textBaseline = 'middle';
  shown.lanes.forEach((lane, i) => i % every === 0 && pen.fillText(String(lane), left - 8, (i + 0.5) * row));
}

/** What the inks mean: from thinnest to thickest. */
function drawKey(key, reach, paint) {
  const canvas = el('canvas', { width: 168, height: 14, 'aria-hidden': 'true', data: { legend: 'true' } });
  const pen = canvas.getContext('2d');
  const hatch = hatchOf(pen, paint);
  pen.fillStyle = paint.sheet;
  pen.fillRect(0, 0, 168, 14);
  for (let i = 0; i < 12; i++) {
    const off = (i - 5.5) / 5.5;
    pen.globalAlpha = Math.abs(off);
    pen.fillStyle = off > 0 ? paint.ink : hatch;
    pen.fillRect(i * 14, 0, 14, 14);
  }
  key.replaceChildren(el('span', {}, t('thinnerBy', { by: length(reach, DECIMALS) })), canvas, el('span', {}, t('thickerBy', { by: length(reach, DECIMALS) })));
}

function laneTable({ rows }) {
  const heads = [t('lane'), `${t('mean')} ${unit()}`, `${t('off')} ${unit()}`, `${t('least')} ${unit()}`, `${t('greatest')} ${unit()}`];
  return el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('lanesAsTable') },
    el('table', {}, el('caption', {}, t('lanesCaption')),
      el('thead', {}, el('tr', {}, heads.map((head, i) => el('th', { scope: 'col', class: i > 0 ? 'figure' : null }, head)))),
      el('tbody', {}, rows.map((row) => el('tr', {}, el('th', { scope: 'row' }, String(row.lane)),
        [row.mean, row.off, row.least, row.greatest].map((value) => el('td', { class: 'figure' }, um(value, DECIMALS))))))));
}
