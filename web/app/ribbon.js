/**
 * The last shift of one layer as a ribbon: the paper strip is what is usual (between the control
 * limits of the mean), the ink is what the film did. Missing means are gaps; a mean off the strip is
 * dotted, and clamped to the edge when it is far off.
 */
import { svg } from './elements.js';

const MARGIN_PX = 9;
const STRIP_SHARE = 0.62;

/** `span`: {from, to} in ms, shared by all ribbons of a line. */
export function drawRibbon(root, layer, span, { width, height }, need) {
  root.setAttribute('viewBox', `0 0 ${width} ${height}`);
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

export function spanOf(layers) {
  const times = layers.flatMap(({ recent }) => recent.takenAt);
  return { from: Math.min(...times), to: Math.max(...times) };
}

function verticalScale(layer, height) {
  const clamp = (value) => Math.max(3, Math.min(height - 3, value));
  if (layer.limits) {
    const { lower, upper, centre } = layer.limits;
    const pxPerUm = (height * STRIP_SHARE) / Math.max(upper - lower, Number.EPSILON);
    const y = (um) => clamp(height / 2 - (um - (lower + upper) / 2) * pxPerUm);
    return { y, strip: { top: y(upper), bottom: y(lower), centre: y(centre) } };
  }
  const means = layer.recent.mean.filter((um) => um !== null);
  const low = Math.min(...means);
  const high = Math.max(...means);
  const y = (um) => clamp(height / 2 - (um - (low + high) / 2) * ((height * STRIP_SHARE) / Math.max(high - low, 1e-9)));
  return { y, strip: null };
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

function outside(points, limits, y) {
  return points
    .filter(({ um }) => um !== null && limits && (um < limits.lower || um > limits.upper))
    .map(({ x, um }) => svg('circle', { class: 'off-strip', cx: x, cy: y(um), r: 1.8 }));
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
