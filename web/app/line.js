/** The page of one line: its film in section with what each layer is worth now, the last shift as ribbons, and what happened. */
import { getJson } from './api.js';
import { el } from './elements.js';
import { lineHappenings } from './lineHappenings.js';
import { lineHeading } from './lineHeading.js';
import { lineNow } from './lineNow.js';
import { lineRibbons } from './lineRibbons.js';
import * as live from './live.js';
import { synchronise } from './plantClock.js';
import { rangeNav } from './rangeNav.js';
import { throttled } from './refresh.js';
import { room } from './text.js';
import { spanOf } from './timeRange.js';
import { troubleLine } from './trouble.js';

const t = await room('line');
const LEAST_BETWEEN_MS = 400;
const ANYWAY_EVERY_MS = 20_000;

export function mount(root, params) {
  if (!['range', 'from', 'to'].some((name) => params.has(name))) {
    params.set('range', 'shift');
  }
  const heading = lineHeading();
  const trouble = troubleLine();
  const now = lineNow();
  const ranges = rangeNav(params, { extent: () => ribbons.extent(), moved: () => refreshing.ask() });
  const ribbons = lineRibbons(ranges.to);
  const happenings = lineHappenings();
  const body = el('div', { hidden: true }, now.node,
    el('section', { class: 'line-part' }, el('h2', {}, t('course')), ranges.node, ribbons.node),
    el('section', { class: 'line-part' }, el('h2', {}, t('happened')), happenings.node));
  root.replaceChildren(heading.node, trouble.node, body);

  async function refresh() {
    try {
      const [board, { alarms }] = await Promise.all([getJson('/api/v1/board'), getJson('/api/v1/alarms', { state: 'open' })]);
      synchronise(board.now, board.zone);
      const line = lineOf(board, alarms, params.get('line'));
      heading.show(line, board.lines.map((one) => one.line), params.get('line'));
      body.hidden = line === null;
      if (line !== null) {
        now.show(line);
        await showCourse(line);
      }
      trouble.clear();
    } catch (error) {
      trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }

  async function showCourse(line) {
    const span = spanOf(params, Date.parse(line.lastSample.takenAt));
    const asked = { line: line.line, structure: line.structure.code, ...span, pixels: Math.round(Math.min(innerWidth, 2000) / 2) };
    const of = ({ kind, position }) => getJson('/api/v1/series', { ...asked, kind, position: kind === 'total' ? 0 : position });
    const events = getJson(`/api/v1/lines/${encodeURIComponent(line.line)}/events`, { from: span.from ?? 0, to: span.to });
    const [told, ...series] = await Promise.all([events, ...[...line.layers, line.total].map(of)]);
    ribbons.show(line, series, told.events);
    happenings.show(told, ribbons.extent());
  }

  const refreshing = throttled(refresh, LEAST_BETWEEN_MS);
  const concerns = (event) => (event?.line === undefined || event.line === params.get('line')) && refreshing.ask();
  const observer = new ResizeObserver(() => (now.draw(), ribbons.draw()));
  observer.observe(root);
  const ticking = setInterval(heading.tick, 1_000);
  const anyway = setInterval(refreshing.ask, ANYWAY_EVERY_MS);
  const stops = [
    ...['sample', 'limits', 'alarm', 'line'].map((topic) => live.on(topic, concerns)),
    live.on('reload', refreshing.ask),
    refreshing.stop, ranges.stop, () => observer.disconnect(), () => clearInterval(ticking), () => clearInterval(anyway),
  ];
  refreshing.ask();
  return () => stops.forEach((stop) => stop());
}

/** The line as the board knows it, with its open alarms; null where there is none of that name. */
function lineOf(board, alarms, name) {
  const found = board.lines.find(({ line }) => line === name);
  return found ? { ...found, alarms: alarms.filter((alarm) => alarm.line === name) } : null;
}
