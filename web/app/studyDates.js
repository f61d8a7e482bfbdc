/** The dates of a study of stability: from a first one on, every so many days. */
import { el, setText } from './elements.js';
import { nowMs, wallTime } from './plantClock.js';
import { room } from './text.js';

const t = await room('study');
const DAY_MS = 86_400_000;

/** Gives {node, read(): {dates, perDate}}. */
export function studyDates() {
  const first = el('input', { id: 'plan-first', type: 'date', value: wallTime(nowMs()).slice(0, 10) });
  const every = whole('plan-every', 1, 90, 1);
  const count = whole('plan-dates', 20, 200, 25);
  const perDate = whole('plan-per-date', 1, 20, 5);
  const last = el('p', { class: 'soft', role: 'status' });
  const labelled = (input, words) => el('div', { class: 'study-field' }, el('label', { for: input.id }, words), input);
  const node = el('div', { class: 'study-dates', on: { input: told } },
    labelled(first, t('firstDate')), labelled(every, t('every')), labelled(count, t('dates')), labelled(perDate, t('perDate')), last);

  function read() {
    const from = Date.parse(`${first.value}T00:00:00Z`);
    const dates = Number.isNaN(from) ? [] : Array.from({ length: Math.trunc(Number(count.value)) || 0 }, (_, i) => new Date(from + i * Math.trunc(Number(every.value)) * DAY_MS).toISOString().slice(0, 10));
    return { dates, perDate: Math.trunc(Number(perDate.value)) };
  }

  function told() {
    const { dates } = read();
    setText(last, dates.length > 0 ? t('lastDate', { date: dates.at(-1) }) : '');
  }
  told();
  return { node, read };
}

function whole(id, min, max, value) {
  return el('input', { id, type: 'number', min, max, step: 1, value, inputmode: 'numeric' });
}
