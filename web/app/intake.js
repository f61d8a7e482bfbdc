/** The intake: what files came, what became of every reading in them, and the way to bring one in. Stays live. */
import { getJson } from './api.js';
import { corrections } from './corrections.js';
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
const SOURCES = { watch: 'watched folder', import: 'import command', upload: 'this page', mended: 'mended rows', demo: 'demo data', live: 'live gauge' };
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
  let parts = null;
  let drawn = '';

  async function refresh() {
    try {
      const { files } = await getJson('/api/v1/files');
      const now = JSON.stringify([files, open]);
      if (now !== drawn && !isBeingEdited()) {
        drawn = now;
        draw(files);
      }
      trouble.clear();
    } catch (error) {
      trouble.show(error, 'This list is not fresh.');
    }
    document.documentElement.dataset.ready = 'true';
  }

  /** A node that stays keeps the focus. */
  function draw(files) {
    const focused = document.activeElement;
    place.replaceChildren(files.length > 0 ? tableOf(files, open, choose, openedOf) : nothing());
    if (place.contains(focused) && focused !== document.activeElement) {
      focused.focus();
    }
  }

  async function choose(id) {
    open = open === id ? null : id;
    parts = null;
    await refresh();
    place.querySelector(`[data-file="${id}"] button`)?.focus();
  }

  /** What is open stays the same node while other files come, so that nothing typed is lost. */
  function openedOf(file) {
    parts ??= opened(file, refreshing.ask);
    return parts;
  }

  const isBeingEdited = () => parts !== null && parts.contains(document.activeElement) && Boolean(document.activeElement.form);

  const refreshing = throttled(refresh, LEAST_BETWEEN_MS);
  place.addEventListener('focusout', (event) => event.target.form && refreshing.ask());
  const stops = [live.on('file', refreshing.ask), live.on('reload', refreshing.ask), refreshing.stop];
  refreshing.ask();
  return () => stops.forEach((stop) => stop());
}

function tableOf(files, open, choose, openedOf) {
  const heads = [el('th', { scope: 'col' }, 'File'), ...FIGURES.map(([, word]) => el('th', { scope: 'col', class: 'figure' }, word))];
  const rows = files.flatMap((file) => [rowOf(file, open === file.id, choose), ...(open === file.id ? [openedOf(file)] : [])]);
  return el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': 'Files' },
    el('table', {}, el('thead', {}, el('tr', {}, heads)), el('tbody', {}, rows)));
}

function rowOf(file, isOpen, choose) {
  const figures = FIGURES.map(([key, word]) =>
    el('td', { class: 'figure', data: { figure: key, word, some: file[key] > 0 } }, key === 'quarantined' ? heldFigure(file) : count(file[key])));
  return el('tr', { class: 'file', data: { file: file.id, open: isOpen } },
    el('th', { scope: 'row' },
      el('button', { type: 'button', class: 'file-name', 'aria-expanded': String(isOpen), on: { click: () => choose(file.id) } }, file.name),
      el('span', { class: 'soft' }, `${momentOf(file.receivedAt)}, ${SOURCES[file.source] ?? file.source}${senderOf(file)}`)),
    figures);
}

/** What is in quarantine is marked until all of it was mended. */
function heldFigure({ quarantined, mended }) {
  const mark = quarantined > mended ? shape('quarantine') : null;
  return [mark, count(quarantined), mended > 0 ? el('span', { class: 'soft' }, ` ${mended === quarantined ? 'all' : count(mended)} mended`) : null];
}

/** Whoever brought a file in by name; folders and demo data name themselves already. */
function senderOf({ source, by, why }) {
  const isPerson = by !== 'not named' && ['import', 'upload', 'mended'].includes(source);
  return isPerson ? `, ${by}${why && source !== 'mended' ? `: ${why}` : ''}` : '';
}

function opened(file, done) {
  return el('tr', { class: 'opened' }, el('td', { colspan: FIGURES.length + 1 }, file.corrected > 0 ? corrections(file) : null, quarantine(file, done)));
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
