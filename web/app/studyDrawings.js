/** Drawings of studies of known pieces: readings about the reference, bias against thickness, points over time. */
import { svg } from './elements.js';
import { fromUnit, inUnit, number, um as written } from './format.js';
import { valueTicks } from './valueTicks.js';
import { room } from './text.js';

const t = await room('study');
const LEFT = 56;
const RIGHT = 12;
const TOP = 12;
const BOTTOM = 26;
const MOST_TICKS = 5;

/** Readings of one piece in their order, the reference with its uncertainty, and their mean with its 95 % interval. */
export function biasDrawing({ readings, referenceUm, expandedUm, mean, lower, upper }) {
  const plot = plotOf({ x: [0, readings.length + 1], y: [...readings, referenceUm - expandedUm, referenceUm + expandedUm, lower ?? referenceUm, upper ?? referenceUm], high: 220 });
  return plot.draw(t('drawn.bias'), readings.map((_, i) => i + 1), (at) => String(at),
    plot.strip('reference-band', referenceUm - expandedUm, referenceUm + expandedUm), plot.strip('mean-band', lower, upper),
    plot.across('reference', referenceUm), plot.across('mean', mean), plot.dots(readings.map((y, i) => [i + 1, y])));
}

/** Bias of every reading against the reference, the line, its 95 % band, and 0. */
export function linearityDrawing({ points, means, band }) {
  const plot = plotOf({ x: [band[0].referenceUm, band.at(-1).referenceUm], y: [0, ...points.map(([, y]) => y), ...band.flatMap(({ lower, upper }) => [lower, upper])], high: 320 });
  const edge = [...band.map(({ referenceUm, upper }) => [referenceUm, upper]), ...[...band].reverse().map(({ referenceUm, lower }) => [referenceUm, lower])];
  return plot.draw(t('drawn.linearity'), means.map(([x]) => x), (at) => written(at, Number.isInteger(at) ? 0 : 2),
    svg('path', { class: 'mean-band', d: `${plot.path(edge)}Z` }), plot.across('reference', 0),
    svg('path', { class: 'mean', d: plot.path(band.map(({ referenceUm, bias }) => [referenceUm, bias])) }), plot.dots(points, 'single'), plot.dots(means));
}

/** Points over time with their limits; `key` says which of them. */
export function timeDrawing({ points, band, key, words, reference, beyond }) {
  const values = points.map((point) => point[key]);
  const lines = band ? [band.lower, band.centre, band.upper] : [];
  const plot = plotOf({ x: [0, points.length + 1], y: [...values.filter((y) => y !== null), ...lines, ...(reference === null ? [] : [reference])], high: 200 });
  const seen = values.map((y, i) => [i + 1, y]).filter(([, y]) => y !== null);
  return plot.draw(words, points.map((_, i) => i + 1), (at) => points[at - 1]?.date.slice(5) ?? '',
    reference === null ? null : plot.across('reference', reference),
    band ? [plot.across('limit', band.lower), plot.across('mean', band.centre), plot.across('limit', band.upper)] : null,
    svg('path', { class: 'line', d: plot.path(seen) }), plot.dots(seen),
    seen.filter(([x, y]) => beyond.includes(x - 1) && band && (y < band.lower || y > band.upper)).map(([x, y]) => svg('circle', { class: 'ring', cx: plot.x(x), cy: plot.y(y), r: 9 })));
}

/** In pixels of the page, so that figures stay readable on a phone. */
function plotOf({ x: [from, to], y: values, high }) {
  const wide = Math.max(300, Math.min(900, document.documentElement.clientWidth - 64));
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const margin = Math.max((most - least) * 0.08, 1e-6);
  const [low, top] = [least - margin, most + margin];
  const x = (at) => LEFT + ((at - from) / (to - from)) * (wide - LEFT - RIGHT);
  const y = (um) => TOP + ((top - um) / (top - low)) * (high - TOP - BOTTOM);
  const path = (points) => points.map(([px, py], i) => `${i === 0 ? 'M' : 'L'}${x(px).toFixed(1)} ${y(py).toFixed(1)}`).join('');
  const across = (kind, um) => svg('path', { class: kind, d: `M${LEFT} ${y(um)}H${wide - RIGHT}` });
  const strip = (kind, lower, upper) => (lower === null || lower === undefined || !(upper > lower) ? null : svg('rect', { class: kind, x: LEFT, y: y(upper), width: wide - LEFT - RIGHT, height: y(lower) - y(upper) }));
  const dots = (points, kind = 'dot') => points.map(([px, py]) => svg('circle', { class: kind, cx: x(px), cy: y(py), r: kind === 'dot' ? 3.5 : 2.5 }));

  function draw(words, marks, wordOf, ...parts) {
    const { values: ticks, decimals } = valueTicks(inUnit(low), inUnit(top), MOST_TICKS);
    const every = Math.ceil((marks.length * 44) / (wide - LEFT));
    return svg('svg', { viewBox: `0 0 ${wide} ${high}`, width: wide, height: high, class: 'study-drawing', role: 'img', 'aria-label': words },
      ticks.map((tick) => [svg('path', { class: 'grid', d: `M${LEFT} ${y(fromUnit(tick))}H${wide - RIGHT}` }), svg('text', { x: LEFT - 8, y: y(fromUnit(tick)), 'text-anchor': 'end', 'dominant-baseline': 'middle' }, number(tick, decimals))]),
      marks.filter((_, i) => i % every === 0).map((at) => svg('text', { x: x(at), y: high - 6, 'text-anchor': 'middle' }, wordOf(at))), parts);
  }
  return { x, y, path, across, strip, dots, draw };
}
