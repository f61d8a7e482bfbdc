/** Which week, which films, for whom; and the kept reports of that week. */
import { el } from './elements.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('report');
const WEEK_MS = 7 * 86_400_000;

/** `go({week, line, …})` shows another. */
export function reportHead(query, { films, reports, lastWeek }, go) {
  const step = (by) => el('button', { type: 'button', class: 'quiet', data: { step: by }, 'aria-label': t(by < 0 ? 'weekBefore' : 'weekAfter'), on: { click: () => go({ week: weekBeside(query.week, by), id: null }) } }, by < 0 ? '\u2190' : '\u2192');
  const week = el('input', { id: 'report-week', value: query.week, size: 8, maxlength: 8, autocomplete: 'off', on: { change: (event) => go({ week: event.target.value.trim().toUpperCase(), id: null }) } });
  const made = [...new Map(films.map((film) => [`${film.line}\n${film.structure}`, film])).values()];
  const film = el('select', { id: 'report-film', on: { change: ({ target }) => go({ ...filmOf(target.value), id: null }) } },
    el('option', { value: '' }, t('allFilms')),
    made.map(({ line, structure }) => el('option', { value: `${line}\n${structure}`, selected: line === query.line && structure === query.structure }, t('filmOn', { structure, line }))));
  const edition = el('select', { id: 'report-edition', on: { change: ({ target }) => go({ edition: target.value }) } },
    ['internal', 'customer'].map((name) => el('option', { value: name, selected: name === query.edition }, t(`edition.${name}`))));
  const kept = reports.filter((one) => one.week === query.week);
  return el('div', { class: 'report-head' },
    el('h1', {}, t('title', { week: query.week })),
    el('div', { class: 'report-choice' },
      el('div', { class: 'report-week' }, el('label', { for: 'report-week' }, t('week')), el('div', { class: 'report-steps' }, step(-1), week, step(1), query.week === lastWeek ? null : el('button', { type: 'button', class: 'quiet', on: { click: () => go({ week: null, id: null }) } }, t('lastWeek')))),
      el('div', {}, el('label', { for: 'report-film' }, t('films')), film),
      el('div', {}, el('label', { for: 'report-edition' }, t('forWhom')), edition)),
    kept.length === 0 ? el('p', { class: 'soft' }, t('noneIssued')) : el('ul', { class: 'plain report-kept' }, kept.map((one) => keptRow(one, query, go)), query.id ? el('li', {}, el('button', { type: 'button', class: 'quiet', on: { click: () => go({ id: null }) } }, t('asNow'))) : null));
}

function keptRow({ id, revision, signedBy, signedAt, madeAt, line, structure }, query, go) {
  const what = revision === 0 ? t('draftOf', { at: momentOf(madeAt) }) : t('revisionOf', { revision, by: signedBy, at: momentOf(signedAt) });
  const of = line || structure ? ` ${t('filmOn', { structure: structure || t('allStructures'), line: line || t('allLines') })}` : '';
  return el('li', {}, el('button', { type: 'button', class: 'quiet', 'aria-pressed': String(String(id) === query.id), data: { report: id }, on: { click: () => go({ id }) } }, what + of));
}

function filmOf(value) {
  const [line, structure] = value.split('\n');
  return { line: line || null, structure: structure ?? null };
}

/** 2026-W47 and 1 give 2026-W48, over the turn of the year. */
export function weekBeside(word, by) {
  const [year, week] = word.split('-W').map(Number);
  const fourth = Date.UTC(year, 0, 4);
  const monday = fourth - ((new Date(fourth).getUTCDay() + 6) % 7) * 86_400_000 + (week - 1 + by) * WEEK_MS;
  const thursday = new Date(monday + 3 * 86_400_000);
  const first = Date.UTC(thursday.getUTCFullYear(), 0, 4);
  const number = 1 + Math.round((monday - (first - ((new Date(first).getUTCDay() + 6) % 7) * 86_400_000)) / WEEK_MS);
  return `${thursday.getUTCFullYear()}-W${String(number).padStart(2, '0')}`;
}
