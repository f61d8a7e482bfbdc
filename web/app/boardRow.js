/** One layer of a line on the board: name, mean, thinnest lane, why it is marked, and its ribbon. */
import { el, setText, svg } from './elements.js';
import { decimalsFor, um, umAligned, unit } from './format.js';
import { drawnUm } from './filmScale.js';
import { mark, shape } from './marks.js';
import { alarmOf, needOfLayer, reasons } from './need.js';
import { drawRibbon } from './ribbon.js';
import { layerName, makeUp } from './words.js';
import { room } from './text.js';

const t = await room('board');
const COLUMN_DECIMALS = 2;
const UNMARKED = new Set(['calm', 'note']);

export function layerAddress(line, layer) {
  const query = { line: line.line, structure: line.structure.code, kind: layer.kind, position: layer.position };
  return `/layer.html?${new URLSearchParams(query)}`;
}

export function boardRow(line, layer) {
  const name = el('span', { class: 'layer-name' });
  const need = el('span', { class: 'layer-need' });
  const why = el('span', { class: 'layer-why' });
  const mean = el('span', { class: 'layer-mean' });
  const lane = el('span', { class: 'layer-lane' });
  const ribbon = svg('svg', { class: 'ribbon', 'aria-hidden': 'true' });
  const strip = el('span', { class: 'layer-ribbon' }, ribbon);
  const link = el('a', { href: layerAddress(line, layer) }, name, need, why, mean, lane, strip);
  const node = el('li', { class: `layer layer-${layer.kind}`, data: { layer: layer.name, kind: layer.kind } }, link);
  let shown = layer;

  function update(of, now) {
    shown = { layer: now, need: needOfLayer(now, of) };
    const by = alarmOf(now, of)?.acknowledged?.by;
    node.dataset.state = now.state;
    node.dataset.need = shown.need;
    node.dataset.outOfSpec = now.outOfSpec;
    setText(name, layerName(now));
    need.replaceChildren(...(UNMARKED.has(shown.need) ? [] : [mark(shown.need)]));
    node.dataset.taken = by !== undefined;
    why.replaceChildren(...whyOf(now, of, by));
    mean.replaceChildren(...meanOf(now));
    setText(lane, laneOf(now));
  }

  function drawStrip(span) {
    const size = { width: strip.clientWidth, height: strip.clientHeight };
    if (size.width > 0 && size.height > 0) {
      drawRibbon(ribbon, shown.layer, span, size, shown.need);
    }
  }
  update(line, layer);
  return { node, update, drawStrip, need: () => shown.need };
}

function whyOf(layer, line, by) {
  const said = reasons(layer, line).map((reason) =>
    el('span', { class: `reason reason-${reason.mark}` }, shape(reason.mark), el('span', {}, reason.words)));
  if (by) {
    said.push(el('span', { class: 'taken' }, t('takenBy', { by })));
  }
  return said.length > 0 ? said : [el('span', { class: 'make-up' }, makeUp(layer))];
}

function meanOf(layer) {
  const value = umAligned(layer.mean, decimalsFor(drawnUm(layer)), COLUMN_DECIMALS);
  return [el('b', {}, value), el('span', { class: 'unit' }, ` ${unit()}`)];
}

function laneOf({ thinnest, size }) {
  if (!thinnest) {
    return size === 0 ? t('notMeasured') : '';
  }
  return t('thinnest', { um: um(thinnest.um), lane: thinnest.lane });
}
