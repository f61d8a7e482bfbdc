/**
 * Capability of one film over thirteen weeks: for each layer and the total Ppk week by week with its lower confidence limit, the index that is
 * asked for as a line, and what this week's figures are worth. The figures are those of the weekly report.
 */
import { getJson } from './api.js';
import { el } from './elements.js';
import { length, number } from './format.js';
import { longWork } from './longWork.js';
import { nothingYet } from './nothingYet.js';
import { momentOf, synchronise } from './plantClock.js';
import { ppkDrawing } from './ppkDrawing.js';
import { boundsInWords, indexInWords, nameOf, verdictInWords, verdictMark } from './reportWords.js';
import { room } from './text.js';
import { troubleLine } from './trouble.js';

const t = await room('report');

export function mount(root, params) {
  const trouble = troubleLine();
  const head = el('div', { class: 'report-head capability-head' });
  const waiting = el('div', {});
  const body = el('div', { class: 'capability-grid' });
  root.replaceChildren(head, trouble.node, waiting, body);

  async function refresh() {
    try {
      const { films, now, zone } = await getJson('/api/v1/reports');
      synchronise(now, zone);
      const film = films.find(({ line, structure }) => line === params.get('line') && structure === params.get('structure')) ?? films[0];
      head.replaceChildren(el('h1', {}, t('capabilityTitle')), film ? chooser(films, film) : await nothingYet(t('noFilmYet')));
      if (film) {
        const asked = { line: film.line, structure: film.structure, week: params.get('week') ?? film.lastWeek };
        Object.entries(asked).forEach(([name, value]) => params.set(name, value));
        history.replaceState(null, '', `?${params}`);
        const { report } = await longWork(waiting, t('reading'), (one) => getJson('/api/v1/reports/week', asked, one));
        show(report, film);
      }
      trouble.clear();
    } catch (error) {
      trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }

  function show(report, { line, structure }) {
    const week = report.films[0];
    head.append(el('p', { class: 'lead' }, verdictMark(week.verdict), ' ', t('inWeekIs', { week: report.week, verdict: verdictInWords(week.verdict) })),
      el('p', {}, el('a', { class: 'button quiet', href: `/report.html?${new URLSearchParams({ week: report.week, line, structure })}` }, t('toReport'))),
      el('p', { class: 'soft' }, t('howToReadPpk')));
    body.replaceChildren(...week.characteristics.filter(({ kind }) => kind !== 'SHARE').map((one) => figure(one, report, { line, structure })));
  }

  function chooser(films, film) {
    const select = el('select', { id: 'capability-film', on: { change: () => go(films[Number(select.value)]) } }, films.map((one, i) => el('option', { value: i, selected: one === film }, t('filmOn', one))));
    return el('div', { class: 'report-choice' }, el('div', {}, el('label', { for: 'capability-film' }, t('film')), select));
  }

  function go({ line, structure }) {
    params.set('line', line);
    params.set('structure', structure);
    params.delete('week');
    history.pushState(null, '', `?${params}`);
    refresh();
  }
  const back = () => {
    new URLSearchParams(location.search).forEach((value, name) => params.set(name, value));
    refresh();
  };
  addEventListener('popstate', back);
  refresh();
  return () => removeEventListener('popstate', back);
}

function figure(one, { asked }, { line, structure }) {
  const { giveaway, individual } = one;
  const rows = one.trend.filter(({ ppk }) => ppk !== null);
  const address = `/layer.html?${new URLSearchParams({ line, structure, kind: one.kind.toLowerCase(), position: one.position, range: 'week' })}`;
  return el('section', { class: 'capability-one' },
    el('h2', {}, el('a', { href: address }, nameOf(one))),
    el('p', {}, individual.lower === null && individual.upper === null ? t('why.NO_SPECIFICATION') : indexInWords(one.index)),
    one.since === null ? null : el('p', { class: 'soft' }, t('sinceChange', { at: momentOf(one.since) })),
    ppkDrawing(one.trend, asked.index),
    giveaway === null ? null : el('p', { class: 'soft' }, giveaway.achievableUm === null ? t(one.index.kind === 'CAPABILITY' ? 'noRoom' : 'giveawayUnknown') : t('giveawayIs', { um: length(giveaway.achievableUm, 2) })),
    rows.length === 0 ? null : el('details', {}, el('summary', {}, t('asTable')), el('table', { class: 'report-table' },
      el('thead', {}, el('tr', {}, [t('week'), 'Ppk', t('atLeastHead'), t('spec'), t('steady')].map((words, i) => el('th', { scope: 'col', class: i > 0 && i < 4 ? 'figure' : null }, words)))),
      el('tbody', {}, rows.map(({ week, ppk, atLeast, stable, individual: by }) => el('tr', {}, el('th', { scope: 'row' }, week), [number(ppk, 2), number(atLeast, 2), by === null ? '\u2013' : boundsInWords(by)].map((words) => el('td', { class: 'figure' }, words)), el('td', {}, t(stable ? 'yes' : 'no'))))))));
}
