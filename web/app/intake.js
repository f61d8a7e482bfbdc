/** The intake: what files came, what became of every reading in them, and the way to bring one in. Stays live. */
import { getJson } from './api.js';
import { el } from './elements.js';
import { count } from './format.js';
import * as live from './live.js';
import { shape } from './marks.js';
import { momentOf } from './plantClock.js';
import { quarantine } from './quarantine.js';
import { throttled } from './refresh.js';
import { troubleLine } from './trouble.js';
import { uploadPlace } from './upload.js';

const LEAST_BETWEEN_MS = 2_000;
const SOURCES = { watch: 'watched folder', import: 'import command', upload: 'this page', demo: 'demo data', live: 'live gauge' };
const FIGURES = [
  ['rows', 'Rows'],
  ['readings', 'Readings'],
  ['missing', 'Missing'],
  ['quarantined', 'In quarantine'],
  ['new', 'New'],
  ['known', 'Known'],
  ['corrected', 'Corrected'],
];

export function mount(root) {
  const trouble = troubleLine();
  const place = el('div', { class: 'files' });
  root.replaceChildren(
    el('div', { class: 'intake-head' }, el('h1', {}, 'Intake'),
      el('p', { class: 'soft' }, 'Every file that came, and what became of every reading in it. Nothing is dropped silently.')),
    uploadPlace(() => refreshing.ask()), trouble.node, place);
  let open = null;
  let drawn = '';

  async function refresh() {
    try {
      const { files } = await getJson('/api/files');
      const now = JSON.stringify([files, open]);
      if (now !== drawn) {
        drawn = now;
        place.replaceChildren(files.length > 0 ? tableOf(files, open, choose) : nothing());
      }
      trouble.clear();
    } catch (error) {
      trouble.show(error, 'This list is not fresh.');
    }
    document.documentElement.dataset.ready = 'true';
  }

  async function choose(id) {
    open = open === id ? null : id;
    await refresh();
    place.querySelector(`[data-file="${id}"] button`)?.focus();
  }

  const refreshing = throttled(refresh, LEAST_BETWEEN_MS);
  const stops = [live.on('file', refreshing.ask), live.on('reload', refreshing.ask), refreshing.stop];
  refreshing.ask();
  return () => stops.forEach((stop) => stop());
}

function tableOf(files, open, choose) {
  const heads = [el('th', { scope: 'col' }, 'File'), ...FIGURES.map(([, word]) => el('th', { scope: 'col', class: 'figure' }, word))];
  const rows = files.flatMap((file) => [rowOf(file, open === file.id, choose), ...(open === file.id ? [opened(file)] : [])]);
  return el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': 'Files' },
    el('table', {}, el('thead', {}, el('tr', {}, heads)), el('tbody', {}, rows)));
}

function rowOf(file, isOpen, choose) {
  const figures = FIGURES.map(([key, word]) =>
    el('td', { class: 'figure', data: { figure: key, word, some: file[key] > 0 } }, key === 'quarantined' && file[key] > 0 ? shape('quarantine') : null, count(file[key])));
  return el('tr', { class: 'file', data: { file: file.id, open: isOpen } },
    el('th', { scope: 'row' },
      el('button', { type: 'button', class: 'file-name', 'aria-expanded': String(isOpen), on: { click: () => choose(file.id) } }, file.name),
      el('span', { class: 'soft' }, `${momentOf(file.receivedAt)}, ${SOURCES[file.source] ?? file.source}`)),
    figures);
}

function opened(file) {
  return el('tr', { class: 'opened' }, el('td', { colspan: FIGURES.length + 1 }, quarantine(file)));
}

function nothing() {
  return el('div', { class: 'nothing' },
    el('h2', {}, 'No file has come yet'),
    el('p', {}, 'Three ways to bring readings in:'),
    el('ol', {},
      el('li', {}, 'drop a CSV file in the field above,'),
      el('li', {}, 'let the gauge export into the folder that Filmward watches,'),
      el('li', {}, 'or import on the command line: ', el('code', {}, 'filmward import FILE --structures FILE'))),
    el('p', { class: 'soft' }, 'A file holds one reading a row (taken_at, line, structure, roll, sample, lane, layer, thickness_um) or one column a layer. Other headings are read through a mapping file; ', el('code', {}, 'filmward preview FILE'), ' proposes one.'));
}
