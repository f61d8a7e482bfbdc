/** The chosen time as a ribbon for each layer over one axis of time, with what happened above them: in words on hover, focus and tap. */
import { layerAddress } from './boardRow.js';
import { el, setText, svg } from './elements.js';
import { eventInWords, eventMark } from './lineEventWords.js';
import { needOfLayer } from './need.js';
import { moment, timeOfDay } from './plantClock.js';
import { drawRibbon, spanOf } from './ribbon.js';
import { layerName } from './words.js';
import { room } from './text.js';
import { timeTicks } from './timeTicks.js';

const t = await room('line');
const RIBBON = { margin: 2, end: 9 };
const LEAST_APART_PX = 26;
const TICK_EVERY_PX = 110;

export function lineRibbons() {
  const events = el('div', { class: 'line-events', role: 'group', 'aria-label': t('events') });
  const said = el('p', { class: 'line-said', role: 'status' });
  const axis = svg('svg', { class: 'line-axis', 'aria-hidden': 'true' });
  const list = el('ol', { class: 'plain line-ribbons' });
  const node = el('div', { class: 'line-course' }, said, events, list, axis);
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
      events.replaceChildren();
      return;
    }
    const { line, layers, span } = shown;
    layers.forEach((layer, i) => {
      const strip = list.children[i].lastChild;
      const size = { width: strip.clientWidth, height: strip.clientHeight };
      drawRibbon(strip.firstChild, layer, span, size, needOfLayer(line.layers[i] ?? line.total, line));
      strip.firstChild.append(...shown.events.map((event) => hairline(xOf(event, span, size.width), size.height)));
    });
    const strip = list.firstChild.lastChild;
    const left = strip.getBoundingClientRect().left - node.getBoundingClientRect().left;
    drawAxis(axis, span, { left, width: strip.clientWidth });
    events.replaceChildren(...grouped(shown.events, span, strip.clientWidth).map((group) => flag(group, left, said)));
  }
  return { node, show, draw, extent: () => shown?.span ?? null };
}

/** A series as the ribbon wants it: its means, and the newest limits of its mean. */
function courseOf({ columns }) {
  const last = columns.meanLower.findLastIndex((lower) => lower !== null);
  const limits = last < 0 ? null : { lower: columns.meanLower[last], centre: columns.meanCentre[last], upper: columns.meanUpper[last] };
  return { recent: { takenAt: columns.takenAt, mean: columns.mean }, limits };
}

function xOf({ at }, span, width) {
  return RIBBON.margin + ((Date.parse(at) - span.from) / Math.max(1, span.to - span.from)) * (width - RIBBON.end - RIBBON.margin);
}

const hairline = (x, height) => (x < 0 ? null : svg('path', { class: 'event-line', d: `M${x.toFixed(1)} 0V${height}` })) ?? '';

/** Events that would lie on each other share one flag: [{x, events}]. */
function grouped(events, span, width) {
  const groups = [];
  for (const event of events) {
    const x = xOf(event, span, width);
    const before = groups.at(-1);
    if (x < 0 || x > width) {
      continue;
    }
    if (before && x - before.x < LEAST_APART_PX) {
      before.events.push(event);
    } else {
      groups.push({ x, events: [event] });
    }
  }
  return groups;
}

function flag({ x, events }, left, said) {
  const words = events.map(eventInWords).join(' \u00b7 ');
  const tell = () => setText(said, words);
  const loudest = events.find(({ kind }) => kind === 'alarm') ?? events[0];
  const node = el('button', { type: 'button', class: 'event-flag', title: words, 'aria-label': words, data: { kind: loudest.kind, n: events.length > 1 ? events.length : '' }, on: { click: tell, focus: tell, mouseenter: tell } }, eventMark(loudest));
  node.style.left = `${left + x}px`;
  return node;
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
