/** The ways through the gauge room, below the head of each of its pages. */
import { el } from './elements.js';

const ROOMS = [
  ['calibration', '/gauge.html', 'Calibration'],
  ['screening', '/screening.html', 'Screening'],
  ['study', '/study.html', 'Gauge study'],
  ['film-check', '/film-check.html', 'Film check'],
];

/** @param room which of them the page is */
export function gaugeRoomWays(room) {
  const links = ROOMS.map(([name, href, word]) =>
    el('li', {}, el('a', { href, 'aria-current': name === room ? 'page' : null }, word)));
  return el('nav', { class: 'gauge-room-ways', 'aria-label': 'Gauge room' }, el('ul', { class: 'plain' }, links));
}
