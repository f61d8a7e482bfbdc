/** In the head of a page: what it shows as files. Tables as CSV or workbook, charts as PNG or data, drawings as SVG. */
import { postForFile } from './api.js';
import { el, setText } from './elements.js';
import { keepFile } from './keepFile.js';
import { chartData, csvOf, nameOf, standingAlone, tablesOf } from './pageTables.js';
import { room } from './text.js';

const t = await room('save');
const LEAST_DRAWING_PX = 60;

export function save() {
  const list = el('ul', { class: 'plain save-list' });
  const said = el('p', { role: 'status' });
  const dialog = el('dialog', { class: 'sheet', 'aria-labelledby': 'save-title' },
    el('h2', { id: 'save-title' }, t('title')), list, said, el('form', { method: 'dialog' }, el('button', { class: 'quiet' }, t('close'))));
  const open = () => {
    const main = document.getElementById('main');
    const rows = [...tablesOf(main).map(tableRow), ...chartsOf(main).map(chartRow), ...drawingsOf(main).map(drawingRow)];
    list.replaceChildren(...(rows.length > 0 ? rows : [el('li', {}, t('nothing'))]));
    setText(said, '');
    dialog.showModal();
  };
  const tell = (words) => setText(said, words);

  function tableRow(table) {
    return row(t('table', { name: table.name, n: table.rows.length }), [
      [t('csv'), () => keepFile(fileName(table.name, 'csv'), new Blob(['\ufeff', csvOf(table)], { type: 'text/csv' }))],
      [t('workbook'), async () => keepFile(fileName(table.name, 'xlsx'), await postForFile('/api/v1/tables/workbook', table))],
    ]);
  }

  function chartRow({ canvas, chart, name }) {
    return row(t('chart', { name }), [
      [t('png'), () => onGround(canvas).toBlob((blob) => keepFile(fileName(name, 'png'), blob))],
      ...(chart?.filmward ? [[t('data'), () => keepFile(fileName(name, 'csv'), new Blob(['\ufeff', csvOf(chartData(chart, t('time'), t('tests')))], { type: 'text/csv' }))]] : []),
    ]);
  }

  function drawingRow({ drawing, name }) {
    return row(t('drawing', { name }), [[t('svg'), () => keepFile(fileName(name, 'svg'), new Blob([standingAlone(drawing)], { type: 'image/svg+xml' }))]]);
  }

  function row(words, ways) {
    return el('li', {}, el('span', {}, words), el('span', { class: 'save-ways' }, ways.map(([label, act]) =>
      el('button', { type: 'button', class: 'quiet', 'aria-label': `${words}: ${label}`, on: { click: () => Promise.resolve(act()).then(() => tell(t('saved')), (error) => tell(error.sentence ?? error.message)) } }, label))));
  }

  const button = el('button', { type: 'button', class: 'quiet display-open', 'aria-haspopup': 'dialog', title: t('title'), 'aria-label': t('title'), data: { action: 'save' }, on: { click: open } }, el('span', { 'aria-hidden': 'true' }, '\u2913'));
  return el('div', {}, button, dialog);
}

function chartsOf(main) {
  return [...main.querySelectorAll('canvas:not([data-legend])')].filter((canvas) => canvas.offsetParent !== null && canvas.width > LEAST_DRAWING_PX)
    .map((canvas) => ({ canvas, chart: window.Chart?.getChart(canvas) }))
    .map((one) => ({ ...one, name: one.chart?.filmward?.panel.names.points ?? nameOf(one.canvas) }));
}

/** With what is behind the chart on the page, so that its ink can be read on any. */
function onGround(canvas) {
  const copy = el('canvas', { width: canvas.width, height: canvas.height });
  const drawing = copy.getContext('2d');
  drawing.fillStyle = getComputedStyle(document.body).backgroundColor;
  drawing.fillRect(0, 0, copy.width, copy.height);
  drawing.drawImage(canvas, 0, 0);
  return copy;
}

function drawingsOf(main) {
  return [...main.querySelectorAll('svg')].map((drawing) => ({ drawing, size: drawing.getBoundingClientRect() }))
    .filter(({ size }) => size.width > LEAST_DRAWING_PX && size.height > LEAST_DRAWING_PX).map(({ drawing }) => ({ drawing, name: nameOf(drawing) }));
}

function fileName(name, ending) {
  return `filmward-${name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '').slice(0, 40) || 'page'}.${ending}`;
}
