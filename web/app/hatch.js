/**
 * The hatchings of a film's section, one a role, as SVG patterns. They differ in direction and density,
 * so that the drawing reads in one ink: skin leans right, seal leans left, core is dotted, a tie is
 * crossed, a barrier is closed like a wall.
 */
import { svg } from './elements.js';

const LINES = {
  skin: { size: [9, 9], d: 'M-2 11 11 -2M-2 2 2 -2M7 11 11 7' },
  seal: { size: [9, 9], d: 'M-2 -2 11 11M7 -2 11 2M-2 7 2 11' },
  core: { size: [12, 12], d: 'M2.5 3H4.5M8.5 9H10.5' },
  tie: { size: [6, 6], d: 'M-1 7 7 -1M-1 -1 7 7' },
  barrier: { size: [8, 3.5], d: 'M-1 1.75H9' },
};

/** Pattern definitions with ids that begin with `prefix`. */
export function hatchings(prefix) {
  return svg('defs', {}, Object.entries(LINES).map(([role, { size: [width, height], d }]) =>
    svg('pattern', { id: `${prefix}-${role}`, width, height, patternUnits: 'userSpaceOnUse' },
      svg('path', { d, class: `hatch hatch-${role}` }))));
}

export function hatchOf(prefix, role) {
  return role in LINES ? `url(#${prefix}-${role})` : 'none';
}
