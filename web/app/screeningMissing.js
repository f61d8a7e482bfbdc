/** How many readings each lane missed, day by day: a table with what is much set in bold. Pure but for elements. */
import { el } from './elements.js';
import { number } from './format.js';
import { room } from './text.js';

const t = await room('screening');

/** A missing share above this asks for a look at probe, couplant and dirt; common practice, no source. */
const MUCH = 0.05;

export function screeningMissing(shares) {
  if (shares.length === 0) {
    return el('p', { class: 'soft' }, t('nothingCame'));
  }
  const days = [...new Set(shares.map(({ day }) => day))].reverse();
  const lanes = [...new Set(shares.map(({ lane }) => lane))].sort((a, b) => a - b);
  const at = new Map(shares.map((share) => [`${share.day} ${share.lane}`, share]));
  return el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('missing') },
    el('table', {},
      el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, t('day')), lanes.map((lane) => el('th', { scope: 'col', class: 'number' }, t('lane', { lane }))))),
      el('tbody', {}, days.map((day) => el('tr', {}, el('th', { scope: 'row' }, day), lanes.map((lane) => cell(at.get(`${day} ${lane}`))))))));
}

function cell(share) {
  if (!share || share.places === 0) {
    return el('td', { class: 'number' }, '');
  }
  const part = share.missing / share.places;
  const words = part === 0 ? '0' : t('percent', { percent: number(100 * part, 1) });
  return el('td', { class: 'number', title: t('missingOf', share) }, part > MUCH ? el('strong', {}, t('look', { share: words })) : words);
}
