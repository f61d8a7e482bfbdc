/** How to read the board, once below all lines. */
import { el, svg } from './elements.js';
import { hatchings, hatchOf } from './hatch.js';
import { ROLES } from './words.js';

const WIDTH = 34;
const HEIGHT = 18;

export function boardLegend() {
  const swatches = Object.entries(ROLES).map(([role, word]) => el('li', {}, swatch(role), word));
  return el('aside', { class: 'board-legend', 'aria-label': 'How to read the board' },
    el('ul', { class: 'plain' }, swatches),
    el('p', {}, 'Layer heights are to scale; slanted strokes mark a layer drawn taller. A cut end left of the target line is thinner than target, right of it thicker. The paper strip of a ribbon is what is usual.'),
    el('a', { href: '/help.html' }, 'More about the marks'));
}

function swatch(role) {
  const prefix = `legend-${role}`;
  return svg('svg', { class: 'film swatch', width: WIDTH, height: HEIGHT, 'aria-hidden': 'true' },
    hatchings(prefix),
    svg('rect', { class: 'ply', width: WIDTH, height: HEIGHT }),
    svg('rect', { width: WIDTH, height: HEIGHT, fill: hatchOf(prefix, role) }),
    svg('rect', { class: 'outline', x: 0.5, y: 0.5, width: WIDTH - 1, height: HEIGHT - 1 }));
}
