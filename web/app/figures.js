/** How good the alarms are: rates against the standards' targets, the most frequent ones, and what would have spared them. */
import { getJson } from './api.js';
import { el } from './elements.js';
import { figuresTable, prioritiesOf } from './figuresTable.js';
import { frequentOf } from './figuresSpared.js';
import { atWallTime, momentOf, synchronise, wallTime } from './plantClock.js';
import { troubleLine } from './trouble.js';
import { room } from './text.js';

const t = await room('figures');

const DAY_MS = 86_400_000;
const SPANS = ['1', '7', '30', '90', '365'].map((days) => [days, t(`span.${days}`)]);
const USUAL = '30';

export function mount(root, params) {
  const trouble = troubleLine();
  const body = el('div', {});
  const head = el('div', { class: 'figures-head' }, el('h1', {}, t('title')));
  const line = params.get('line') ?? '';
  root.replaceChildren(head, trouble.node, body);

  async function refresh() {
    try {
      const board = await getJson('/api/v1/board');
      synchronise(board.now, board.zone);
      const asked = { ...spanOf(params, Date.parse(board.now)), line };
      const told = await getJson('/api/v1/alarm-figures', asked);
      head.replaceChildren(el('h1', {}, t('title')), ...choices(params, told, line, board.lines.map((one) => one.line)));
      body.replaceChildren(...figuresOf(told, asked));
      trouble.clear();
    } catch (error) {
      trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }

  refresh();
  return () => {};
}

/** Without its end it is up to now. */
function spanOf(params, nowMs) {
  if (params.get('from') && params.get('to')) {
    return { from: params.get('from'), to: params.get('to') };
  }
  const days = Number(params.get('days') ?? USUAL);
  return { from: new Date(nowMs - (days > 0 && days <= 365 ? days : Number(USUAL)) * DAY_MS).toISOString(), to: null };
}

function choices(params, { from, to }, line, lines) {
  const own = params.get('from') !== null;
  const address = (query) => `/figures.html?${new URLSearchParams(query)}`;
  const kept = own ? { from: params.get('from'), to: params.get('to') } : { days: params.get('days') ?? USUAL };
  const spans = SPANS.map(([days, words]) =>
    el('a', { href: address({ days, line }), 'aria-current': !own && days === (params.get('days') ?? USUAL) ? 'page' : null }, words));
  const begins = el('input', { id: 'figures-from', type: 'datetime-local', value: wallTime(Date.parse(from)) });
  const ends = el('input', { id: 'figures-to', type: 'datetime-local', value: wallTime(Date.parse(to)) });
  const show = (event) => {
    event.preventDefault();
    const [a, b] = [begins, ends].map((input) => atWallTime(input.value));
    if (a < b) {
      location.assign(address({ from: new Date(a).toISOString(), to: new Date(b).toISOString(), line }));
    } else {
      begins.focus();
    }
  };
  return [
    el('nav', { class: 'ranges', 'aria-label': t('howFar') }, spans),
    lines.length > 1 ? el('nav', { class: 'ranges', 'aria-label': t('whichLine') },
      [['', t('allLines')], ...lines.map((name) => [name, name])].map(([name, words]) => el('a', { href: address({ ...kept, line: name }), 'aria-current': name === line ? 'page' : null }, words))) : '',
    el('details', { class: 'own-span' }, el('summary', {}, t('anotherTime')),
      el('form', { novalidate: true, on: { submit: show } }, el('div', {}, el('label', { for: 'figures-from' }, t('from')), begins), el('div', {}, el('label', { for: 'figures-to' }, t('to')), ends), el('button', {}, t('show')))),
  ];
}

function figuresOf(told, asked) {
  const { figures, days, linesPerOperator, historical, from, to } = told;
  const about = [
    t('announced', { n: figures.announced, from: momentOf(from), to: momentOf(to) }),
    historical > 0 ? t('historical', { n: historical }) : '',
    t('looksAfter', { lines: t('lines', { n: linesPerOperator }), positions: t('positions', { n: figures.positions }) })];
  return [
    el('p', { class: 'figures-about' }, about, el('a', { href: '/shifts.html' }, t('changeThat')), '.'),
    days < 30 ? el('p', { class: 'soft' }, t('needsDays')) : '',
    el('div', { class: 'figures-body' },
      el('section', {}, el('h2', {}, t('againstTargets')), figuresTable(told),
        el('p', { class: 'soft source' }, t('source'))),
      el('div', { class: 'figures-side' }, prioritiesOf(told), frequentOf(told, asked))),
  ];
}
