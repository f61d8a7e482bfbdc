/** The film as the way to its layers: the section beside their names, the layer on show marked. */
import { el, svg } from './elements.js';
import { drawFilm } from './film.js';
import { markWord, shape } from './marks.js';
import { needOfLayer } from './need.js';
import { layerName } from './words.js';
import { room } from './text.js';

const t = await room('layer');
const LOUD = new Set(['act', 'watch', 'gauge']);

/** `addressOf(line, layer)` is where a layer is shown. */
export function layerFilm(addressOf) {
  const film = svg('svg', { class: 'film', 'aria-hidden': 'true' });
  const names = el('ol', { class: 'plain' });
  const node = el('nav', { class: 'layer-film', 'aria-label': t('layersOf') }, film, names);
  let shown = null;

  function show(line, isCurrent) {
    shown = line;
    names.replaceChildren(...[...line.layers, line.total].map((layer) => el('li', {}, link(line, layer, { href: addressOf(line, layer), 'aria-current': isCurrent(layer) ? 'page' : null }))));
    draw();
  }

  function draw() {
    const { width } = film.getBoundingClientRect();
    if (shown === null || width === 0) {
      return;
    }
    const last = names.children[shown.layers.length - 1];
    const height = last.offsetTop + last.offsetHeight;
    film.setAttribute('height', height);
    drawFilm(film, shown.layers, { width, height, room: Math.round(width * 0.22) }, (layer) => needOfLayer(layer, shown));
  }
  return { node, show, draw };
}

function link(line, layer, attributes) {
  const need = needOfLayer(layer, line);
  return el('a', { ...attributes, data: { need } },
    el('span', {}, layerName(layer)),
    LOUD.has(need) ? [shape(need), el('span', { class: 'for-readers' }, markWord(need))] : null);
}
