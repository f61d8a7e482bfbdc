/** The chosen time as a ribbon for each layer over one axis of time, with what happened above them. */
import { layerAddress } from './boardRow.js';
import { dragSpan } from './dragSpan.js';
import { el, setText, svg } from './elements.js';
import { lineMarks } from './lineMarks.js';
import { needOfLayer } from './need.js';
import { moment, timeOfDay } from './plantClock.js';
import { drawRibbon, spanOf } from './ribbon.js';
import { layerName } from './words.js';
import { room } from './text.js';
import { timeTicks } from './timeTicks.js';

const t = await room('line');
const RIBBON = { margin: 2, end: 9 };
const TICK_EVERY_PX = 110;

/** `dragged({from, to})` is told of a span that was marked across the ribbons. */
export function lineRibbons(dragged) {
  const marks = lineMarks();
  const axis = svg('svg', { class: 'line-axis', 'aria-hidden': 'true' });
  const list = el('ol', { class: 'plain line-ribbons' });
  const node = el('div', { class: 'line-course' }, marks.said, marks.node, list, axis);
  let shown = null;

  function show(line, series, told) {
    const layers = [...line.layers, line.total].map((layer, i) => ({ ...layer, ...courseOf(series[i]) }));
    shown = { line, layers, events: told, span: spanOf(layers) };
    if (list.children.length !== layers.length) {
      list.replaceChildren(...layers.map(() => el('li', {}, el('a', {}), el('span', { class: 'layer-ribbon' }, svg('svg', { class: 'ribbon', role: 'img' })))));
    }
    layers.forEach((layer, i) => {
      const link = list.children[i].firstChild;
      link.href = layerAddress(line, layer);
      setText(link, layerName(layer));
      list.children[i].lastChild.firstChild.setAttribute('aria-label', t('ribbonOf', { name: layerName(layer), n: layer.recent.takenAt.length }));
    });
    draw();
  }

  function draw() {
    if (shown?.span === null || shown === null || list.clientWidth === 0) {
      marks.draw([], 0, 0);
      return;
    }
    const { line, layers, span } = shown;
    layers.forEach((layer, i) => {
      const strip = list.children[i].lastChild;
      const size = { width: strip.clientWidth, height: strip.clientHeight };
      drawRibbon(strip.firstChild, layer, span, size, needOfLayer(line.layers[i] ?? line.total, line));
      strip.firstChild.append(hairlines(placesOf(shown.events, span, size.width), size.height));
    });
    const strip = list.firstChild.lastChild;
    const left = strip.getBoundingClientRect().left - node.getBoundingClientRect().left;
    drawAxis(axis, span, { left, width: strip.clientWidth });
    marks.draw(placesOf(shown.events, span, strip.clientWidth), left, strip.clientWidth);
  }
  const stripOf = () => list.firstChild.lastChild.getBoundingClientRect();
  dragSpan({
    node,
    areaOf: () => {
      const [whole, all, strip] = [node, list, list.firstChild.lastChild].map((one) => one.getBoundingClientRect());
      return { left: strip.left - whole.left, right: strip.right - whole.left, top: all.top - whole.top, bottom: all.bottom - whole.top };
    },
    timeAt: (clientX) => timeAt(shown.span, clientX - stripOf().left, stripOf().width),
  }, dragged);
  return { node, show, draw, extent: () => shown?.span ?? null };
}

/** The moment at a place on a strip that is so wide, within the span. */
function timeAt({ from, to }, x, width) {
  const wide = width - RIBBON.end - RIBBON.margin;
  return from + Math.max(0, Math.min(1, (x - RIBBON.margin) / wide)) * (to - from);
}

/** A series as the ribbon wants it: its means, and the newest limits of its mean. */
function courseOf({ columns }) {
  const last = columns.meanLower.findLastIndex((lower) => lower !== null);
  const limits = last < 0 ? null : { lower: columns.meanLower[last], centre: columns.meanCentre[last], upper: columns.meanUpper[last] };
  return { recent: { takenAt: columns.takenAt, mean: columns.mean }, limits };
}

/** Where events lie on a strip that is so wide; without those outside the time of the samples. */
function placesOf(events, span, width) {
  const wide = width - RIBBON.end - RIBBON.margin;
  return events
    .map((event) => ({ event, x: RIBBON.margin + ((Date.parse(event.at) - span.from) / Math.max(1, span.to - span.from)) * wide }))
    .filter(({ x }) => x >= 0 && x <= width);
}

/** All of them as one path, so that the page does not grow with what happens. */
function hairlines(places, height) {
  const across = new Set(places.map(({ x }) => Math.round(x)));
  return svg('path', { class: 'event-line', d: [...across].map((x) => `M${x}.5 0V${height}`).join('') });
}

function drawAxis(root, span, { left, width }) {
  const wide = width - RIBBON.end - RIBBON.margin;
  const x = (ms) => left + RIBBON.margin + ((ms - span.from) / Math.max(1, span.to - span.from)) * wide;
  const ticks = timeTicks(span.from, span.to, Math.max(2, Math.floor(wide / TICK_EVERY_PX)));
  root.replaceChildren(...(ticks.length > 0 ? ticks : [span.from, span.to]).map((tick) => {
    const ms = tick.value ?? tick;
    return svg('text', { x: x(ms), y: 14, 'text-anchor': 'middle' }, tick.label ?? (ticks.length > 0 ? timeOfDay(ms) : moment(ms)));
  }));
}
