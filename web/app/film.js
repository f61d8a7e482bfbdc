/**
 * Draws a film's cross-section into an SVG element, outer face on top. Bands are to scale down the
 * page; each band's cut end stands left of the target hairline when the layer is thinner, right of it
 * when it is thicker. A layer that needs somebody has the piece between end and hairline filled.
 */
import { svg } from './elements.js';
import { bandHeights, deviationOf, drawnUm, exaggeration } from './filmScale.js';
import { hatchings, hatchOf } from './hatch.js';
import { room } from './text.js';

const t = await room('board');
const LEAST_BAND_PX = 22;
const BREAK_WIDTH_PX = 7;
const LEAST_CAPTIONED_PX = 170;
let drawings = 0;

/**
 * `size`: {width, height, room} in px, where room is what is kept on either side of the hairline. With `beside`, the
 * layers of films drawn beside it, all have one factor.
 * `needs(layer)` tells which mark a layer wears. Gives the factor and the middle of each band.
 */
export function drawFilm(root, layers, size, needs) {
  const prefix = root.dataset.prefix ?? `film${++drawings}`;
  root.dataset.prefix = prefix;
  const bodyPx = size.width - 1 - size.room;
  const factor = exaggeration([...layers, ...(size.beside ?? [])], bodyPx, size.room - 3);
  const bands = bandHeights(layers.map(drawnUm), size.height - 2, LEAST_BAND_PX);
  const scale = { hairline: bodyPx, room: size.room - 2, factor, bodyPx, right: size.width };
  root.replaceChildren(
    hatchings(prefix),
    ...layers.map((layer, i) => band(prefix, layer, { ...bands[i], top: bands[i].top + 1 }, scale, needs(layer))),
    svg('path', { class: 'hairline', d: `M${bodyPx} -5V${size.height + 5}` }),
    ...captions(size, bodyPx, factor),
  );
  return { factor, middles: bands.map(({ top, height }) => 1 + top + height / 2) };
}

function band(prefix, layer, box, scale, need) {
  const deviation = deviationOf(layer);
  const end = deviation === null ? scale.hairline : scale.hairline + offset(deviation, scale);
  return svg('g', { class: 'band', 'data-need': need },
    body(prefix, layer, box, end),
    difference(box, end, scale.hairline),
    box.broken ? breakMark(box) : null,
    svg('path', { class: 'leader', 'data-need': need, d: `M${Math.max(end, scale.hairline) + 5} ${box.top + box.height / 2}H${scale.right}` }),
    svg('path', { class: 'cut-end', d: `M${end} ${box.top}V${box.top + box.height}` }));
}

/** Says which face is which, and what the hairline is, where there is room for it. */
function captions({ width, height }, hairline, factor) {
  const word = (x, y, dy, anchor, text) => svg('text', { class: 'caption', x, y, dy: `${dy}em`, 'text-anchor': anchor }, text);
  const isNarrow = width < LEAST_CAPTIONED_PX;
  const faces = [
    word(0, -8, 0, 'start', t('outerFace')),
    word(0, height, 1.3, 'start', t('innerFace')),
    word(0, height, 2.55, 'start', t(isNarrow ? 'drawn' : 'deviationDrawn', { factor })),
  ];
  if (isNarrow) {
    return faces;
  }
  return [
    ...faces,
    word(hairline, -8, 0, 'middle', t('target')),
    word(hairline - 7, height, 1.3, 'end', t('thinner')),
    word(hairline + 7, height, 1.3, 'start', t('thicker')),
  ];
}

/** The band itself; a merged group shows its roles in slices whose boundary the gauge cannot see. */
function body(prefix, layer, { top, height }, end) {
  const roles = layer.roles.length > 0 ? layer.roles : [''];
  const slice = height / roles.length;
  const slices = roles.map((role, i) => [
    svg('rect', { x: 1, y: top + i * slice, width: end - 1, height: slice, class: 'ply' }),
    svg('rect', { x: 1, y: top + i * slice, width: end - 1, height: slice, fill: hatchOf(prefix, role) }),
    i > 0 ? svg('path', { class: 'unseen', d: `M1 ${top + i * slice}H${end}` }) : null,
  ]);
  return [...slices, svg('rect', { class: 'outline', x: 1, y: top, width: end - 1, height })];
}

function difference({ top, height }, end, hairline) {
  const [from, to] = end < hairline ? [end, hairline] : [hairline, end];
  return svg('rect', { class: 'difference', x: from, y: top, width: to - from, height });
}

/** Two slanted strokes across the left face: this band is drawn taller than scale. */
function breakMark({ top, height }) {
  const middle = top + height / 2;
  const stroke = (y) => `M-1 ${y + 3} ${BREAK_WIDTH_PX} ${y - 3}`;
  return [
    svg('path', { class: 'break-gap', d: `${stroke(middle)}` }),
    svg('path', { class: 'break', d: `${stroke(middle - 2.5)}${stroke(middle + 2.5)}` }),
  ];
}

function offset(deviation, { bodyPx, factor, room }) {
  return Math.max(-bodyPx + 2, Math.min(room, deviation * bodyPx * factor));
}
