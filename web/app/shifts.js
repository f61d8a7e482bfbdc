/** When shifts begin, who takes them in turn, and how many lines one person looks after; set with a name and a reason. */
import { getJson, postJson } from './api.js';
import { el, setText } from './elements.js';
import { number } from './format.js';
import { allow, signature } from './person.js';
import { day, momentOf, synchronise, timeOfDay } from './plantClock.js';
import { shiftRows, WEEK } from './shiftRows.js';
import { troubleLine } from './trouble.js';
import { room } from './text.js';

const t = await room('shifts');
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
    el('h2', {}, t('another')),
    el('p', { class: 'soft' }, t('lead')),
    rows.node,
    field('lines-each', t('linesEach'), lines),
    field('holds-from', t('fromDay'), from),
    field('shift-reason', t('reason'), reason),
    signature('decide'),
    allow(el('button', { type: 'submit', class: 'decide', data: { action: 'set-shifts' } }, t('letHold')), 'decide'), wanting);
  root.replaceChildren(el('div', { class: 'shifts-head' }, el('h1', {}, t('shifts')), el('p', { class: 'soft' }, el('a', { href: '/handover.html' }, t('handover')))), said, trouble.node, el('div', { class: 'shifts-body' }, inForce, form));

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
      setText(wanting, t('needsReason'));
      return reason.focus();
    }
    setText(wanting, t('beingKept'));
    try {
      const { version, holdsFrom } = await postJson('/api/v1/shifts', body);
      reason.value = '';
      setText(wanting, '');
      said.hidden = false;
      setText(said, t('holdsNow', { version, from: holdsFrom }));
      said.focus();
      refresh();
    } catch (error) {
      setText(wanting, t('notKept', { why: error.sentence ?? error.message }));
    }
  }

  refresh();
  return () => {};
}

const field = (id, words, input) => el('div', { class: 'shift-field' }, el('label', { for: id }, words), input);

function nowOf({ current, ahead, versions, zone }) {
  const hours = (one) => t('hours', { h: number(one.hours, one.hours % 1 === 0 ? 0 : 1) });
  return [
    el('h2', {}, t('inForce')),
    el('p', { class: 'shift-now' }, el('strong', {}, current.name), t(current.crew ? 'untilCrew' : 'until', { at: timeOfDay(Date.parse(current.to)), crew: current.crew })),
    el('p', { class: 'soft' }, t('timesOf', { zone })),
    el('div', { class: 'table-frame', role: 'region', 'aria-label': t('shiftsAhead'), tabindex: 0 }, el('table', {},
      el('caption', {}, t('nextTwoWeeks')),
      el('thead', {}, el('tr', {}, ['day', 'shift', 'from', 'long', 'crew'].map((name) => el('th', { scope: 'col' }, t(`col.${name}`))))),
      el('tbody', {}, ahead.map((one) => el('tr', {}, el('td', {}, day(Date.parse(`${one.day}T12:00:00Z`))),
        el('td', {}, el('a', { href: `/handover.html?${new URLSearchParams({ shift: one.shift })}` }, one.name)),
        el('td', {}, timeOfDay(Date.parse(one.from))), el('td', {}, hours(one)), el('td', {}, one.crew ?? '\u2013')))))),
    el('h2', {}, t('decided')),
    versions.length === 0 ? el('p', { class: 'soft' }, t('nobodySet'))
      : el('ol', { class: 'plain' }, versions.map(versionOf)),
  ];
}

function versionOf({ version, holdsFrom, shifts, linesPerOperator, by, reason, at }) {
  const words = shifts.map(({ name, startsAt, days }) => t(days.length < 7 ? 'shiftOn' : 'shiftAt', { name, at: startsAt, days: days.map((day) => WEEK[day - 1]).join(' ') }));
  return el('li', {}, el('strong', {}, t('versionFrom', { version, from: holdsFrom })), t('versionIs', { shifts: words.join(', '), lines: t('linesAPerson', { n: linesPerOperator }), by, at: momentOf(at) }), el('q', {}, reason));
}
