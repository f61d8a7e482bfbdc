/** The most frequent alarms, and on demand what other settings would have made of them and what that costs. */
import { getJson } from './api.js';
import { el, setText } from './elements.js';
import { number, plural } from './format.js';
import { testsOf, limitsAddress } from './limitsOverview.js';

const SETTINGS = {
  'one-sample-more': ['wait for one sample more', () => 'everything is seen one sample later at least'],
  'without-runs': ['tests of runs raise no alarms', ({ samplesNow, samplesThen }) =>
    (samplesNow === null || samplesThen === null ? 'no figure for this kind' : `a shift of one sigma is seen after ${number(samplesThen, 0)} samples instead of ${number(samplesNow, 0)}`)],
  'wider-second-look': ['a second look also beyond four sigma', () => 'a jump is seen one sample later'],
  shelving: ['shelved for 8 h after each', () => 'nobody is told anything new of it for those 8 h'],
  'new-limits': ['limits from the last 100 samples', () => 'right only if those samples are as the process should be'],
};

export function frequentOf({ figures }, asked) {
  const place = el('div', {});
  const said = el('p', { class: 'said', role: 'status' });
  const button = el('button', { type: 'button', class: 'quiet', data: { action: 'spared' }, on: { click: work } }, 'Which setting would have spared them?');
  place.append(listOf(figures.frequent));

  async function work() {
    button.disabled = true;
    setText(said, 'Judging that time once more\u2026');
    try {
      const { topics } = await getJson('/api/v1/alarm-figures/spared', asked);
      place.replaceChildren(...topics.map(optionsOf));
      setText(said, '');
      button.hidden = true;
    } catch (error) {
      setText(said, error.sentence ?? error.message);
      button.disabled = false;
    }
  }
  return el('section', { class: 'frequent' }, el('h2', {}, figures.frequent.length < 10 ? 'Alarms by how often they came' : 'The ten most frequent'),
    figures.frequent.length === 0 ? el('p', { class: 'soft' }, 'There was none.') : [place, button, said]);
}

function listOf(frequent) {
  return el('ol', { class: 'plain' }, frequent.map(({ line, structure, title, alarms, share }) =>
    el('li', {}, el('strong', {}, title), el('span', { class: 'soft' }, ` ${line}, ${structure}`),
      el('span', { class: 'share' }, el('meter', { min: 0, max: 1, value: share, 'aria-label': 'share of all alarms' }), ` ${plural(alarms, 'alarm')}, ${number(share * 100, 0)}\u202f%`))));
}

/** The setting that leaves the fewest comes first; what spares nothing is said in one line. */
function optionsOf({ line, structure, title, alarms, options }) {
  const helping = options.filter(({ of, left }) => left < of).sort((a, b) => a.left / a.of - b.left / b.of);
  const others = options.filter(({ of, left }) => left >= of).map(({ setting }) => SETTINGS[setting]?.[0] ?? setting);
  return el('article', { class: 'spared' },
    el('h3', {}, title, el('span', { class: 'soft' }, ` ${line}, ${structure}: ${plural(alarms, 'alarm')}`)),
    helping.length > 0 ? el('ul', { class: 'plain' }, helping.map((option) => {
      const [words, price] = SETTINGS[option.setting] ?? [option.setting, () => ''];
      return el('li', {}, el('strong', {}, `${option.left} of ${option.of} left`), `: ${words}`, el('span', { class: 'soft' }, ` ${price(option)}`));
    })) : null,
    others.length > 0 ? el('p', { class: 'soft' }, `Would spare none: ${others.join('; ')}.`) : null,
    el('p', {}, el('a', { href: testsOf(line, structure) }, 'Its tests'), ', ', el('a', { href: limitsAddress(line, structure) }, 'its limits')));
}
