/** The board before the first reading: an empty film and the three steps that fill it. */
import { el, svg } from './elements.js';

const BANDS = [80, 46, 22, 34, 22, 50, 80];
const WIDTH = 250;

export function emptyBoard() {
  return el('div', { class: 'empty-board' },
    ghost(),
    el('ol', {},
      step('Describe the film.', 'A structures file names each layer from the outer face inwards, with its target and its specification limits. It is given when Filmward is started or when files are imported.'),
      step('Bring in readings.', 'Put the files that the gauge exports into the watched folder, or drop one on the intake page. Nothing is lost: rows that cannot be read are shown with the reason.', el('a', { class: 'button', href: '/intake.html' }, 'Go to intake')),
      step('Put limits in force.', 'From 20 samples on the charts show limits on trial. From the moment somebody puts them in force, the board calls when a layer moves.')));
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
