/**
 * Ppk week by week: a point, open where the week was not stable, a bar down to its lower confidence limit, a line for what is asked for,
 * and a dashed one where the specification changed between two weeks.
 */
import { el, svg } from './elements.js';
import { number } from './format.js';
import { room } from './text.js';

const t = await room('report');
const BOX = { width: 420, height: 150, left: 34, right: 8, top: 10, bottom: 22 };

export function ppkDrawing(weeks, asked) {
  const known = weeks.filter(({ ppk }) => ppk !== null);
  if (known.length === 0) {
    return el('p', { class: 'soft' }, t('noIndexYet'));
  }
  const most = Math.max(asked * 1.3, ...known.map(({ ppk }) => ppk)) * 1.05;
  const x = (i) => BOX.left + 10 + (i * (BOX.width - BOX.left - BOX.right - 20)) / Math.max(1, weeks.length - 1);
  const y = (value) => BOX.height - BOX.bottom - (Math.max(0, value) / most) * (BOX.height - BOX.top - BOX.bottom);
  const label = known.map(({ week, ppk }) => `${week} ${number(ppk, 2)}`).join(', ');
  return svg('svg', { class: 'ppk-drawing', viewBox: `0 0 ${BOX.width} ${BOX.height}`, role: 'img', 'aria-label': t('ppkDrawing', { weeks: label, asked: number(asked, 2) }) },
    [0, Math.floor(most)].filter((value, i, all) => all.indexOf(value) === i).map((value) => svg('text', { x: BOX.left - 6, y: y(value) + 4, 'text-anchor': 'end' }, String(value))),
    svg('line', { class: 'floor', x1: BOX.left, x2: BOX.width - BOX.right, y1: y(0), y2: y(0) }),
    svg('line', { class: 'asked', x1: BOX.left, x2: BOX.width - BOX.right, y1: y(asked), y2: y(asked) }),
    svg('text', { x: BOX.left + 2, y: y(asked) - 4 }, t('askedIs', { index: number(asked, 2) })),
    specSteps(weeks).map((i) => svg('line', { class: 'step', x1: (x(i - 1) + x(i)) / 2, x2: (x(i - 1) + x(i)) / 2, y1: BOX.top, y2: y(0) }, svg('title', {}, t('specStep', { week: weeks[i].week })))),
    weeks.map(({ week, ppk, atLeast, stable }, i) => (ppk === null ? null : [
      atLeast === null ? null : svg('path', { class: 'reach', d: `M${x(i)} ${y(ppk)}V${y(atLeast)}M${x(i) - 4} ${y(atLeast)}h8` }),
      svg('circle', { cx: x(i), cy: y(ppk), r: 4, class: stable ? 'steady' : 'open' }),
      i === 0 || i === weeks.length - 1 || ppk !== null && weeks.length < 5 ? svg('text', { x: x(i), y: BOX.height - 6, 'text-anchor': i === weeks.length - 1 ? 'end' : 'middle' }, week.slice(5)) : null,
    ])));
}

/** Places of weeks that are judged by another specification than the last one before them that had samples. */
export function specSteps(weeks) {
  const known = weeks.map((week, i) => ({ ...week, i })).filter(({ samples, individual }) => samples > 0 && individual !== null);
  const asked = ({ individual: { lower, target, upper } }) => [lower, target, upper].join();
  return known.filter((week, k) => k > 0 && asked(week) !== asked(known[k - 1])).map(({ i }) => i);
}
