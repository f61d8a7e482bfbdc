/** Mean chart, moving average where it is chosen and range chart on one time axis, with the words of the sample under the cursor beside them. */
import { el, setText } from './elements.js';
import { chartPanel } from './chartPanel.js';
import { dragSpan } from './dragSpan.js';
import { layerLanes } from './layerLanes.js';
import { averagePanel, hasSpec, meanPanel, rangePanel, suitableScope, timeAxis } from './meanRangeChart.js';
import { momentNotes } from './momentNotes.js';
import { axisWith, movementInWords } from './movement.js';
import { pointReader } from './pointReader.js';
import { um, unit } from './format.js';
import { room } from './text.js';

const t = await room('layer');
const SCOPES = { process: t('scope.process'), product: t('scope.product') };

/**
 * `chosen`: `scope` and `average` as the address names them, or null for what suits the data; `choose(name, value)` is told of a tap,
 * `dragged({from, to})` of a span that was marked. Gives {node, reader, show(series, look), lay(other), extent, destroy}.
 */
export function layerCharts(chosen, { choose: told, dragged }) {
  const mean = chartPanel('xbar', t('meanChart'));
  const average = chartPanel('average', t('averageChart'));
  const range = chartPanel('range', t('rangeChart'));
  const panels = [mean, average, range];
  const reader = pointReader(panels);
  const lanes = layerLanes(mean);
  const movement = el('p', { class: 'movement' });
  const notes = momentNotes(mean, reader.current);
  panels.forEach((panel) => dragSpan(panel, dragged));
  const note = el('p', { class: 'chart-note' });
  const choice = el('div', { class: 'scopes', role: 'group', 'aria-label': t('whatShown') });
  const averages = el('button', { type: 'button', class: 'quiet', data: { action: 'average' }, on: { click: toggleAverage } }, t('averageButton'));
  const averagePart = el('div', {}, el('h2', {}, t('averageOf'), el('span', { class: 'unit' }, ` ${unit()}`)), average.node);
  const node = el('div', { class: 'charts' },
    el('div', { class: 'chart-title' }, el('h2', {}, t('meanOf'), el('span', { class: 'unit' }, ` ${unit()}`)), el('div', { class: 'chart-ways' }, averages, choice)),
    mean.node, notes.node, note, movement,
    averagePart,
    el('h2', {}, t('rangeOf'), el('span', { class: 'unit' }, ` ${unit()}`)),
    range.node,
    lanes.node);
  let named = chosen.scope;
  let series = null;
  let look = null;
  let other = null;

  function show(next, lookedAt) {
    series = next;
    look = lookedAt;
    notes.show(series);
    draw();
  }

  /** Lays another span under the means, or takes it away: {takenAt, mean}. */
  function lay(under) {
    other = under;
    draw();
  }

  function draw() {
    const now = named ?? suitableScope(series);
    const axis = axisWith(timeAxis(series), look?.movement);
    const averaged = isAverageShown() ? averagePanel(series) : null;
    averagePart.hidden = averaged === null;
    averages.hidden = series.limits.length === 0 || series.shown === 'exported';
    averages.setAttribute('aria-pressed', String(averaged !== null));
    if (averaged) {
      average.show(averaged, axis);
    }
    mean.show({ ...meanPanel(series, now, averaged !== null), movement: look?.movement ?? null, other }, axis);
    range.show(rangePanel(series), axis);
    reader.show(series);
    setText(movement, look ? movementInWords(look.movement, series.signals.length > 0) : '');
    lanes.node.hidden = look === null;
    if (look) {
      lanes.show(look.lanes);
    }
    setText(note, noteOf(series, now));
    choice.replaceChildren(...(hasSpec(series) ? buttons(now) : []));
  }

  /** Where nobody says at this screen, as the tests of the film are chosen. */
  const isAverageShown = () => (chosen.average === null ? series.averageIsChosen : chosen.average === 'shown');

  function toggleAverage() {
    chosen.average = isAverageShown() ? 'hidden' : 'shown';
    told('average', chosen.average);
    draw();
  }

  function buttons(now) {
    return Object.entries(SCOPES).map(([name, words]) =>
      el('button', { type: 'button', class: 'quiet', 'aria-pressed': String(name === now), data: { scope: name }, on: { click: () => choose(name) } }, words));
  }

  function choose(name) {
    named = name;
    told('scope', name);
    draw();
    choice.querySelector(`[data-scope="${name}"]`).focus();
  }

  const observer = new ResizeObserver(() => reader.redraw());
  observer.observe(node);
  const extent = () => {
    const times = series?.columns.takenAt ?? [];
    return times.length > 0 ? { from: times[0], to: times.at(-1) } : null;
  };
  const destroy = () => {
    observer.disconnect();
    [...panels, lanes, notes].forEach((one) => one.destroy());
  };
  return { node, reader: reader.node, show, lay, extent, destroy };
}

function noteOf({ spec }, scope) {
  if (scope === 'product' || (spec.lower === undefined && spec.upper === undefined)) {
    return '';
  }
  const ends = [spec.lower, spec.upper].filter((value) => value !== undefined).map((value) => um(value));
  return ends.length === 2 ? t('aboutProcess', { from: ends[0], to: ends[1] }) : t('aboutProcessOne', { end: ends[0] });
}
