/** The way from an empty plant to a first chart: describe the film, bring readings, see the chart. Gone once readings came. */
import { el } from './elements.js';
import { keepFile } from './structureWords.js';
import { room } from './text.js';

const t = await room('structures');

export function nextSteps(structures) {
  const isMade = structures.some(({ samples }) => samples > 0);
  if (isMade) {
    return '';
  }
  const isDescribed = structures.length > 0;
  return el('section', { class: 'structure-steps', 'aria-label': t('steps') },
    el('ol', { class: 'plain' },
      step(1, t('step.describe'), isDescribed ? 'done' : 'now'),
      step(2, t('step.bring'), isDescribed ? 'now' : 'later'),
      step(3, t('step.see'), 'later')),
    isDescribed ? bring(structures.at(-1)) : null);
}

function step(number, words, state) {
  return el('li', { data: { state }, 'aria-current': state === 'now' ? 'step' : null }, el('b', {}, state === 'done' ? '\u2713' : String(number)), ' ', words, state === 'done' ? el('span', { class: 'for-readers' }, t('step.done')) : null);
}

/** Where to go now, and a file with the right headings for whoever types readings by hand. */
function bring({ code, structure }) {
  const headings = ['taken_at', 'line', 'structure', 'roll', 'sample', 'lane', ...structure.reported.map((group) => `layer_${group.position}_um`)].join(',');
  return el('div', { class: 'structure-next' },
    el('a', { class: 'button', href: '/intake.html', data: { action: 'to-intake' } }, t('toIntake')),
    el('button', { type: 'button', class: 'quiet', data: { action: 'headings' }, on: { click: () => keepFile(`${code}-readings.csv`, `${headings}\n`, 'text/csv') } }, t('headings')),
    el('p', { class: 'soft' }, t('headingsLead', { code })));
}
