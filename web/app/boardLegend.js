/** How to read the board, once below all lines. */
import { el, svg } from './elements.js';
import { hatchings, hatchOf } from './hatch.js';
import { ROLES } from './words.js';
import { room } from './text.js';

const t = await room('board');
const WIDTH = 34;
const HEIGHT = 18;

export function boardLegend() {
  const swatches = Object.entries(ROLES).map(([role, word]) => el('li', {}, swatch(role), word));
  return el('aside', { class: 'board-legend', 'aria-label': t('howToRead') },
    el('ul', { class: 'plain' }, swatches),
    el('p', {}, t('legend')),
    el('a', { href: '/help.html' }, t('moreMarks')),
    el('a', { href: '/?wall', data: { action: 'wall' } }, t('onTheWall')));
}

function swatch(role) {
  const prefix = `legend-${role}`;
  return svg('svg', { class: 'film swatch', width: WIDTH, height: HEIGHT, 'aria-hidden': 'true' },
    hatchings(prefix),
    svg('rect', { class: 'ply', width: WIDTH, height: HEIGHT }),
    svg('rect', { width: WIDTH, height: HEIGHT, fill: hatchOf(prefix, role) }),
    svg('rect', { class: 'outline', x: 0.5, y: 0.5, width: WIDTH - 1, height: HEIGHT - 1 }));
}
