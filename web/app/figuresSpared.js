/** The most frequent alarms, and on demand what other settings would have made of them and what that costs. */
import { getJson } from './api.js';
import { el, setText } from './elements.js';
import { number } from './format.js';
import { testsOf, limitsAddress } from './limitsOverview.js';
import { longWork } from './longWork.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('figures');
const say = await sayings('alarms');

/** What a setting costs; '' where a newer server names one that is not known here. */
function priceOf({ setting, samplesNow: now, samplesThen: then }) {
  if (setting === 'without-runs') {
    return now === null || then === null ? t('noPrice') : t('price.without-runs', { then: number(then, 0), now: number(now, 0) });
  }
  return t.maybe(`price.${setting}`) ?? '';
}

const settingWords = ({ setting }) => t.maybe(`setting.${setting}`) ?? setting;

export function frequentOf({ figures }, asked) {
  const place = el('div', {});
  const said = el('p', { class: 'said', role: 'status' });
  const button = el('button', { type: 'button', class: 'quiet', data: { action: 'spared' }, on: { click: work } }, t('whichSpared'));
  place.append(listOf(figures.frequent));

  async function work() {
    button.disabled = true;
    setText(said, t('judging'));
    try {
      const { topics } = await longWork(said, t('judging'), (one) => getJson('/api/v1/alarm-figures/spared', asked, one));
      place.replaceChildren(...topics.map(optionsOf));
      setText(said, '');
      button.hidden = true;
    } catch (error) {
      setText(said, error.sentence ?? error.message);
      button.disabled = false;
    }
  }
  return el('section', { class: 'frequent' }, el('h2', {}, t(figures.frequent.length < 10 ? 'byHowOften' : 'tenMost')),
    figures.frequent.length === 0 ? el('p', { class: 'soft' }, t('noneCame')) : [place, button, said]);
}

function listOf(frequent) {
  return el('ol', { class: 'plain' }, frequent.map(({ line, structure, title, alarms, share }) =>
    el('li', {}, el('strong', {}, say(title)), el('span', { class: 'soft' }, t('place', { line, structure })),
      el('span', { class: 'share' }, el('meter', { min: 0, max: 1, value: share, 'aria-label': t('shareOfAll') }), t('alarmsShare', { alarms: t('alarms', { n: alarms }), percent: `${number(share * 100, 0)}\u202f%` })))));
}

/** The setting that leaves the fewest comes first; what spares nothing is said in one line. */
function optionsOf({ line, structure, title, alarms, options }) {
  const helping = options.filter(({ of, left }) => left < of).sort((a, b) => a.left / a.of - b.left / b.of);
  const others = options.filter(({ of, left }) => left >= of).map(settingWords);
  return el('article', { class: 'spared' },
    el('h3', {}, say(title), el('span', { class: 'soft' }, t('placeAlarms', { line, structure, alarms: t('alarms', { n: alarms }) }))),
    helping.length > 0 ? el('ul', { class: 'plain' }, helping.map(helpOf)) : null,
    others.length > 0 ? el('p', { class: 'soft' }, t('sparesNone', { settings: others.join('; ') })) : null,
    el('p', {}, t.nodes('links', {
      tests: el('a', { href: testsOf(line, structure) }, t('itsTests')),
      limits: el('a', { href: limitsAddress(line, structure) }, t('itsLimits')),
    })));
}

function helpOf(option) {
  const left = el('strong', {}, t('leftOf', { left: option.left, of: option.of }));
  return el('li', {}, t.nodes('leftWords', { left, words: settingWords(option) }), el('span', { class: 'soft' }, ` ${priceOf(option)}`));
}
