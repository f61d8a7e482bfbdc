/**
 * The weekly report: a week as it is known now, or an issued one; its first page and its films on the screen, its forms as files, the
 * signature, and what was decided about reports. Everything shown stands in the address.
 */
import { getJson } from './api.js';
import { el } from './elements.js';
import { longWork } from './longWork.js';
import { synchronise } from './plantClock.js';
import { reportCompare } from './reportCompare.js';
import { reportFilm } from './reportFilm.js';
import { reportFirst } from './reportFirst.js';
import { reportHead } from './reportHead.js';
import { reportIssue } from './reportIssue.js';
import { reportSettings } from './reportSettings.js';
import { room } from './text.js';
import { troubleLine } from './trouble.js';

const t = await room('report');

export function mount(root, params) {
  const trouble = troubleLine();
  const head = el('div', {});
  const waiting = el('div', {});
  const first = el('div', {});
  const films = el('div', { class: 'report-films' });
  const end = el('div', { class: 'report-end' });
  root.replaceChildren(head, trouble.node, waiting, first, films, end);
  let asked = 0;

  async function refresh() {
    const mine = (asked += 1);
    trouble.clear();
    try {
      const list = await getJson('/api/v1/reports');
      synchronise(list.now, list.zone);
      const query = queryOf(params, list);
      nameWeek(query);
      head.replaceChildren(reportHead(query, list, go));
      const shown = await longWork(waiting, t('reading'), (watched) => getJson('/api/v1/reports/week', query, watched));
      if (mine === asked) {
        show(shown, query, list);
      }
    } catch (error) {
      if (mine === asked) {
        trouble.show(error);
      }
    }
    document.documentElement.dataset.ready = 'true';
  }

  function show(shown, query, list) {
    first.replaceChildren(reportFirst(shown));
    films.replaceChildren(...shown.report.films.map((film) => reportFilm(film, shown.report)));
    end.replaceChildren(reportCompare(query, list), reportIssue(shown, query, list, refresh), reportSettings(list.settings, list.films, refresh));
  }

  /** So that the address, sent to somebody, shows the same next week. */
  function nameWeek({ id, week }) {
    if (id === null && !params.has('week')) {
      params.set('week', week);
      history.replaceState(null, '', `?${params}`);
    }
  }

  /** Another week, film or edition. */
  function go(changes) {
    Object.entries(changes).forEach(([name, value]) => (value ? params.set(name, value) : params.delete(name)));
    history.pushState(null, '', `?${params}`);
    refresh();
  }

  const back = () => {
    [...params.keys()].forEach((name) => params.delete(name));
    new URLSearchParams(location.search).forEach((value, name) => params.set(name, value));
    refresh();
  };
  addEventListener('popstate', back);
  refresh();
  return () => removeEventListener('popstate', back);
}

function queryOf(params, { lastWeek }) {
  return { id: params.get('id'), week: params.get('week') ?? lastWeek, line: params.get('line'), structure: params.get('structure'), edition: params.get('edition') };
}
