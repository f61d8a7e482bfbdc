/** The readings of a file that could not be used, each with its place, value, reason and the line as it came. */
import { getJson } from './api.js';
import { el } from './elements.js';
import { count, plural } from './format.js';

const HEADS = ['Line', 'Column', 'Value', 'Reason', 'As it came'];

/** A part that fills itself with the quarantined rows of a file. */
export function quarantine(file) {
  const node = el('div', { class: 'quarantine', data: { quarantine: file.id } }, el('p', { class: 'soft' }, 'Being fetched\u2026'));
  fill(file, node);
  return node;
}

async function fill(file, node) {
  try {
    const { rows, more } = await getJson(`/api/files/${file.id}/quarantine`);
    node.replaceChildren(...(rows.length > 0 ? shown(rows, more) : [el('p', {}, 'Every row of this file could be used.')]));
  } catch (error) {
    node.replaceChildren(el('p', {}, error.sentence ?? error.message));
  }
}

function shown(rows, more) {
  const body = rows.map(({ line, column, value, reason, raw }) => el('tr', {},
    el('th', { scope: 'row' }, count(line)),
    el('td', {}, column || '\u2013'), el('td', { class: 'verbatim' }, value || '\u2013'), el('td', { class: 'reason-text' }, reason), el('td', { class: 'verbatim raw' }, raw)));
  return [
    el('p', {}, 'These were not used. Correct them at the source and bring the file in again; what is known already stays as it is.'),
    el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': 'Rows in quarantine' },
      el('table', {}, el('thead', {}, el('tr', {}, HEADS.map((head) => el('th', { scope: 'col' }, head)))), el('tbody', {}, body))),
    ...(more > 0 ? [el('p', { class: 'soft' }, `and ${plural(more, 'more row')} not shown here`)] : []),
  ];
}
