/** What a file or a sample replaced: the old value, the new one, who, when and why. */
import { getJson } from './api.js';
import { el } from './elements.js';
import { um, unit } from './format.js';
import { momentOf } from './plantClock.js';

const HEADS = ['Sample', 'Layer', 'Lane', `Was ${unit()}`, `Is ${unit()}`, 'Who and why'];

/** A part that fills itself with the readings that a file corrected. */
export function corrections(file) {
  const node = el('div', { class: 'corrections', data: { corrections: file.id } }, el('p', { class: 'soft' }, 'Being fetched\u2026'));
  fill(file, node);
  return node;
}

async function fill(file, node) {
  try {
    const found = await getJson(`/api/v1/files/${file.id}/corrections`);
    node.replaceChildren(
      el('h2', {}, 'Corrected'),
      el('p', {}, 'These took the place of other values; the old ones are kept.'),
      el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': 'Corrected readings' },
        el('table', {}, el('thead', {}, el('tr', {}, HEADS.map((head) => el('th', { scope: 'col', class: head.endsWith(unit()) ? 'figure' : null }, head)))), el('tbody', {}, found.corrections.map(row)))),
      ...(found.more ? [el('p', { class: 'soft' }, 'and more that are not shown here')] : []));
  } catch (error) {
    node.replaceChildren(el('p', {}, error.sentence ?? error.message));
  }
}

function row(correction) {
  return el('tr', {},
    el('th', { scope: 'row' }, `${correction.line}, roll ${correction.roll}, sample ${correction.sample}`),
    el('td', {}, correction.layerName), el('td', { data: { word: 'lane ' } }, correction.lane),
    el('td', { class: 'figure', data: { word: 'was ' } }, um(correction.oldUm, 3)), el('td', { class: 'figure', data: { word: 'is ' } }, um(correction.newUm, 3)),
    el('td', { class: 'reason-text' }, whoAndWhy(correction)));
}

/** One correction as a sentence, for the sample under the cursor. */
export function correctionInWords(correction) {
  return `Corrected: lane ${correction.lane} of ${correction.layerName} was ${um(correction.oldUm, 3)}, is ${um(correction.newUm, 3)} ${unit()}; by ${whoAndWhy(correction)}, ${momentOf(correction.at)}.`;
}

function whoAndWhy({ by, why }) {
  return why ? `${by}: ${why}` : by;
}
