/**
 * The last shift of one layer as a ribbon: the paper strip is what is usual (between the control
 * limits of the mean), the ink is what the film did. Missing means are gaps; a mean off the strip is
 * dotted, and clamped to the edge when it is far off.
 */
import { svg } from './elements.js';

const MARGIN_PX = 9;
/** Above and below, in widths of the strip. */
const PADDING = 0.3;
/** Means farther off the strip than this are drawn at the edge. */
const MOST_STRIPS_OFF = 3;

/** `span`: {from, to} in ms, shared by all ribbons of a line. */
export function drawRibbon(root, layer, span, { width, height }, need) {
  const x = (ms) => 2 + ((ms - span.from) / Math.max(1, span.to - span.from)) * (width - MARGIN_PX - 2);
  const { y, strip } = verticalScale(layer, height);
  const points = layer.recent.takenAt.map((ms, i) => ({ x: x(ms), um: layer.recent.mean[i] }));
  root.replaceChildren(
    ...(strip ? stripOf(strip, width) : []),
    svg('path', { class: 'trace', d: trace(points, y) }),
    ...outside(points, layer.limits, y),
    ...lastPoint(points, y, need),
  );
}

/** From the first to the last sample of all layers; null where there is none. */
export function spanOf(layers) {
  const times = layers.flatMap(({ recent }) => recent.takenAt);
  return times.length === 0 ? null : { from: Math.min(...times), to: Math.max(...times) };
}

function verticalScale({ limits, recent }, height) {
  const means = recent.mean.filter((um) => um !== null);
  if (means.length === 0) {
    return { y: () => height / 2, strip: null };
  }
  const [low, high] = limits ? withStrip(limits, means) : padded(Math.min(...means), Math.max(...means));
  const y = (um) => Math.max(2, Math.min(height - 2, height * (1 - (um - low) / (high - low))));
  return { y, strip: limits && { top: y(limits.upper), bottom: y(limits.lower), centre: y(limits.centre) } };
}

function withStrip({ lower, upper }, means) {
  const width = Math.max(upper - lower, Number.EPSILON);
  const farthest = width * MOST_STRIPS_OFF;
  const low = Math.max(lower - farthest, Math.min(lower, ...means));
  const high = Math.min(upper + farthest, Math.max(upper, ...means));
  return [low - width * PADDING, high + width * PADDING];
}

function padded(low, high) {
  const width = Math.max(high - low, 1e-9);
  return [low - width * PADDING, high + width * PADDING];
}

function stripOf({ top, bottom, centre }, width) {
  return [
    svg('rect', { class: 'strip', x: 0, y: top, width, height: bottom - top }),
    svg('path', { class: 'strip-edge', d: `M0 ${top}H${width}M0 ${bottom}H${width}` }),
    svg('path', { class: 'strip-centre', d: `M0 ${centre}H${width}` }),
  ];
}

function trace(points, y) {
  let pen = 'M';
  return points
    .map(({ x, um }) => {
      if (um === null) {
        pen = 'M';
        return '';
      }
      const step = `${pen}${x.toFixed(1)} ${y(um).toFixed(1)}`;
      const dot = pen === 'M' ? 'h0' : '';
      pen = 'L';
      return step + dot;
    })
    .join('');
}

/** Dots as one path, so that a ribbon has as many elements whatever the film did. */
function outside(points, limits, y) {
  const off = points.filter(({ um }) => um !== null && limits && (um < limits.lower || um > limits.upper));
  return off.length === 0 ? [] : [svg('path', { class: 'off-strip', d: off.map(({ x, um }) => `M${x.toFixed(1)} ${y(um).toFixed(1)}h0`).join('') })];
}

function lastPoint(points, y, need) {
  const last = points.at(-1);
  if (!last || last.um === null) {
    return [];
  }
  const at = { cx: last.x, cy: y(last.um) };
  const ring = need === 'calm' ? [] : [svg('circle', { class: 'ring', ...at, r: 6, 'data-need': need })];
  return [svg('circle', { class: 'now', ...at, r: 2.6 }), ...ring];
}
