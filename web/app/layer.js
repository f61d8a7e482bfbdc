/** The page of one layer: head, the film as navigation, charts, figures, table. Stays live. */
import { getJson } from './api.js';
import { layerAddress } from './boardRow.js';
import { el } from './elements.js';
import { layerCharts } from './layerCharts.js';
import { layerFacts } from './layerFacts.js';
import { layerFilm } from './layerFilm.js';
import { layerHead } from './layerHead.js';
import * as live from './live.js';
import { synchronise } from './plantClock.js';
import { throttled } from './refresh.js';
import { seriesTable } from './seriesTable.js';
import { troubleLine } from './trouble.js';
import { RANGES, rangeOf, startOf } from './timeRange.js';

const LEAST_BETWEEN_MS = 2_000;
const KEYS = { ArrowLeft: 'prev', ArrowRight: 'next' };

export function mount(root, params) {
  const wanted = Object.fromEntries(['line', 'structure', 'kind', 'position'].map((name) => [name, params.get(name)]));
  const range = rangeOf(params);
  const addressOf = (line, layer) => `${layerAddress(line, layer)}${viewQuery(params)}`;
  const head = layerHead(addressOf);
  const film = layerFilm(addressOf);
  const ranges = el('nav', { class: 'ranges', 'aria-label': 'How far back' });
  const charts = layerCharts(params.get('scope'), (name) => {
    rewrite(params, 'scope', name);
    ranges.replaceChildren(...rangeLinks(params, range));
    refreshing.ask();
  });
  const table = seriesTable();
  const facts = el('aside', { class: 'facts-place', 'aria-label': 'Figures' });
  const trouble = troubleLine();
  ranges.replaceChildren(...rangeLinks(params, range));
  let series = null;
  const middle = el('div', { class: 'layer-charts' }, ranges, charts.node);
  const body = el('div', { class: 'layer-body', hidden: true }, film.node, middle, charts.reader, facts, table.node);
  root.replaceChildren(head.node, trouble.node, body);

  async function refresh() {
    try {
      const [board, { alarms }] = await Promise.all([getJson('/api/v1/board'), getJson('/api/v1/alarms', { state: 'open' })]);
      synchronise(board.now, board.zone);
      const view = viewOf(board, alarms, wanted);
      const from = startOf(range, view.newestMs);
      series = await getJson('/api/v1/series', { ...wanted, from, pixels: innerWidth, readings: params.get('readings') });
      show(view);
    } catch (error) {
      trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }

  function show(view) {
    const isEmpty = series.columns.takenAt.length === 0;
    trouble.say(isEmpty ? 'No samples of this layer yet.' : '');
    body.hidden = isEmpty;
    if (isEmpty) {
      return;
    }
    head.show(series, view);
    charts.show(series);
    table.show(series);
    facts.replaceChildren(layerFacts(series));
    if (view.line) {
      film.show(view.line, (layer) => layer === view.layer);
    }
  }

  const refreshing = throttled(refresh, LEAST_BETWEEN_MS);
  const concerns = (event) => event?.line === wanted.line && refreshing.ask();
  const observer = new ResizeObserver(film.draw);
  observer.observe(root);
  document.addEventListener('keydown', step);
  const stops = [
    ...['sample', 'limits', 'alarm'].map((topic) => live.on(topic, concerns)),
    live.on('reload', refreshing.ask),
    refreshing.stop,
    charts.destroy,
    () => observer.disconnect(),
    () => document.removeEventListener('keydown', step),
  ];
  refreshing.ask();
  return () => stops.forEach((stop) => stop());
}

/** What the board knows about the layer on show; a film the line no longer runs has no line here. */
function viewOf(board, alarms, { line: name, structure, kind, position }) {
  const found = board.lines.find((line) => line.line === name && line.structure.code === structure);
  if (!found) {
    return { line: null, layer: null, newestMs: null };
  }
  const line = { ...found, alarms: alarms.filter((alarm) => alarm.line === name) };
  const layer = kind === 'total' ? line.total : line.layers.find((one) => one.position === Number(position));
  return { line, layer, newestMs: Date.parse(line.lastSample.takenAt) };
}

function rangeLinks(params, range) {
  return RANGES.map(({ name, words }) => {
    const query = new URLSearchParams(params);
    query.set('range', name);
    return el('a', { href: `?${query}`, 'aria-current': name === range.name ? 'true' : null }, words);
  });
}

/** What of the address belongs to the view, not to the layer. */
function viewQuery(params) {
  const kept = ['range', 'scope', 'readings'].filter((name) => params.has(name)).map((name) => [name, params.get(name)]);
  return kept.length > 0 ? `&${new URLSearchParams(kept)}` : '';
}

function rewrite(params, name, value) {
  params.set(name, value);
  history.replaceState(null, '', `?${params}${location.hash}`);
}

/** Left and right go to the neighbouring layers, unless somebody types or reads a chart. */
function step(event) {
  const isFree = !event.target.closest('input, textarea, select, dialog, [role="slider"], [role="region"]');
  const link = isFree && !event.ctrlKey && !event.altKey && !event.metaKey && document.querySelector(`.steps [rel="${KEYS[event.key]}"]`);
  if (link) {
    link.click();
  }
}
