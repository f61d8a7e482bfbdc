/** How good the alarms are: rates against the standards' targets, the most frequent ones, and what would have spared them. */
import { getJson } from './api.js';
import { el } from './elements.js';
import { figuresTable, prioritiesOf } from './figuresTable.js';
import { frequentOf } from './figuresSpared.js';
import { count, plural } from './format.js';
import { atWallTime, momentOf, synchronise, wallTime } from './plantClock.js';
import { troubleLine } from './trouble.js';

const DAY_MS = 86_400_000;
const SPANS = [['1', 'Last day'], ['7', '7 days'], ['30', '30 days'], ['90', '90 days'], ['365', 'A year']];
const USUAL = '30';

export function mount(root, params) {
  const trouble = troubleLine();
  const body = el('div', {});
  const head = el('div', { class: 'figures-head' }, el('h1', {}, 'How good the alarms are'));
  const line = params.get('line') ?? '';
  root.replaceChildren(head, trouble.node, body);

  async function refresh() {
    try {
      const board = await getJson('/api/v1/board');
      synchronise(board.now, board.zone);
      const asked = { ...spanOf(params, Date.parse(board.now)), line };
      const told = await getJson('/api/v1/alarm-figures', asked);
      head.replaceChildren(el('h1', {}, 'How good the alarms are'), ...choices(params, told, line, board.lines.map((one) => one.line)));
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
    el('nav', { class: 'ranges', 'aria-label': 'How far back' }, spans),
    lines.length > 1 ? el('nav', { class: 'ranges', 'aria-label': 'Which line' },
      [['', 'All lines'], ...lines.map((name) => [name, name])].map(([name, words]) => el('a', { href: address({ ...kept, line: name }), 'aria-current': name === line ? 'page' : null }, words))) : '',
    el('details', { class: 'own-span' }, el('summary', {}, 'Another time'),
      el('form', { novalidate: true, on: { submit: show } }, el('div', {}, el('label', { for: 'figures-from' }, 'From'), begins), el('div', {}, el('label', { for: 'figures-to' }, 'to'), ends), el('button', {}, 'Show'))),
  ];
}

function figuresOf(told, asked) {
  const { figures, days, linesPerOperator, historical, from, to } = told;
  const about = [
    `${plural(figures.announced, 'alarm')} announced from ${momentOf(from)} to ${momentOf(to)}.`,
    historical > 0 ? ` ${count(historical)} more came as old news, with nobody called; they are not counted.` : '',
    ` One person looks after ${plural(linesPerOperator, 'line')}, so this is ${plural(figures.positions, 'operator position')}. `];
  return [
    el('p', { class: 'figures-about' }, about, el('a', { href: '/shifts.html' }, 'Change that'), '.'),
    days < 30 ? el('p', { class: 'soft' }, 'The standards ask for 30 days and more before rates mean much.') : '',
    el('div', { class: 'figures-body' },
      el('section', {}, el('h2', {}, 'Against the targets'), figuresTable(told),
        el('p', { class: 'soft source' }, 'Targets of IEC 62682, ISA-18.2 and EEMUA 191, for one operator position, written down from memory; the shares of priorities follow published tables. Chattering by samples and fleeting as one sample: common practice, no source.')),
      el('div', { class: 'figures-side' }, prioritiesOf(told), frequentOf(told, asked))),
  ];
}
