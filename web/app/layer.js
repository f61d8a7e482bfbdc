/** The page of one layer: head, the film as navigation, charts, figures, table. Stays live. */
import { getJson } from './api.js';
import { layerAddress } from './boardRow.js';
import { el } from './elements.js';
import { layerCharts } from './layerCharts.js';
import { layerCompare } from './layerCompare.js';
import { layerFacts } from './layerFacts.js';
import { layerFilm } from './layerFilm.js';
import { layerHead } from './layerHead.js';
import { layerSpread } from './layerSpread.js';
import * as live from './live.js';
import { leadOn } from './nothingYet.js';
import { synchronise } from './plantClock.js';
import { throttled } from './refresh.js';
import { seriesTable } from './seriesTable.js';
import { troubleLine } from './trouble.js';
import { rangeNav } from './rangeNav.js';
import { spanOf, writeSpan } from './timeRange.js';
import { room } from './text.js';

const t = await room('layer');
const LEAST_BETWEEN_MS = 400;
const KEYS = { ArrowLeft: 'prev', ArrowRight: 'next' };

export function mount(root, params) {
  const wanted = Object.fromEntries(['line', 'structure', 'kind', 'position'].map((name) => [name, params.get(name)]));
  if ([wanted.line, wanted.structure, wanted.kind].includes(null)) {
    root.replaceChildren(leadOn(t('whichLayer'), '/', t('toBoard')));
    document.documentElement.dataset.ready = 'true';
    return () => {};
  }
  const addressOf = (line, layer) => `${layerAddress(line, layer)}${viewQuery(params)}`;
  const head = layerHead(addressOf);
  const film = layerFilm(addressOf);
  const ranges = rangeNav(params, {
    extent: () => charts.extent(),
    moved: () => refresh(),
  });
  const charts = layerCharts({ scope: params.get('scope'), average: params.get('average') }, {
    choose: (name, value) => {
      params.set(name, value);
      writeSpan(params, null, 'replace');
      ranges.draw();
      refreshing.ask();
    },
    dragged: ranges.to,
  });
  const table = seriesTable();
  const spread = layerSpread();
  const compare = layerCompare(params, wanted, charts);
  const facts = el('aside', { 'aria-label': t('figures') });
  const trouble = troubleLine();
  let series = null;
  const middle = el('div', { class: 'layer-charts' }, ranges.node, charts.node, compare.node);
  const side = el('div', { class: 'facts-place' }, spread.node, facts);
  const body = el('div', { class: 'layer-body', hidden: true }, film.node, middle, charts.reader, side, table.node);
  root.replaceChildren(head.node, trouble.node, body);

  async function refresh() {
    try {
      const [board, { alarms }] = await Promise.all([getJson('/api/v1/board'), getJson('/api/v1/alarms', { state: 'open' })]);
      synchronise(board.now, board.zone);
      const view = viewOf(board, alarms, wanted);
      const asked = { ...wanted, ...spanOf(params, view.newestMs), pixels: innerWidth };
      const [next, look] = await Promise.all([
        getJson('/api/v1/series', { ...asked, readings: params.get('readings'), average: params.get('average') === 'shown' ? 'shown' : null }),
        params.get('readings') === 'exported' ? null : getJson('/api/v1/series/look', asked),
      ]);
      series = next;
      show(view, look, board);
    } catch (error) {
      trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }

  function show(view, look, board) {
    const isEmpty = series.columns.takenAt.length === 0;
    const isSpan = params.has('from') || params.has('to');
    trouble.say(isEmpty ? t(isSpan ? 'noneInTime' : 'noneYet') : '');
    body.hidden = isEmpty && !isSpan;
    if (isEmpty) {
      return;
    }
    head.show(series, view);
    charts.show(series, look);
    spread.show(look?.spread ?? null, series);
    compare.show(board);
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
    ranges.stop,
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

/** What of the address belongs to the view, not to the layer. */
function viewQuery(params) {
  const kept = ['range', 'from', 'to', 'scope', 'average', 'readings', 'compare'].filter((name) => params.has(name)).map((name) => [name, params.get(name)]);
  return kept.length > 0 ? `&${new URLSearchParams(kept)}` : '';
}

/** Left and right go to the neighbouring layers, unless somebody types or reads a chart. */
function step(event) {
  const isFree = !event.target.closest('input, textarea, select, dialog, [role="slider"], [role="region"]');
  const link = isFree && !event.ctrlKey && !event.altKey && !event.metaKey && !event.shiftKey && document.querySelector(`.steps [rel="${KEYS[event.key]}"]`);
  if (link) {
    link.click();
  }
}
