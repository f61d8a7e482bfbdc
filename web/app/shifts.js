/** When shifts begin, who takes them in turn, and how many lines one person looks after; set with a name and a reason. */
import { getJson, postJson } from './api.js';
import { el, setText } from './elements.js';
import { plural } from './format.js';
import { allow, signature } from './person.js';
import { day, momentOf, synchronise, timeOfDay } from './plantClock.js';
import { shiftRows, WEEK } from './shiftRows.js';
import { troubleLine } from './trouble.js';

const LONGEST = 500;

export function mount(root) {
  const trouble = troubleLine();
  const said = el('p', { class: 'shifts-said', role: 'status', tabindex: -1, hidden: true });
  const inForce = el('section', {});
  const rows = shiftRows();
  const lines = el('input', { id: 'lines-each', type: 'number', min: 1, max: 100, step: 1, inputmode: 'numeric' });
  const from = el('input', { id: 'holds-from', type: 'date' });
  const reason = el('textarea', { id: 'shift-reason', rows: 2, maxlength: LONGEST });
  const wanting = el('p', { class: 'said', role: 'status' });
  const form = el('form', { class: 'shift-form', novalidate: true, on: { submit } },
    el('h2', {}, 'Another calendar'),
    el('p', { class: 'soft' }, 'A shift goes on until the next one begins, and belongs to the day on which it begins. Where clocks change, the shift across the change has an hour more or less.'),
    rows.node,
    field('lines-each', 'Lines that one person looks after', lines),
    field('holds-from', 'From which day on', from),
    field('shift-reason', 'Reason', reason),
    signature('decide'),
    allow(el('button', { type: 'submit', class: 'decide', data: { action: 'set-shifts' } }, 'Let this calendar hold'), 'decide'), wanting);
  root.replaceChildren(el('div', { class: 'shifts-head' }, el('h1', {}, 'Shifts'), el('p', { class: 'soft' }, el('a', { href: '/handover.html' }, 'Handover'))), said, trouble.node, el('div', { class: 'shifts-body' }, inForce, form));

  async function refresh() {
    try {
      const told = await getJson('/api/v1/shifts');
      synchronise(told.now, told.zone);
      inForce.replaceChildren(...nowOf(told));
      rows.show(told.calendar.shifts);
      lines.value = told.calendar.linesPerOperator;
      from.value = told.earliest ?? told.today;
      trouble.clear();
    } catch (error) {
      trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }

  async function submit(event) {
    event.preventDefault();
    const body = { shifts: rows.read(), linesPerOperator: Math.trunc(Number(lines.value)), holdsFrom: from.value, reason: reason.value.trim() };
    if (body.reason === '') {
      setText(wanting, 'Write the reason: whoever wonders whose shift it was will ask.');
      return reason.focus();
    }
    setText(wanting, 'Being kept\u2026');
    try {
      const { version, holdsFrom } = await postJson('/api/v1/shifts', body);
      reason.value = '';
      setText(wanting, '');
      said.hidden = false;
      setText(said, `Version ${version} holds from ${holdsFrom} on.`);
      said.focus();
      refresh();
    } catch (error) {
      setText(wanting, `Not kept. ${error.sentence ?? error.message}`);
    }
  }

  refresh();
  return () => {};
}

const field = (id, words, input) => el('div', { class: 'shift-field' }, el('label', { for: id }, words), input);

function nowOf({ current, ahead, versions, zone }) {
  const hours = (one) => `${Number(one.hours.toFixed(1))} h`;
  return [
    el('h2', {}, 'In force'),
    el('p', { class: 'shift-now' }, el('strong', {}, current.name), ` until ${timeOfDay(Date.parse(current.to))}${current.crew ? `, crew ${current.crew}` : ''}`),
    el('p', { class: 'soft' }, `Times of ${zone}.`),
    el('div', { class: 'table-frame', role: 'region', 'aria-label': 'Shifts of the next two weeks', tabindex: 0 }, el('table', {},
      el('caption', {}, 'The next two weeks'),
      el('thead', {}, el('tr', {}, ['Day', 'Shift', 'From', 'Long', 'Crew'].map((words) => el('th', { scope: 'col' }, words)))),
      el('tbody', {}, ahead.map((one) => el('tr', {}, el('td', {}, day(Date.parse(`${one.day}T12:00:00Z`))),
        el('td', {}, el('a', { href: `/handover.html?${new URLSearchParams({ shift: one.shift })}` }, one.name)),
        el('td', {}, timeOfDay(Date.parse(one.from))), el('td', {}, hours(one)), el('td', {}, one.crew ?? '\u2013')))))),
    el('h2', {}, 'Decided'),
    versions.length === 0 ? el('p', { class: 'soft' }, 'Nobody has set a calendar yet: three shifts of eight hours hold, and two lines a person.')
      : el('ol', { class: 'plain' }, versions.map(versionOf)),
  ];
}

function versionOf({ version, holdsFrom, shifts, linesPerOperator, by, reason, at }) {
  const words = shifts.map(({ name, startsAt, days }) => `${name} ${startsAt}${days.length < 7 ? ` (${days.map((number) => WEEK[number - 1]).join(' ')})` : ''}`);
  return el('li', {}, el('strong', {}, `Version ${version}, from ${holdsFrom} on`), `: ${words.join(', ')}; ${plural(linesPerOperator, 'line')} a person. ${by}, ${momentOf(at)}: `, el('q', {}, reason));
}
