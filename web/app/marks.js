/**
 * The marks. Each state has a shape and a word of its own, so that colour is never needed to read it.
 * "Unusual" (a control test) is the ring of the charts, "out of spec" the hatched land with a point in it.
 */
import { el, svg } from './elements.js';
import { room } from './text.js';

const t = await room('marks');

const path = (d, extra = {}) => svg('path', { d, ...extra });
const stroke = { class: 'line' };

const SHAPES = {
  act: () => [path('M1 8 6 2H15V14H6Z')],
  watch: () => [path('M1 8 8 2.5 15 8 8 13.5Z', stroke), svg('circle', { cx: 8, cy: 8, r: 2.2 })],
  gauge: () => [
    path('M5 2H2V14H5M11 2H14V14H11', stroke),
    path('M6 6.2a2 2 0 1 1 2.6 1.9c-.5.2-.6.6-.6 1.3', stroke),
    svg('circle', { cx: 8, cy: 12, r: 1 }),
  ],
  stale: () => [path('M3 2H13L3 14H13Z', stroke)],
  collecting: () => [path('M2 13V10M6 13V7M10 13V9', stroke), path('M14 13V4', { class: 'line dashed' })],
  not_running: () => [path('M3 2V14M13 2V14', stroke), path('M6.5 4.5H9.5V11.5H6.5Z')],
  missing: () => [path('M1 8H5M11 8H15', stroke)],
  live: () => [svg('circle', { cx: 8, cy: 8, r: 4 })],
  lost: () => [svg('circle', { cx: 8, cy: 8, r: 6, ...stroke }), path('M3 13 13 3', stroke)],
  quarantine: () => [path('M2 2H14V14H2Z', { class: 'line dashed' }), svg('circle', { cx: 8, cy: 8, r: 2.2 })],
  unusual: () => [svg('circle', { cx: 8, cy: 8, r: 6, ...stroke }), svg('circle', { cx: 8, cy: 8, r: 2 })],
  spec: () => [
    path('M1 15V1H15V15Z', stroke),
    path('M1 8 8 1M1 15 15 1M8 15 15 8', { class: 'line thin' }),
    svg('circle', { cx: 8, cy: 8, r: 2.6, class: 'knock' }),
  ],
};

/** Only the shape; the word must stand beside it. */
export function shape(name) {
  return svg('svg', { class: `shape shape-${name}`, viewBox: '0 0 16 16', 'aria-hidden': 'true' }, SHAPES[name]());
}

/** What a mark is called. */
export const markWord = (name) => t.maybe(`mark.${name}`) ?? name;

/** Shape and word; what is calm needs no shape. */
export function mark(name, words = markWord(name)) {
  return el('span', { class: `mark mark-${name}` }, name in SHAPES ? shape(name) : null, el('span', {}, words));
}

const BARS = { high: 3, medium: 2, low: 1 };

/** Priority: one to three bands of a film filled, and the word. */
export function priorityMark(priority) {
  const filled = BARS[priority] ?? 0;
  const bars = [0, 1, 2].map((i) =>
    svg('rect', { x: 1.5, y: 11 - 4.5 * i, width: 13, height: 3, class: i < filled ? 'solid' : 'line thin' }),
  );
  const drawing = svg('svg', { class: 'shape', viewBox: '0 0 16 16', 'aria-hidden': 'true' }, bars);
  return el('span', { class: 'mark mark-priority' }, drawing, el('span', {}, t.maybe(`priority.${priority}`) ?? priority));
}
