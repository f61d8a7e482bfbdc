/** Where a page has nothing to show yet: why, and the next step from here. */
import { getJson } from './api.js';
import { el } from './elements.js';
import { room } from './text.js';

const t = await room('intake');

/** No film is described yet, or none of them has readings. */
export async function nothingYet(words) {
  const { structures } = await getJson('/api/v1/structures').catch(() => ({ structures: [] }));
  return structures.length > 0 ? leadOn(words, '/intake.html', t('bringIn')) : leadOn(words, '/structures.html', t('describeFilm'));
}

/** The same where the next step is known. */
export function leadOn(words, href, step) {
  return el('section', { class: 'nothing-yet' }, el('p', { class: 'lead' }, words), el('a', { class: 'button', href, data: { action: 'next-step' } }, step));
}
