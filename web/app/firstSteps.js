/** On the intake: the step before the first readings, and the one after them. */
import { getJson } from './api.js';
import { el } from './elements.js';
import { room } from './text.js';

const t = await room('intake');

/** Where no film is described yet, the way to do it; else nothing. */
export async function describeFirst() {
  const { structures } = await getJson('/api/v1/structures').catch(() => ({ structures: null }));
  return structures === null || structures.length > 0 ? null : el('section', { class: 'describe-first' },
    el('h2', {}, t('describeFirst')), el('p', {}, t('describeFirstText')),
    el('a', { class: 'button', href: '/structures.html', data: { action: 'to-structures' } }, t('describeFilm')));
}

/** The chart of the layer on top of whatever was sampled last; null where there is none. */
export async function wayToChart() {
  const { lines } = await getJson('/api/v1/board').catch(() => ({ lines: [] }));
  const sampled = lines.filter((line) => line.lastSample && line.structure);
  const [newest] = sampled.sort((a, b) => Date.parse(b.lastSample.takenAt) - Date.parse(a.lastSample.takenAt));
  if (newest === undefined) {
    return null;
  }
  const query = new URLSearchParams({ line: newest.line, structure: newest.structure.code, kind: 'layer', position: '1' });
  return el('a', { class: 'button to-chart', href: `/layer.html?${query}`, data: { action: 'to-chart' } }, t('seeChart', { line: newest.line }));
}
