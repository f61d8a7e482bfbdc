/** The chart of single readings of a check standard: readings in their order, limits, the reference thickness. */
import { svg } from './elements.js';
import { um as inWords } from './format.js';
import { room } from './text.js';

const t = await room('gauge');
const WIDE = 640;
const HIGH = 170;
const EDGE = 24;
const LEFT = 60;
const MOST = 60;

export function checkDrawing({ name, thicknessUm, centreUm, chartSigmaUm, readings }) {
  const shown = readings.slice(-MOST);
  const limits = hasLimits(centreUm) ? [centreUm - 3 * chartSigmaUm, centreUm, centreUm + 3 * chartSigmaUm] : [];
  const all = [...shown.map(({ um }) => um), ...limits, thicknessUm];
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const x = (at) => LEFT + 10 + (at / Math.max(1, shown.length - 1)) * (WIDE - LEFT - 30);
  const y = (um) => HIGH - EDGE - ((um - least) / Math.max(1e-9, most - least)) * (HIGH - 2 * EDGE);
  return svg('svg', { viewBox: `0 0 ${WIDE} ${HIGH}`, class: 'gauge-drawing', role: 'img', 'aria-label': t('checkDrawn', { name }) },
    svg('path', { class: 'reference', d: `M${LEFT} ${y(thicknessUm)}H${WIDE - 10}` }),
    limits.map((um, at) => [svg('path', { class: at === 1 ? 'mean' : 'limit', d: `M${LEFT} ${y(um)}H${WIDE - 10}` }), svg('text', { x: 0, y: y(um), 'dominant-baseline': 'middle' }, inWords(um, 2))]),
    svg('path', { class: 'line', d: shown.map(({ um }, at) => `${at === 0 ? 'M' : 'L'}${x(at)} ${y(um)}`).join('') }),
    shown.map(({ um, failed }, at) => [svg('circle', { cx: x(at), cy: y(um), r: 3 }), failed ? svg('circle', { class: 'ring', cx: x(at), cy: y(um), r: 8 }) : []]));
}

const hasLimits = (centre) => centre !== undefined && centre !== null;
