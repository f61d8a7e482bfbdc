/** The board before the first reading: an empty film and the three steps that fill it. */
import { el, svg } from './elements.js';
import { room } from './text.js';

const t = await room('board');
const BANDS = [80, 46, 22, 34, 22, 50, 80];
const WIDTH = 250;

export function emptyBoard() {
  return el('div', { class: 'empty-board' },
    ghost(),
    el('ol', {},
      step(t('step1'), t('step1Text'), el('a', { class: 'button', href: '/structures.html', data: { action: 'to-structures' } }, t('toStructures'))),
      step(t('step2'), t('step2Text'), el('a', { class: 'button', href: '/intake.html', data: { action: 'to-intake' } }, t('toIntake'))),
      step(t('step3'), t('step3Text'))));
}

function step(title, text, more = null) {
  return el('li', {}, el('h2', {}, title), el('p', {}, text), more);
}

function ghost() {
  let top = 1;
  const bands = BANDS.map((height) => {
    const band = svg('rect', { class: 'ghost', x: 1, y: top, width: WIDTH - 2, height });
    top += height;
    return band;
  });
  return svg('svg', { class: 'film', viewBox: `0 0 ${WIDTH} ${top + 1}`, 'aria-hidden': 'true' }, bands);
}
