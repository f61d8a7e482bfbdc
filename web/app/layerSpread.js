/**
 * The distribution of single readings beside the charts: bars, the specification as hatched land, the normal curve where it
 * fits, and in words how many are outside.
 */
import { el, setText, svg } from './elements.js';
import { count, decimalsFor, fromUnit, inUnit, length, number, um } from './format.js';
import { moment } from './plantClock.js';
import { hatching } from './spreadHatch.js';
import { room } from './text.js';
import { valueTicks } from './valueTicks.js';

const t = await room('look');
const BOX = { width: 300, height: 150, bottom: 22, top: 8, side: 6 };
const CURVE_STEPS = 60;
/** Half of the widest number, which must not stick out. */
const TICK_HALF = 14;

export function layerSpread() {
  const drawing = el('div', {});
  const words = el('p', { class: 'soft' });
  const node = el('section', { class: 'spread', hidden: true }, el('h2', {}, t('spreadTitle')), drawing, words);

  /** Each reading is counted by the specification of its time; hatched is the last that held in the span. */
  function show(spread, { specs, columns: { takenAt } }) {
    node.hidden = spread === null;
    if (spread !== null) {
      const { from: since, spec } = specs.findLast(({ from }) => from === null || from <= takenAt.at(-1)) ?? specs[0];
      const isOfMore = since !== null && since > takenAt[0];
      setText(words, [inWords(spread), isOfMore ? t('byThatOfThen', { at: moment(since) }) : ''].filter(Boolean).join(' '));
      drawing.replaceChildren(draw(spread, spec));
    }
  }
  return { node, show };
}

function inWords({ readings, below, above, normality, tails }) {
  const parts = [t('spreadOf', { n: readings })];
  if (below !== null || above !== null) {
    const outside = (below ?? 0) + (above ?? 0);
    parts.push(outside === 0 ? t('noneOutside') : t('outside', { n: outside, percent: number((100 * outside) / readings, 2), below: count(below ?? 0), above: count(above ?? 0) }));
  }
  if (tails.length === 3) {
    parts.push(t('tails', { low: um(tails[0]), high: um(tails[2]) }));
  }
  parts.push(t(`normality.${normality.verdict}`, { p: normality.p === null ? '' : number(normality.p, 3), skewness: normality.skewness === null ? '' : number(normality.skewness, 2) }));
  return parts.join(' ');
}

function draw(spread, spec) {
  const { axis, x, y } = scales(spread, spec);
  const bars = spread.counts.map((n, i) => {
    const [from, to] = [x(spread.start + i * spread.width), x(spread.start + (i + 1) * spread.width)];
    return svg('rect', { class: 'bar', x: from + 0.4, width: Math.max(0.6, to - from - 0.8), y: y(n), height: y(0) - y(n) });
  });
  return svg('svg', { viewBox: `0 0 ${BOX.width} ${BOX.height}`, class: 'spread-drawing', role: 'img', 'aria-label': t('spreadDrawing', { mean: length(spread.mean), sigma: length(spread.sigma, 3) }) },
    hatching('spread-land'),
    lands(spec, x, axis), bars,
    spread.normality.verdict === 'normal' ? svg('path', { class: 'curve', d: curve(spread, x, y, axis) }) : null,
    spec.target === undefined ? null : svg('line', { class: 'target', x1: x(spec.target), x2: x(spec.target), y1: BOX.top, y2: y(0) }),
    svg('line', { class: 'floor', x1: BOX.side, x2: BOX.width - BOX.side, y1: y(0), y2: y(0) }),
    ticks(axis, x));
}

function scales({ start, width, counts }, spec) {
  const ends = [start, start + width * counts.length, spec.lower, spec.upper, spec.target].filter((value) => value !== undefined);
  const [least, greatest] = [Math.min(...ends), Math.max(...ends)];
  const margin = (greatest - least) * 0.06 || 0.5;
  const axis = { min: least - margin, max: greatest + margin };
  const most = Math.max(...counts);
  return {
    axis,
    x: (value) => BOX.side + ((value - axis.min) / (axis.max - axis.min)) * (BOX.width - 2 * BOX.side),
    y: (n) => BOX.height - BOX.bottom - (n / most) * (BOX.height - BOX.bottom - BOX.top),
  };
}

function lands({ lower, upper }, x, { min, max }) {
  const land = (from, to) => svg('rect', { class: 'land', x: x(from), width: x(to) - x(from), y: BOX.top, height: BOX.height - BOX.bottom - BOX.top, fill: 'url(#spread-land)' });
  const edge = (at) => svg('line', { class: 'edge', x1: x(at), x2: x(at), y1: BOX.top, y2: BOX.height - BOX.bottom });
  return [
    lower === undefined ? null : [land(min, lower), edge(lower)],
    upper === undefined ? null : [land(upper, max), edge(upper)],
  ];
}

function curve({ mean, sigma, readings, width }, x, y, { min, max }) {
  const points = Array.from({ length: CURVE_STEPS + 1 }, (_, i) => {
    const at = min + ((max - min) * i) / CURVE_STEPS;
    const density = Math.exp(-((at - mean) ** 2) / (2 * sigma * sigma)) / (sigma * Math.sqrt(2 * Math.PI));
    return `${x(at).toFixed(1)} ${y(readings * width * density).toFixed(1)}`;
  });
  return `M${points.join('L')}`;
}

function ticks({ min, max }, x) {
  const { values, decimals } = valueTicks(inUnit(min), inUnit(max), 5);
  return values.map((value) =>
    svg('text', { x: Math.max(TICK_HALF, Math.min(BOX.width - TICK_HALF, x(fromUnit(value)))), y: BOX.height - 6, 'text-anchor': 'middle' }, number(value, Math.min(decimals, decimalsFor(max) + 1))));
}
