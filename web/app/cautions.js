/** What must stand wherever a person could act on a suggestion. */
import { el } from './elements.js';
import { room } from './text.js';

const t = await room('cautions');

export const CAUTIONS = [
  t('release'),
  t('running'),
  t('regulated'),
];

export function cautions() {
  return el('ul', { class: 'cautions', 'aria-label': t('title') }, CAUTIONS.map((text) => el('li', {}, text)));
}
