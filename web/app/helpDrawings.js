/** Drawings of the help page: a film to read and a chart to read, invented figures. */
import { el, svg } from './elements.js';
import { drawFilm } from './film.js';
import { drawRibbon } from './ribbon.js';
import { room } from './text.js';

const t = await room('help');
const LAYERS = [
  [['skin'], 14, 14.1],
  [['core'], 12, 11.9],
  [['tie'], 3, 2.76],
  [['barrier'], 5, 5.02],
  [['tie', 'seal'], 18, 18.2],
].map(([roles, target, mean]) => ({ roles, mean, spec: { target }, limits: null }));
const THIN = LAYERS[2];

/** Draws itself once it has a place in the page. */
export function helpFilm() {
  const film = svg('svg', { class: 'film', role: 'img', 'aria-label': t('filmDrawn') });
  const frame = el('div', { class: 'help-film' }, film);
  const draw = () => {
    const { width } = frame.getBoundingClientRect();
    const height = 220;
    film.setAttribute('height', height);
    drawFilm(film, LAYERS, { width, height, room: width * 0.22 }, (layer) => (layer === THIN ? 'act' : 'calm'));
  };
  return { node: frame, draw };
}

const MEANS = [3.0, 3.02, 2.99, 3.01, 2.98, 3.0, 3.03, 2.99, 3.01, 3.0, 2.98, 3.01, 3.0, 2.97, 2.96, 2.97, 2.95, 2.94, 2.92, 2.9];

export function helpRibbon() {
  const ribbon = svg('svg', { class: 'ribbon', role: 'img', 'aria-label': t('ribbonDrawn') });
  const frame = el('div', { class: 'help-ribbon' }, ribbon);
  const draw = () => {
    const layer = { limits: { lower: 2.94, centre: 3, upper: 3.06 }, recent: { takenAt: MEANS.map((um, i) => i), mean: MEANS } };
    const size = { width: frame.clientWidth, height: 56 };
    ribbon.setAttribute('height', size.height);
    drawRibbon(ribbon, layer, { from: 0, to: MEANS.length - 1 }, size, 'act');
  };
  return { node: frame, draw };
}

/** The mean chart in small: limits as stepped lines that end in words, specification as hatched land. */
export function helpChart() {
  const x = (i) => 20 + i * 18;
  const y = (um) => 130 - (um - 3) * 700;
  const d = MEANS.map((um, i) => `${i === 0 ? 'M' : 'L'}${x(i)} ${y(um)}`).join('');
  const right = x(MEANS.length - 1);
  const limit = (um, words) => [
    svg('path', { class: 'help-limit', d: `M20 ${y(um)}H${right}` }),
    svg('text', { class: 'caption', x: right + 8, y: y(um) + 4 }, words),
  ];
  const dots = MEANS.map((um, i) => svg('circle', { class: 'now', cx: x(i), cy: y(um), r: 2.5 }));
  const rings = [18, 19].map((i) => svg('circle', { class: 'ring', cx: x(i), cy: y(MEANS[i]), r: 7 }));
  return svg('svg', { class: 'ribbon help-chart', viewBox: '0 0 470 260', role: 'img', 'aria-label': t('chartDrawn') },
    svg('defs', {}, svg('pattern', { id: 'help-land', width: 9, height: 9, patternUnits: 'userSpaceOnUse' }, svg('path', { class: 'hatch', d: 'M-2 11 11 -2M-2 2 2 -2M7 11 11 7' }))),
    svg('rect', { x: 20, y: 2, width: right - 20, height: 24, fill: 'url(#help-land)' }),
    svg('rect', { x: 20, y: 232, width: right - 20, height: 24, fill: 'url(#help-land)' }),
    svg('text', { class: 'caption', x: right + 8, y: 18 }, t('outOfSpec')),
    svg('text', { class: 'caption', x: right + 8, y: 248 }, t('outOfSpec')),
    limit(3.06, t('upper')), limit(3, t('centre')), limit(2.94, t('lower')),
    svg('path', { class: 'trace', d }), dots, rings,
    svg('text', { class: 'caption strong', x: right, y: y(2.9) + 24, 'text-anchor': 'end' }, t('beyond')));
}
