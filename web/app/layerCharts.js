/** Mean chart above range chart on one time axis, with the words of the sample under the cursor beside them. */
import { el, setText } from './elements.js';
import { chartPanel } from './chartPanel.js';
import { hasSpec, meanPanel, rangePanel, suitableScope, timeAxis } from './meanRangeChart.js';
import { pointReader } from './pointReader.js';
import { um } from './format.js';

const SCOPES = { process: 'Means and control limits', product: 'Single readings and specification' };

/** `scope`: as the address names it, or null for what suits the data; `chosen(name)` is told of a tap. */
export function layerCharts(scope, chosen) {
  const mean = chartPanel('xbar', 'Mean chart: step through the samples');
  const range = chartPanel('range', 'Range chart: step through the samples');
  const reader = pointReader([mean, range]);
  const note = el('p', { class: 'chart-note' });
  const choice = el('div', { class: 'scopes', role: 'group', 'aria-label': 'What the mean chart shows' });
  const node = el('div', { class: 'charts' },
    el('div', { class: 'chart-title' }, el('h2', {}, 'Mean of each sample', el('span', { class: 'unit' }, ' µm')), choice),
    mean.node, note,
    el('h2', {}, 'Range within each sample', el('span', { class: 'unit' }, ' µm')),
    range.node);
  let named = scope;
  let series = null;

  function show(next) {
    series = next;
    const now = named ?? suitableScope(series);
    const axis = timeAxis(series);
    mean.show(meanPanel(series, now), axis);
    range.show(rangePanel(series), axis);
    reader.show(series);
    setText(note, noteOf(series, now));
    choice.replaceChildren(...(hasSpec(series) ? buttons(now) : []));
  }

  function buttons(now) {
    return Object.entries(SCOPES).map(([name, words]) =>
      el('button', { type: 'button', class: 'quiet', 'aria-pressed': String(name === now), data: { scope: name }, on: { click: () => choose(name) } }, words));
  }

  function choose(name) {
    named = name;
    chosen(name);
    show(series);
    choice.querySelector(`[data-scope="${name}"]`).focus();
  }

  const observer = new ResizeObserver(() => reader.redraw());
  observer.observe(node);
  return { node, reader: reader.node, show, destroy: () => (observer.disconnect(), mean.destroy(), range.destroy()) };
}

function noteOf({ spec }, scope) {
  if (scope === 'product' || (spec.lower === undefined && spec.upper === undefined)) {
    return '';
  }
  const ends = [spec.lower, spec.upper].filter((value) => value !== undefined).map((value) => um(value));
  return `This view is about the process. The specification (${ends.join(' to ')} µm) is for single readings; tap to see them together.`;
}
