/** The ways through the gauge room, below the head of each of its pages. */
import { el } from './elements.js';
import { room } from './text.js';

const t = await room('gauge');
const ROOMS = [
  ['calibration', '/gauge.html'],
  ['screening', '/screening.html'],
  ['study', '/study.html'],
  ['film-check', '/film-check.html'],
];

/** @param room which of them the page is */
export function gaugeRoomWays(room) {
  const links = ROOMS.map(([name, href]) =>
    el('li', {}, el('a', { href, 'aria-current': name === room ? 'page' : null }, t(`room.${name}`))));
  return el('nav', { class: 'gauge-room-ways', 'aria-label': t('room') }, el('ul', { class: 'plain' }, links));
}
