/**
 * A structure as it is described: layers to scale, outer face on top, thin ones raised and broken, each beside its name and target.
 * What the gauge reports as one has a dotted boundary. Layers without a target are drawn as thick as the mean of the others, dashed.
 */
import { el, svg } from './elements.js';
import { bandHeights } from './filmScale.js';
import { hatchings, hatchOf } from './hatch.js';
import { exactLength } from './structureNumbers.js';
import { roleWord } from './structureWords.js';
import { room } from './text.js';

const t = await room('structures');
const LEAST_REM = 2.9;
const USUAL_REM = 4.6;
let drawings = 0;

export function structureDrawing() {
  const prefix = `structure${(drawings += 1)}`;
  const drawing = svg('svg', { class: 'film', 'aria-hidden': 'true' });
  const names = el('ol', { class: 'plain' });
  const faces = ['outerFace', 'innerFace'].map((key) => el('p', { class: 'soft' }, t(key)));
  const stage = el('div', { class: 'structure-stage' }, drawing, names);
  const node = el('figure', { class: 'structure-drawing' }, faces[0], stage, faces[1]);
  let layers = [];

  function show(structure) {
    layers = structure.layers;
    draw();
  }

  function draw() {
    const { width } = drawing.getBoundingClientRect();
    if (layers.length === 0 || width === 0) {
      return;
    }
    const rem = parseFloat(getComputedStyle(document.documentElement).fontSize);
    const height = layers.length * USUAL_REM * rem;
    const bands = bandHeights(thicknesses(layers), height, LEAST_REM * rem);
    drawing.setAttribute('height', height + 2);
    drawing.replaceChildren(hatchings(prefix), ...layers.map((layer, i) => band(prefix, layer, bands[i], width)));
    names.replaceChildren(...layers.map((layer, i) => nameOf(layer, i, bands[i])));
  }

  const sized = new ResizeObserver(draw);
  sized.observe(drawing);
  return { node, show, draw };
}

function thicknesses(layers) {
  const given = layers.map(({ spec }) => spec?.target).filter((um) => um > 0);
  const mean = given.length > 0 ? given.reduce((sum, um) => sum + um, 0) / given.length : 1;
  return layers.map(({ spec }) => (spec?.target > 0 ? spec.target : mean));
}

function band(prefix, { role, spec, joined }, { top, height, broken }, width) {
  const box = { x: 1, y: top + 1, width: width - 2, height };
  const slant = (y) => `M-2 ${y + 3} 8 ${y - 3}`;
  const middle = top + 1 + height / 2;
  return svg('g', { class: 'band', 'data-need': spec?.target > 0 ? null : 'missing' },
    svg('rect', { ...box, class: 'ply' }), svg('rect', { ...box, class: 'outline' }),
    svg('rect', { ...box, fill: hatchOf(prefix, role) }),
    joined ? ['structure-joint', 'unseen'].map((kind) => svg('path', { class: kind, d: `M2 ${top + 1}H${width - 2}` })) : null,
    broken ? [svg('path', { class: 'break-gap', d: slant(middle) }), svg('path', { class: 'break', d: `${slant(middle - 2.5)}${slant(middle + 2.5)}` })] : null);
}

function nameOf({ name, role, spec }, i, { top, height }) {
  const item = el('li', {}, el('b', {}, `${i + 1} ${name || t('nameless')}`),
    el('span', { class: 'soft' }, spec?.target > 0 ? exactLength(spec.target) : t('noTarget'), `, ${roleWord(role)}`));
  item.style.top = `${top + height / 2}px`;
  return item;
}
