/** The intake: what files came, what became of every reading in them, and the way to bring one in. Stays live. */
import { getJson } from './api.js';
import { corrections } from './corrections.js';
import { el } from './elements.js';
import { describeFirst } from './firstSteps.js';
import { count } from './format.js';
import * as live from './live.js';
import { shape } from './marks.js';
import { momentOf } from './plantClock.js';
import { quarantine } from './quarantine.js';
import { throttled } from './refresh.js';
import { sayings } from './said.js';
import { troubleLine } from './trouble.js';
import { uploadPlace } from './upload.js';
import { room } from './text.js';

const t = await room('intake');
const say = await sayings('intake', 'refusals');
const LEAST_BETWEEN_MS = 2_000;
const COLUMNS = 'taken_at, line, structure, roll, sample, lane, layer, thickness_um';
const FIGURES = ['rows', 'readings', 'missing', 'quarantined', 'new', 'known', 'corrected'];

export function mount(root) {
  const trouble = troubleLine();
  const first = el('div', {});
  const place = el('div', { class: 'files' });
  root.replaceChildren(
    el('div', { class: 'intake-head' }, el('h1', {}, t('title')),
      el('p', { class: 'soft' }, t('lead'))),
    first, uploadPlace(() => refreshing.ask()), trouble.node, place);
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
      trouble.show(error, t('notFresh'));
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
  describeFirst().then((way) => way && first.replaceChildren(way));
  return () => stops.forEach((stop) => stop());
}

function tableOf(files, open, choose, openedOf) {
  const heads = [el('th', { scope: 'col' }, t('file')), ...FIGURES.map((key) => el('th', { scope: 'col', class: 'figure' }, t(`figure.${key}`)))];
  const rows = files.flatMap((file) => [rowOf(file, open === file.id, choose), ...(open === file.id ? [openedOf(file)] : [])]);
  return el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('files') },
    el('table', {}, el('thead', {}, el('tr', {}, heads)), el('tbody', {}, rows)));
}

function rowOf(file, isOpen, choose) {
  const figures = FIGURES.map((key) =>
    el('td', { class: 'figure', data: { figure: key, word: t(`figure.${key}`), some: file[key] > 0 } }, key === 'quarantined' ? heldFigure(file) : count(file[key])));
  return el('tr', { class: 'file', data: { file: file.id, open: isOpen } },
    el('th', { scope: 'row' },
      el('button', { type: 'button', class: 'file-name', 'aria-expanded': String(isOpen), on: { click: () => choose(file.id) } }, file.name),
      el('span', { class: 'soft' }, cameFrom(file)),
      file.refusal ? el('span', { class: 'refused' }, shape('quarantine'), ' ', t('refused', { why: say(file.refusal) })) : null),
    figures);
}

/** What is in quarantine is marked until all of it was mended. */
function heldFigure({ quarantined, mended }) {
  const mark = quarantined > mended ? shape('quarantine') : null;
  return [mark, count(quarantined), mended > 0 ? el('span', { class: 'soft' }, mended === quarantined ? t('allMended') : t('someMended', { n: mended })) : null];
}

/** When and from where, and whoever brought it in by name; folders and demo data name themselves already. */
function cameFrom({ receivedAt, source, by, why }) {
  const isPerson = by !== 'not named' && ['import', 'upload', 'mended'].includes(source);
  const came = { at: momentOf(receivedAt), source: t.maybe(`source.${source}`) ?? source, by, why };
  return t(!isPerson ? 'came' : why && source !== 'mended' ? 'cameByWhy' : 'cameBy', came);
}

function opened(file, done) {
  return el('tr', { class: 'opened' }, el('td', { colspan: FIGURES.length + 1 }, file.notes.map((note) => el('p', { class: 'soft' }, say(note))), file.corrected > 0 ? corrections(file) : null, file.refusal ? el('p', {}, t('refusedAll')) : quarantine(file, done)));
}

function nothing() {
  return el('div', { class: 'nothing' },
    el('h2', {}, t('noneYet')),
    el('p', {}, t('threeWays')),
    el('ol', {},
      el('li', {}, t('wayDrop')),
      el('li', {}, t('wayFolder')),
      el('li', {}, t.nodes('wayCommand', { command: el('code', {}, 'filmward import FILE --structures FILE') }))),
    el('p', { class: 'soft' }, t.nodes('whatAFileHolds', { columns: COLUMNS, command: el('code', {}, 'filmward preview FILE') })));
}
