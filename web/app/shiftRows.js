/** The shifts of a calendar as rows that can be changed. */
import { el } from './elements.js';
import { room } from './text.js';

const t = await room('shifts');

export const WEEK = [1, 2, 3, 4, 5, 6, 7].map((day) => t(`day.${day}`));
const MOST = 24;
let made = 0;

export function shiftRows() {
  const list = el('ul', { class: 'plain shift-rows' });
  const more = el('button', { type: 'button', class: 'quiet', data: { action: 'add-shift' }, on: { click: () => add({ name: '', startsAt: '06:00', days: [1, 2, 3, 4, 5, 6, 7], crews: [] }).focus() } }, t('oneMore'));

  function add(shift) {
    const id = `shift-${++made}`;
    const name = el('input', { id: `${id}-name`, maxlength: 40, autocomplete: 'off', value: shift.name, data: { field: 'name' } });
    const at = el('input', { id: `${id}-at`, type: 'time', value: shift.startsAt, data: { field: 'startsAt' } });
    const crews = el('input', { id: `${id}-crews`, autocomplete: 'off', value: shift.crews.join(' '), data: { field: 'crews' } });
    const days = WEEK.map((word, i) => el('label', { class: 'chip' }, el('input', { type: 'checkbox', value: i + 1, checked: shift.days.includes(i + 1) }), el('span', {}, word)));
    const row = el('li', {},
      place(`${id}-name`, t('name'), name), place(`${id}-at`, t('begins'), at),
      el('fieldset', {}, el('legend', {}, t('on')), el('div', { class: 'chips' }, days)),
      place(`${id}-crews`, t('crews'), crews),
      el('button', { type: 'button', class: 'quiet', on: { click: () => (row.remove(), bounds()) } }, t('takeOut')));
    list.append(row);
    bounds();
    return name;
  }

  function bounds() {
    more.disabled = list.children.length >= MOST;
  }

  function show(shifts) {
    list.replaceChildren();
    shifts.forEach(add);
  }

  const read = () => [...list.children].map((row) => ({
    name: row.querySelector('[data-field="name"]').value.trim(),
    startsAt: row.querySelector('[data-field="startsAt"]').value,
    days: [...row.querySelectorAll('.chip input:checked')].map((input) => Number(input.value)),
    crews: row.querySelector('[data-field="crews"]').value.split(/[\s,;]+/).filter((crew) => crew !== ''),
  }));
  return { node: el('div', {}, list, more), show, read };
}

const place = (id, words, input) => el('div', {}, el('label', { for: id }, words), input);
