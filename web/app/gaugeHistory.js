/** The velocities that calibrations found for a layer, with their expanded uncertainty, and whether they are one. */
import { el, svg } from './elements.js';
import { number } from './format.js';
import { part, withUncertainty } from './gaugeParts.js';
import { calibrationPlace } from './gaugePlaces.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('gauge');
const WIDE = 640;
const HIGH = 150;
const EDGE = 30;

export function gaugeHistory() {
  const list = el('div', { class: 'gauge-histories' });
  const node = part(t('velocitiesInTime'), list);
  const show = ({ calibrations, histories }) => list.replaceChildren(...(histories.length === 0
    ? [el('p', {}, t('noCalibration'))]
    : histories.map((one) => history(one, calibrations.filter((each) => ['gauge', 'structure', 'layer', 'resin'].every((name) => each[name] === one[name]))))));
  return { node, show };
}

function history(one, calibrations) {
  const inTime = [...calibrations].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
  return el('article', { data: { wanders: String(one.wanders) } },
    el('h3', {}, t(one.structure ? 'historyOf' : 'historyOfAll', { what: one.layer || one.resin, structure: one.structure, gauge: one.gauge })),
    el('p', { class: one.wanders ? 'caution' : '' }, verdict(one)),
    inTime.length > 1 ? drawn(one, inTime) : null,
    el('ol', { class: 'plain gauge-list' }, inTime.reverse().map((each) => el('li', { id: calibrationPlace(each.id) }, el('p', {}, t('foundBy', { id: each.id, velocity: withUncertainty(each.found.velocityMps, each.found.uVelocityMps, 1, 'm/s'), by: each.by, at: momentOf(each.at) }), el('q', {}, each.reason))))));
}

function verdict({ count, wanders, birge, chance, meanMps, uMeanMps }) {
  if (count < 2) {
    return t('nothingToCompare');
  }
  const figures = t('birge', { birge: number(birge, 2), chance: number(chance, 3) });
  return wanders
    ? t('wanders', { n: count, figures })
    : t('agree', { n: count, figures, together: withUncertainty(meanMps, uMeanMps, 1, 'm/s') });
}

/** Points with bars of U (k = 2) in time, the weighted mean as a line. */
function drawn({ meanMps }, inTime) {
  const ends = inTime.flatMap(({ found }) => [found.velocityMps - 2 * found.uVelocityMps, found.velocityMps + 2 * found.uVelocityMps]);
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  const times = inTime.map(({ at }) => Date.parse(at));
  const x = (ms) => EDGE + 30 + ((ms - times[0]) / Math.max(1, times.at(-1) - times[0])) * (WIDE - 2 * EDGE - 60);
  const y = (mps) => HIGH - EDGE - ((mps - least) / Math.max(1e-9, most - least)) * (HIGH - 2 * EDGE);
  const label = (mps, at) => svg('text', { x: 0, y: at, 'dominant-baseline': 'middle' }, number(mps, 0));
  return svg('svg', { viewBox: `0 0 ${WIDE} ${HIGH}`, class: 'gauge-drawing', role: 'img', 'aria-label': t('velocitiesDrawn') },
    label(most, y(most)), label(least, y(least)),
    meanMps === undefined || meanMps === null ? [] : [svg('path', { class: 'mean', d: `M${EDGE + 10} ${y(meanMps)}H${WIDE - EDGE}` })],
    inTime.map(({ at, found }) => svg('g', {},
      svg('path', { d: `M${x(Date.parse(at))} ${y(found.velocityMps - 2 * found.uVelocityMps)}V${y(found.velocityMps + 2 * found.uVelocityMps)}` }),
      svg('circle', { cx: x(Date.parse(at)), cy: y(found.velocityMps), r: 4 }))));
}
