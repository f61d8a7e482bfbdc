/** Two charts of a layer's study: what each operator reads of each spot, and how far each is off. Needs the global `Chart`. */
import { el } from './elements.js';
import { onSchemeChange, paintOf } from './chartPaint.js';
import { fromUnit, inUnit, number, unit } from './format.js';
import { byOperator, byPart } from './studyFigures.js';
import { valueTicks } from './valueTicks.js';
import { room } from './text.js';

const t = await room('study');
const SHAPES = ['circle', 'triangle', 'rect', 'rectRot', 'star', 'cross', 'crossRot', 'dash'];
const MOST_VALUE_TICKS = 5;
const LONGEST_LABEL = 8;

/** Gives {node, show(study, layer), destroy}. */
export function studyCharts() {
  const parts = panel(t('chart.spots'));
  const people = panel(t('chart.off'));
  const key = el('p', { class: 'study-key soft' });
  const node = el('div', { class: 'study-charts' },
    el('div', {}, el('h3', {}, t('eachSpot'), el('span', { class: 'unit' }, ` ${unit()}`)), parts.node, key),
    el('div', {}, el('h3', {}, t('eachOperator'), el('span', { class: 'unit' }, ` ${unit()}`)), people.node));
  let shown = null;

  function show(study, layer) {
    shown = [study, layer];
    const paint = paintOf(node);
    const spots = byPart(study, layer);
    const off = byOperator(study, layer);
    key.replaceChildren(t('linesJoin', { operators: study.operators.map((name, i) => `${SIGNS[i % SIGNS.length]} ${name}`).join(', ') }));
    parts.draw(spotSets(spots, paint), spots.parts, spots, paint);
    people.draw(operatorSets(off, paint), off.operators.map(({ name }) => name), off, paint);
  }

  const stop = onSchemeChange(() => shown && show(...shown));
  return { node, show, destroy: () => (stop(), parts.destroy(), people.destroy()) };
}

const SIGNS = ['\u25cf', '\u25b2', '\u25a0', '\u25c6', '\u2736', '+', '\u00d7', '\u2013'];

function spotSets({ operators }, paint) {
  return operators.flatMap(({ means, readings }, i) => [
    { data: means.map((y, x) => ({ x, y })), pointStyle: SHAPES[i % SHAPES.length], pointRadius: 5, borderColor: paint.ink, backgroundColor: paint.ink, borderWidth: 1.25, borderDash: i % 2 === 0 ? [] : [5, 3], spanGaps: false },
    { data: readings, showLine: false, pointStyle: SHAPES[i % SHAPES.length], pointRadius: 2.2, borderColor: paint.soft, backgroundColor: 'transparent', borderWidth: 0.75 },
  ]);
}

function operatorSets({ operators }, paint) {
  const points = operators.flatMap(({ readings }, x) => readings.map((y, i) => ({ x: x + ((i % 9) - 4) * 0.045, y })));
  return [
    { data: [{ x: -0.5, y: 0 }, { x: operators.length - 0.5, y: 0 }], pointRadius: 0, borderColor: paint.rule, borderWidth: 1 },
    { data: points, showLine: false, pointRadius: 2.2, borderColor: paint.soft, backgroundColor: 'transparent', borderWidth: 0.75 },
    ...operators.map(({ mean }, x) => ({ data: [{ x: x - 0.3, y: mean }, { x: x + 0.3, y: mean }], pointRadius: 0, borderColor: paint.ink, borderWidth: 3 })),
  ];
}

function panel(title) {
  const canvas = el('canvas', { role: 'img', 'aria-label': title });
  const node = el('div', { class: 'study-chart' }, canvas);
  const chart = new window.Chart(canvas, { type: 'line', data: { datasets: [] }, options: {
    animation: false, parsing: false, normalized: true, responsive: true, maintainAspectRatio: false, events: [],
    plugins: { legend: { display: false }, tooltip: { enabled: false } } } });

  function draw(sets, names, { least, greatest }, paint) {
    chart.data.datasets = sets;
    chart.options.scales = { x: nameScale(names, paint), y: valueScale(least, greatest, paint) };
    chart.update('none');
  }
  return { node, draw, destroy: () => chart.destroy() };
}

function nameScale(names, paint) {
  const short = (name) => (name.length > LONGEST_LABEL ? `${name.slice(0, LONGEST_LABEL - 1)}\u2026` : name);
  return {
    type: 'linear', min: -0.5, max: names.length - 0.5, border: { color: paint.rule }, grid: { display: false },
    ticks: { color: paint.soft, font: paint.font, autoSkip: true, maxRotation: 60, stepSize: 1, callback: (at) => (Number.isInteger(at) ? short(names[at] ?? '') : '') },
    afterBuildTicks: (scale) => (scale.ticks = names.map((_, value) => ({ value }))),
  };
}

function valueScale(min, max, paint) {
  const { values, decimals } = valueTicks(inUnit(min), inUnit(max), MOST_VALUE_TICKS);
  return {
    type: 'linear', min, max, border: { color: paint.rule }, grid: { color: paint.rule, drawTicks: false, lineWidth: 0.5 },
    ticks: { color: paint.soft, font: paint.font, callback: (value) => number(inUnit(value), decimals) },
    afterBuildTicks: (scale) => (scale.ticks = values.map((value) => ({ value: fromUnit(value) }))),
  };
}
