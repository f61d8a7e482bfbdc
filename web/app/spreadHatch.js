/** The hatch of land outside a specification, for drawings that are SVG. */
import { svg } from './elements.js';

export function hatching(id) {
  return svg('defs', {}, svg('pattern', { id, width: 7, height: 7, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' },
    svg('line', { class: 'hatch-line', x1: 0, x2: 0, y1: 0, y2: 7 })));
}
