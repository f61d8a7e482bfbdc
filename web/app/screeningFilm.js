/**
 * Draws a misread sample beside the film that was usual: two sections to one scale, outer face on top.
 * What the gauge read is of the lanes that a flag names; a blank layer is a dashed gap.
 */
import { el, svg } from './elements.js';
import { bandHeights } from './filmScale.js';
import { um } from './format.js';
import { hatchings, hatchOf } from './hatch.js';
import { room } from './text.js';

const t = await room('screening');
const HEIGHT = 190;
const BODY = 78;
const COLUMN = 150;
const LEAST_BAND_PX = 13;
const TOP = 20;
let drawings = 0;

/** `layers` and `flags` as the API gives them. */
export function screeningFilm({ layers, lanes, flags }) {
  const named = new Set(flags.flatMap((flag) => flag.lanes));
  const positions = new Set(flags.flatMap((flag) => flag.positions));
  const read = layers.map((layer) => middle(layer.read.filter((value, i) => value !== null && (named.size === 0 || named.has(lanes[i])))));
  const usual = layers.map((layer) => layer.usual);
  const most = Math.max(sum(read), sum(usual), 1e-9);
  const prefix = `suspect${++drawings}`;
  const words = t('readUsual', { read: inWords(read), usual: inWords(usual) });
  return el('figure', { class: 'suspect-film' },
    svg('svg', { class: 'film', width: 2 * COLUMN, height: HEIGHT + TOP + 4, viewBox: `0 0 ${2 * COLUMN} ${HEIGHT + TOP + 4}`, role: 'img', 'aria-label': words },
      hatchings(prefix),
      section(prefix, layers, read, { left: 0, most, title: t('asRead'), suspect: positions }),
      section(prefix, layers, usual, { left: COLUMN, most, title: t('usual'), suspect: new Set() })));
}

function section(prefix, layers, thicknesses, { left, most, title, suspect }) {
  const drawn = thicknesses.map((value) => value ?? 0);
  const total = Math.max(LEAST_BAND_PX * drawn.length, (HEIGHT * sum(thicknesses)) / most);
  const bands = bandHeights(drawn, total, LEAST_BAND_PX);
  return [
    svg('text', { class: 'caption', x: left, y: 10 }, title),
    ...layers.map((layer, i) => band(prefix, layer, { ...bands[i], top: bands[i].top + TOP, left }, thicknesses[i], suspect.has(layer.position))),
  ];
}

function band(prefix, layer, { top, height, left }, value, isSuspect) {
  const need = value === null ? 'missing' : isSuspect ? 'gauge' : null;
  const box = { x: left + 1, y: top, width: BODY, height: Math.max(1, height - 1) };
  return svg('g', { class: 'band', 'data-need': need },
    value === null ? null : svg('rect', { ...box, class: 'ply' }),
    value === null ? null : svg('rect', { ...box, fill: hatchOf(prefix, layer.roles[0] ?? '') }),
    svg('rect', { ...box, class: 'outline' }),
    svg('text', { class: 'caption', x: left + BODY + 8, y: top + height / 2, dy: '0.35em' }, value === null ? t('blank') : um(value)));
}

function middle(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  if (sorted.length === 0) {
    return null;
  }
  return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
}

function sum(values) {
  return values.reduce((all, value) => all + (value ?? 0), 0);
}

function inWords(values) {
  return t('withUnit', { values: values.map((value) => (value === null ? t('blank') : um(value))).join(', ') });
}
