/** What was decided about reports: the index that is asked for, prices and outputs, the schedule. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { momentOf } from './plantClock.js';
import { allow, signature } from './person.js';
import { room } from './text.js';

const t = await room('report');
const PRICE = ['line', 'structure', 'layer', 'perKg', 'currency', 'asOf', 'kgPerHour', 'widthM', 'speedMPerMin', 'hoursPerWeek'];
const WORDS = ['line', 'structure', 'layer', 'currency', 'asOf'];
let made = 0;

export function reportSettings(settings, films, done) {
  const { asked, schedule, version, by, why, at } = settings;
  const index = input({ inputmode: 'decimal', value: String(asked.index) });
  const confidence = input({ inputmode: 'decimal', value: String(asked.confidence) });
  const isOn = el('input', { type: 'checkbox', checked: schedule.isOn });
  const day = el('select', {}, [1, 2, 3, 4, 5, 6, 7].map((n) => el('option', { value: n, selected: n === schedule.day }, t(`day.${n}`))));
  const hour = input({ inputmode: 'numeric', value: String(schedule.hour) });
  const recipients = input({ value: schedule.recipients.join(', ') });
  const language = el('select', {}, ['en', 'de'].map((code) => el('option', { value: code, selected: code === schedule.language }, t(`language.${code}`))));
  const paper = el('select', {}, ['a4', 'letter'].map((name) => el('option', { value: name, selected: name === schedule.paper }, t(`paper.${name}`))));
  const prices = el('tbody', {}, settings.prices.map((price) => priceRow(price)));
  const reason = el('textarea', { rows: 2, maxlength: 500 });
  const said = el('p', { class: 'said', role: 'status' });
  const form = el('form', { class: 'report-settings', novalidate: true, on: { submit } },
    el('div', { class: 'report-choice' }, field(t('askedIndex'), index), field(t('askedConfidence'), confidence)),
    el('h3', {}, t('prices')), el('p', { class: 'soft' }, t('pricesMean')),
    el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('prices') }, el('table', {}, el('thead', {}, el('tr', {}, PRICE.map((name) => el('th', { scope: 'col' }, t(`price.${name}`))), el('td', {}))), prices)),
    el('button', { type: 'button', class: 'quiet', on: { click: () => prices.append(priceRow({ line: '', structure: films[0]?.structure ?? '', layer: '', currency: 'EUR', asOf: new Date().toISOString().slice(0, 10), hoursPerWeek: 120 })) } }, t('addPrice')),
    el('h3', {}, t('schedule')), el('label', { class: 'tick' }, isOn, ' ', t('scheduleOn')),
    el('div', { class: 'report-choice' }, field(t('dayOfWeek'), day), field(t('hour'), hour), field(t('recipients'), recipients), field(t('language'), language), field(t('paper'), paper)),
    field(t('reason'), reason), signature('dispose'), allow(el('button', { type: 'submit' }, t('keepSettings')), 'dispose'), said);
  return el('details', { class: 'report-decided' }, el('summary', {}, t('settings')),
    el('p', { class: 'soft' }, version === 0 ? t('nobodyDecided') : t('decided', { by, at: momentOf(at), why })), form);

  async function submit(event) {
    event.preventDefault();
    const wanted = {
      asked: { index: figureOf(index), confidence: figureOf(confidence) },
      prices: [...prices.rows].map(priceOf),
      schedule: { isOn: isOn.checked, day: Number(day.value), hour: figureOf(hour), recipients: recipients.value.split(/[,;\s]+/).filter(Boolean), language: language.value, paper: paper.value },
    };
    try {
      await postJson('/api/v1/reports/settings', { settings: wanted, reason: reason.value.trim() });
      setText(said, t('settingsKept'));
      done();
    } catch (error) {
      setText(said, error.sentence ?? error.message);
    }
  }
}

function priceRow(price) {
  const row = el('tr', {}, PRICE.map((name) => el('td', {}, input({ value: price[name] ?? '', size: WORDS.includes(name) ? 9 : 5, 'aria-label': t(`price.${name}`), data: { price: name } }))),
    el('td', {}, el('button', { type: 'button', class: 'quiet', on: { click: () => row.remove() } }, t('takeAway'))));
  return row;
}

function priceOf(row) {
  return Object.fromEntries([...row.querySelectorAll('[data-price]')].map((cell) => [cell.dataset.price, WORDS.includes(cell.dataset.price) ? cell.value.trim() : figureOf(cell)]));
}

function field(words, control) {
  made += 1;
  control.id ||= `report-field-${made}`;
  return el('div', {}, el('label', { for: control.id }, words), control);
}

const input = (attributes) => el('input', { type: 'text', autocomplete: 'off', maxlength: 300, ...attributes });

/** Point or comma; null where nothing is written. */
function figureOf({ value }) {
  const typed = value.trim().replace(',', '.');
  return typed === '' ? null : Number(typed);
}
