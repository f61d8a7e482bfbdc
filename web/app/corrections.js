/** What a file or a sample replaced: the old value, the new one, who, when and why. */
import { getJson } from './api.js';
import { el } from './elements.js';
import { number, um, unit } from './format.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('intake');
const HEADS = ['sample', 'layer', 'lane', 'was', 'is', 'who'];
const FIGURES = ['was', 'is'];

/** A part that fills itself with the readings that a file corrected. */
export function corrections(file) {
  const node = el('div', { class: 'corrections', data: { corrections: file.id } }, el('p', { class: 'soft' }, t('fetching')));
  fill(file, node);
  return node;
}

async function fill(file, node) {
  try {
    const found = await getJson(`/api/v1/files/${file.id}/corrections`);
    node.replaceChildren(
      el('h2', {}, t('figure.corrected')),
      el('p', {}, t('tookPlace')),
      el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('correctedReadings') },
        el('table', {}, el('thead', {}, el('tr', {}, HEADS.map((head) => el('th', { scope: 'col', class: FIGURES.includes(head) ? 'figure' : null }, t(`head.${head}`))))), el('tbody', {}, found.corrections.map(row)))),
      ...(found.more ? [el('p', { class: 'soft' }, t('moreCorrections'))] : []));
  } catch (error) {
    node.replaceChildren(el('p', {}, error.sentence ?? error.message));
  }
}

function row(correction) {
  return el('tr', {},
    el('th', { scope: 'row' }, t('sampleAt', correction)),
    el('td', {}, correction.layerName), el('td', { data: { word: t('word.lane') } }, correction.lane),
    el('td', { class: 'figure', data: { word: t('word.was') } }, value(correction, correction.oldUm)), el('td', { class: 'figure', data: { word: t('word.is') } }, value(correction, correction.newUm)),
    el('td', { class: 'reason-text' }, whoAndWhy(correction)));
}

/** A thickness, or where it was the temperature that was another one, degrees. */
function value({ unit: of }, figure) {
  return of === 'C' ? number(figure, 1) : um(figure, 3);
}

/** One correction as a sentence, for the sample under the cursor. */
export function correctionInWords(correction) {
  const { lane, layerName, oldUm, newUm, at } = correction;
  return t('correctionIs', { lane, layer: layerName, was: value(correction, oldUm), is: value(correction, newUm), unit: correction.unit === 'C' ? '°C' : unit(), who: whoAndWhy(correction), at: momentOf(at) });
}

function whoAndWhy({ by, why }) {
  return why ? t('byWhy', { by, why }) : by;
}
