/** Two weeks, lines or structures beside each other, and whether their Ppk differ more than chance makes. */
import { getJson } from './api.js';
import { el } from './elements.js';
import { number, um, unit } from './format.js';
import { longWork } from './longWork.js';
import { weekBeside } from './reportHead.js';
import { nameOf, verdictInWords } from './reportWords.js';
import { room } from './text.js';
import { troubleLine } from './trouble.js';

const t = await room('report');

export function reportCompare(query, { films }) {
  if (films.length === 0) {
    return el('div', {});
  }
  const chosen = films.findIndex(({ line, structure }) => line === query.line && structure === query.structure);
  const first = filmSelect('compare-first', films, Math.max(0, chosen));
  const second = filmSelect('compare-second', films, Math.max(0, chosen));
  const week = el('input', { id: 'compare-week', value: weekBeside(query.week, -1), size: 8, maxlength: 8, autocomplete: 'off' });
  const result = el('div', { 'aria-live': 'polite' });
  const trouble = troubleLine();
  return el('details', { class: 'report-compare' }, el('summary', {}, t('compare')),
    el('form', { class: 'report-choice', novalidate: true, on: { submit } },
      el('div', {}, el('label', { for: 'compare-first' }, t('inWeek', { week: query.week })), first),
      el('div', {}, el('label', { for: 'compare-second' }, t('with')), second),
      el('div', {}, el('label', { for: 'compare-week' }, t('otherWeek')), week),
      el('button', { type: 'submit', class: 'quiet' }, t('compareNow'))), trouble.node, result);

  async function submit(event) {
    event.preventDefault();
    const [one, other] = [films[Number(first.value)], films[Number(second.value)]];
    try {
      const asked = { week: query.week, line: one.line, structure: one.structure, otherWeek: week.value.trim(), otherLine: other.line, otherStructure: other.structure };
      const answer = await longWork(result, t('reading'), (waiting) => getJson('/api/v1/reports/comparison', asked, waiting));
      trouble.clear();
      result.replaceChildren(table(answer));
    } catch (error) {
      trouble.show(error);
    }
  }
}

function filmSelect(id, films, at) {
  return el('select', { id }, films.map(({ line, structure }, i) => el('option', { value: i, selected: i === at }, t('filmOn', { structure, line }))));
}

function table({ pairs, firstVerdict, secondVerdict }) {
  const heads = [t('layer'), `${t('mean')} ${unit()}`, `${t('mean')} ${unit()}`, 'Ppk', 'Ppk', t('difference')];
  return el('div', {}, el('p', {}, t('verdicts', { first: verdictInWords(firstVerdict), second: verdictInWords(secondVerdict) })),
    el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('compare') }, el('table', { class: 'report-table' },
      el('thead', {}, el('tr', {}, heads.map((words, i) => el('th', { scope: 'col', class: i > 0 && i < 5 ? 'figure' : null }, words)))),
      el('tbody', {}, pairs.filter(({ first }) => first.kind !== 'SHARE').map(({ first, second, z, differs }) => el('tr', {},
        el('th', { scope: 'row' }, first.name === second.name ? nameOf(first) : `${nameOf(first)} / ${nameOf(second)}`),
        [um(first.mean, 2), um(second.mean, 2), number(first.index.ppk, 2), number(second.index.ppk, 2)].map((words) => el('td', { class: 'figure' }, words)),
        el('td', {}, z === null ? t('notComparable') : differs ? t('differs') : t('byChance'))))))));
}
