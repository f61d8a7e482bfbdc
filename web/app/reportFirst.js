/** What a manager reads in a minute: capable or not, what changed, three things to act on, what the giveaway cost. */
import { el } from './elements.js';
import { number } from './format.js';
import { actInWords, verdictInWords, verdictMark } from './reportWords.js';
import { room } from './text.js';

const t = await room('report');

export function reportFirst({ report, standing, acts, money }) {
  const { films } = report;
  const good = films.filter(({ verdict }) => verdict === 'CAPABLE').length;
  return el('section', { class: 'report-first' },
    el('p', { class: 'report-standing' }, standing.revision === 0 ? t('isDraft') : t('isIssued', { revision: standing.revision, digest: standing.digest.slice(0, 12) })),
    films.length === 0 ? el('p', { class: 'lead' }, t('noFilm')) : el('p', { class: 'lead' }, t('capableOf', { n: films.length, good })),
    films.length === 0 ? null : filmsTable(films),
    acts.length === 0 ? null : [el('h2', {}, t('toAct')), el('ol', { class: 'report-acts' }, acts.map(({ line, structure, act }) => el('li', {}, el('b', {}, t('filmOn', { structure, line })), ' ', actInWords(act))))],
    report.edition === 'CUSTOMER' ? null : [el('h2', {}, t('giveaway')), el('p', {}, money.length === 0 ? t('noMoney') : money.map(({ amount, currency, priceAsOf }) => t('moneyOf', { amount: number(amount, 0), currency, day: priceAsOf })).join(' '))],
    el('p', { class: 'soft' }, t('caution')));
}

function filmsTable(films) {
  return el('div', { class: 'table-frame' , tabindex: 0, role: 'region', 'aria-label': t('films') }, el('table', { class: 'report-table' },
    el('thead', {}, el('tr', {}, ['film', 'line', 'thisWeek', 'weekBeforeHead'].map((key) => el('th', { scope: 'col' }, t(key))))),
    el('tbody', {}, films.map((film) => el('tr', {}, el('th', { scope: 'row' }, el('a', { href: `#${anchorOf(film)}` }, film.structure)), el('td', {}, film.line),
      el('td', {}, verdictMark(film.verdict), ' ', verdictInWords(film.verdict)),
      el('td', {}, film.before === film.verdict ? t('asBefore') : verdictInWords(film.before)))))));
}

export const anchorOf = ({ line, structure }) => `film-${encodeURIComponent(`${line}-${structure}`)}`;
