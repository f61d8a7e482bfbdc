/** The samples as a table behind the charts, newest first; built only when somebody opens it. */
import { el } from './elements.js';
import { count, um } from './format.js';
import { moment } from './plantClock.js';
import { shortTest } from './words.js';
import { room } from './text.js';

const t = await room('layer');
const MOST_ROWS = 300;
const DECIMALS = 3;
const HEADS = ['taken', 'roll', 'sample', 'readings', 'mean', 'range', 'least', 'greatest', 'tests'].map((name) => t(`head.${name}`));

export function seriesTable() {
  const body = el('tbody', {});
  const note = el('caption', {});
  const table = el('table', {}, note, el('thead', {}, el('tr', {}, HEADS.map((head) => el('th', { scope: 'col' }, head)))), body);
  const frame = el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('asTable') }, table);
  const node = el('details', { class: 'series-table', on: { toggle: fill } }, el('summary', {}, t('asTable')), frame);
  let series = null;

  function fill() {
    if (!node.open || series === null) {
      return;
    }
    const { columns, samples } = series;
    const tests = testsByIndex(series.signals);
    const newestFirst = columns.takenAt.map((ms, i) => i).reverse().slice(0, MOST_ROWS);
    note.textContent = t('ofSamples', { shown: count(newestFirst.length), samples: count(samples) });
    body.replaceChildren(...newestFirst.map((i) => row(columns, i, tests.get(i) ?? [])));
  }

  function show(next) {
    series = next;
    fill();
  }
  return { node, show };
}

function row(c, i, tests) {
  const figures = [c.mean[i], c.range[i], c.least[i], c.greatest[i]].map((value) => um(value, DECIMALS));
  return el('tr', { data: { unusual: tests.length > 0 } },
    el('th', { scope: 'row' }, moment(c.takenAt[i])),
    [c.roll[i], c.sample[i], c.size[i], ...figures].map((text, at) => el('td', { class: at > 1 ? 'figure' : null }, text)),
    el('td', {}, tests.join(', ')));
}

function testsByIndex(signals) {
  const tests = new Map();
  for (const signal of signals) {
    const words = signal.chart === 'range' ? t('rangeTest', { test: shortTest(signal) }) : shortTest(signal);
    tests.set(signal.index, [...(tests.get(signal.index) ?? []), words]);
  }
  return tests;
}
