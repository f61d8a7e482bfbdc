/** What must stand wherever a person could act on a suggestion. */
import { el } from './elements.js';

export const CAUTIONS = [
  'A chart is not a safety interlock and not a release test.',
  'Checks at a running line mean hot dies, nips and cutters: follow the lock-out procedure of the site and local rules.',
  'Barrier, food-contact and medical film is released by the responsible person under the applicable regulations.',
];

export function cautions() {
  return el('ul', { class: 'cautions', 'aria-label': 'Cautions' }, CAUTIONS.map((text) => el('li', {}, text)));
}
