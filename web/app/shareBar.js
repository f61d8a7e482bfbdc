/** The share of a layer as a thin bar, with a tick at the share aimed at. Shares are from 0 to 1; the words stand beside it. */
import { svg } from './elements.js';

const [WIDE, HIGH] = [100, 8];

/** `full` is the share at which a bar ends, the same for all layers of a film. */
export function shareBar(share, aim, full) {
  const x = (part) => Math.min(WIDE, (part / full) * WIDE);
  return svg('svg', { class: 'share-bar', viewBox: `0 0 ${WIDE} ${HIGH}`, preserveAspectRatio: 'none', 'aria-hidden': 'true' },
    svg('path', { class: 'share-ground', d: `M0 ${HIGH - 1}H${WIDE}` }),
    svg('rect', { class: 'share', y: 2, width: x(share), height: HIGH - 4 }),
    aim === null ? null : svg('path', { class: 'share-aim', d: `M${x(aim)} 0V${HIGH}` }));
}

/** The greatest share of a film, rounded up to a twentieth. */
export function fullShare(shares) {
  return Math.max(0.05, Math.ceil(20 * Math.max(0, ...shares) - 1e-9) / 20);
}
