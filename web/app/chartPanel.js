/**
 * One chart for the life of its panel. Fixed axes, no animation, data given in columns already parsed;
 * `show` replaces data and axes in place. Needs the chart library as the global `Chart`.
 */
import { el } from './elements.js';
import { chartInk } from './chartInk.js';
import { onSchemeChange, paintOf } from './chartPaint.js';
import { fromUnit, inUnit, number } from './format.js';
import { movementInk } from './movementInk.js';
import { timeTicks } from './timeTicks.js';
import { valueTicks } from './valueTicks.js';

const AXIS_WIDTH_EM = 4.2;
const LABEL_WIDTH_EM = 0.62;
const HEADROOM_EM = 1.6;
const MOST_VALUE_TICKS = 5;
const TICK_EVERY_PX = 105;

/** Sent on the panel's node when it was drawn, also after it got another size. */
export const DRAWN = 'filmward-drawn';
const tellsDrawn = { id: 'filmward-drawn', afterDraw: ({ canvas }) => canvas.parentNode?.dispatchEvent(new Event(DRAWN)) };

/** `name`: 'xbar', 'average' or 'range', whose axis has the times. Gives {node, show(panel, axis), pixelOf(ms), indexAt(clientX), destroy}. */
export function chartPanel(name, title) {
  const canvas = el('canvas', { 'aria-hidden': 'true' });
  const node = el('div', { class: 'chart', data: { chart: name }, role: 'slider', tabindex: 0, 'aria-label': title }, canvas);
  let shown = null;
  const chart = new window.Chart(canvas, { type: 'line', data: { datasets: [] }, options: fixedOptions(), plugins: [chartInk, movementInk, tellsDrawn] });

  function show(panel, axis) {
    shown = { panel, axis };
    const paint = paintOf(node);
    const { data, options } = chart;
    const pxPerPoint = node.clientWidth / panel.points.length;
    data.datasets = datasets(panel, paint, pxPerPoint);
    chart.filmward = { panel, paint, isWide: pxPerPoint > 4, ringPx: paint.font.size * (pxPerPoint > 4 ? 0.49 : 0.35) };
    options.layout.padding = { top: panel.steps.length > 0 ? paint.font.size * HEADROOM_EM : 6, right: labelRoom(panel, paint) };
    options.scales = scales(panel, axis, paint, name === 'range');
    chart.update('none');
    node.dataset.points = panel.points.filter((point) => point.y !== null).length;
    node.dataset.signals = panel.rings.length;
    node.dataset.limits = panel.labels.map((label) => label.text).join(', ');
  }

  const stop = onSchemeChange(() => shown && show(shown.panel, shown.axis));
  return {
    node,
    show,
    areaOf: () => chart.chartArea,
    pixelOf: (ms) => chart.scales.x.getPixelForValue(ms),
    pixelOfY: (um) => chart.scales.y.getPixelForValue(um),
    timeAt: (clientX) => chart.scales.x.getValueForPixel(clientX - canvas.getBoundingClientRect().left),
    destroy: () => (stop(), chart.destroy()),
  };
}

function fixedOptions() {
  return {
    animation: false,
    parsing: false,
    normalized: true,
    responsive: true,
    maintainAspectRatio: false,
    events: [],
    layout: { padding: 0 },
    plugins: { legend: { display: false }, tooltip: { enabled: false } },
  };
}

function labelRoom({ labels }, { font }) {
  const longest = Math.max(0, ...labels.map(({ text }) => text.length));
  return 8 + longest * font.size * LABEL_WIDTH_EM;
}

function datasets(panel, paint, pxPerPoint) {
  const radius = pxPerPoint > 6 ? 2.5 : pxPerPoint > 3 ? 1.5 : 0;
  const { names } = panel;
  const limit = (end, width, dash) => ({ label: names[end], data: panel[end], stepped: 'middle', pointRadius: 0, borderColor: paint.ink, borderWidth: width, borderDash: dash });
  const dash = panel.trial ? [5, 4] : [];
  return [
    limit('lower', 1.25, dash),
    limit('centre', 0.75, [1, 3]),
    limit('upper', 1.25, dash),
    ...(panel.other ? [{ label: names.other, data: panel.other, borderColor: paint.hatch, borderWidth: 1.25, borderDash: [3, 2], pointRadius: 0, spanGaps: false }] : []),
    { label: names.points, data: panel.points, borderColor: paint.ink, backgroundColor: paint.ink, borderWidth: 1.5, pointRadius: radius, pointBorderWidth: 0, spanGaps: false },
  ];
}

function scales(panel, axis, paint, hasTimes) {
  const common = { type: 'linear', border: { color: paint.rule }, grid: { color: paint.rule, drawTicks: false, lineWidth: 0.5 } };
  const ticks = { color: paint.soft, font: paint.font, padding: 6, autoSkip: false, maxRotation: 0 };
  const values = valueTicks(inUnit(panel.y.min), inUnit(panel.y.max), MOST_VALUE_TICKS);
  const labels = new Map();
  return {
    x: {
      ...common,
      ...axis,
      grid: { ...common.grid, drawOnChartArea: true },
      ticks: { ...ticks, display: hasTimes, callback: (value) => labels.get(value) },
      afterBuildTicks: (scale) => {
        const made = timeTicks(axis.min, axis.max, Math.max(2, scale.chart.width / TICK_EVERY_PX));
        made.forEach((tick) => labels.set(tick.value, tick.label));
        scale.ticks = made.map(({ value }) => ({ value }));
      },
    },
    y: {
      ...common,
      ...panel.y,
      grid: { display: false },
      ticks: { ...ticks, callback: (value) => number(inUnit(value), values.decimals) },
      afterBuildTicks: (scale) => (scale.ticks = values.values.map((value) => ({ value: fromUnit(value) }))),
      afterFit: (scale) => (scale.width = paint.font.size * AXIS_WIDTH_EM),
    },
  };
}
