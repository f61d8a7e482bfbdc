/** The first rows of a file twice: as they stand in it, under what each column means, and as they are read. */
import { el } from './elements.js';
import { um, unit } from './format.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('intake');
const say = await sayings('intake');
const MEANINGS = ['taken_at', 'date', 'time', 'line', 'structure', 'roll', 'sample', 'lane', 'layer', 'thickness', 'temperature_c', 'ignored'];
const UNITS = { um: 'µm', mm: 'mm', mil: 'mil', in: 'in', cell: t('inEachCell'), '?': t('whichUnit') };
const PLACES = ['time', 'line', 'structure', 'roll', 'sample', 'lane', 'layer'];
const LAYERS_OFFERED = 12;

export function asItStands({ columns, rows }, answer) {
  const heads = columns.map((column) => el('th', { scope: 'col' }, el('span', { class: 'mapping-heading' }, column.name),
    meaning(column, columns, answer), column.unit ? unitChoice(column, answer) : null));
  const body = rows.map((row) => el('tr', {}, row.map((cell) => el('td', { class: 'verbatim' }, cell))));
  return side(t('asItStands'), el('table', {}, el('thead', {}, el('tr', {}, heads)), el('tbody', {}, body)));
}

function meaning({ name, meaning: now, reason }, columns, answer) {
  const layers = columns.map((column) => column.meaning).filter((word) => /^(layer|lane) ./.test(word) && word !== 'layer ?');
  const numbered = Array.from({ length: LAYERS_OFFERED }, (_, i) => `layer ${i + 1}`);
  const words = [...new Set([now, ...MEANINGS, ...layers, ...numbered])];
  return select(`column:${name}`, t('whatMeans', { name }), words.map((word) => [word, meaningInWords(word)]), now, say(reason), answer);
}

function unitChoice({ name, unit: now }, answer) {
  return select(`unit:${name}`, t('unitOf', { name }), Object.entries(UNITS), now, '', answer);
}

function select(key, label, options, now, title, answer) {
  const node = el('select', { 'aria-label': label, title, data: { answers: key } },
    options.map(([value, words]) => el('option', { value, selected: value === now }, words)));
  node.addEventListener('change', () => answer(key, node.value));
  return node;
}

export function asItIsRead({ read }) {
  if (!read) {
    return side(t('asItIsRead'), el('p', { class: 'soft' }, t('shownOnceAnswered')));
  }
  const rows = read.filter(({ readings, faults }) => readings.length + faults.length > 0);
  const body = rows.flatMap(({ readings, faults }, row) => [
    ...readings.map((r) => el('tr', {}, el('th', { scope: 'row' }, String(row + 1)),
      [r.takenAt, r.line, r.structure, r.roll, r.sample, String(r.lane), r.layer].map((cell) => el('td', {}, cell)),
      el('td', { class: 'figure' }, r.um === null ? t('notMeasured') : asExact(r.um)))),
    ...faults.map((fault) => el('tr', { data: { fault: true } }, el('th', { scope: 'row' }, String(row + 1)),
      el('td', { colspan: PLACES.length + 1, class: 'reason-text' }, t('notUsed', { fault: say(fault) })))),
  ]);
  const heads = [t('head.row'), ...PLACES.map((place) => t(`head.${place}`))].map((head) => el('th', { scope: 'col' }, head));
  return side(t('asItIsRead'), el('table', {},
    el('thead', {}, el('tr', {}, heads, el('th', { scope: 'col', class: 'figure' }, unit()))), el('tbody', {}, body)));
}

/** With as many decimals as the file gives, so that it can be compared. */
function asExact(thickness) {
  const decimals = String(Number(thickness.toPrecision(9))).split('.')[1]?.length ?? 0;
  return um(thickness, decimals);
}

/** The server's word for a meaning: one of a few, or a layer or lane by its name or number. */
function meaningInWords(word) {
  const [, kind, name] = /^(layer|lane) (.+)$/.exec(word) ?? [];
  return kind ? t(`named.${kind}`, { name }) : t.maybe(`meaning.${word}`) ?? word;
}

function side(title, content) {
  return el('div', { class: 'mapping-side' }, el('h3', {}, title),
    el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': title }, content));
}
