/** The first rows of a file twice: as they stand in it, under what each column means, and as they are read. */
import { el } from './elements.js';

const MEANINGS = {
  taken_at: 'time of the sample', date: 'date', time: 'time of day', line: 'line', structure: 'structure', roll: 'roll', sample: 'sample',
  lane: 'lane', layer: 'layer (name or number)', thickness: 'thickness', ignored: 'not read',
};
const UNITS = { um: 'µm', mm: 'mm', mil: 'mil', in: 'in', cell: 'in each cell', '?': 'which unit?' };
const LAYERS_OFFERED = 12;

export function asItStands({ columns, rows }, answer) {
  const heads = columns.map((column) => el('th', { scope: 'col' }, el('span', { class: 'mapping-heading' }, column.name),
    meaning(column, columns, answer), column.unit ? unit(column, answer) : null));
  const body = rows.map((row) => el('tr', {}, row.map((cell) => el('td', { class: 'verbatim' }, cell))));
  return side('As it stands in the file', el('table', {}, el('thead', {}, el('tr', {}, heads)), el('tbody', {}, body)));
}

function meaning({ name, meaning: now, reason }, columns, answer) {
  const layers = columns.map((column) => column.meaning).filter((word) => /^(layer|lane) ./.test(word) && word !== 'layer ?');
  const numbered = Array.from({ length: LAYERS_OFFERED }, (_, i) => `layer ${i + 1}`);
  const words = [...new Set([now, ...Object.keys(MEANINGS), ...layers, ...numbered])];
  return select(`column:${name}`, `What ${name} means`, words.map((word) => [word, MEANINGS[word] ?? word]), now, reason, answer);
}

function unit({ name, unit: now }, answer) {
  return select(`unit:${name}`, `Unit of ${name}`, Object.entries(UNITS), now, '', answer);
}

function select(key, label, options, now, title, answer) {
  const node = el('select', { 'aria-label': label, title, data: { answers: key } },
    options.map(([value, words]) => el('option', { value, selected: value === now }, words)));
  node.addEventListener('change', () => answer(key, node.value));
  return node;
}

export function asItIsRead({ read }) {
  if (!read) {
    return side('As it is read', el('p', { class: 'soft' }, 'Shown here as soon as every question is answered.'));
  }
  const heads = ['Row', 'Time', 'Line', 'Structure', 'Roll', 'Sample', 'Lane', 'Layer', 'µm'];
  const rows = read.filter(({ readings, faults }) => readings.length + faults.length > 0);
  const body = rows.flatMap(({ readings, faults }, row) => [
    ...readings.map((r) => el('tr', {}, el('th', { scope: 'row' }, String(row + 1)),
      [r.takenAt, r.line, r.structure, r.roll, r.sample, String(r.lane), r.layer].map((cell) => el('td', {}, cell)),
      el('td', { class: 'figure' }, r.um === null ? 'not measured' : String(Number(r.um.toPrecision(9)))))),
    ...faults.map((fault) => el('tr', { data: { fault: true } }, el('th', { scope: 'row' }, String(row + 1)),
      el('td', { colspan: heads.length - 1, class: 'reason-text' }, `Not used: ${fault}`))),
  ]);
  return side('As it is read', el('table', {},
    el('thead', {}, el('tr', {}, heads.map((head) => el('th', { scope: 'col', class: head === 'µm' ? 'figure' : null }, head)))), el('tbody', {}, body)));
}

function side(title, content) {
  return el('div', { class: 'mapping-side' }, el('h3', {}, title),
    el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': title }, content));
}
