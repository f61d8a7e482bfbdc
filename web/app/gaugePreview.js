/** What a re-scaling would do, in words: samples, means, limits and alarms. */
import { el } from './elements.js';
import { count, number, um } from './format.js';
import { momentOf } from './plantClock.js';
import { sayings } from './said.js';
import { layerName } from './words.js';
import { room } from './text.js';

const t = await room('gauge');
const say = await sayings('alarms');

/** @param order what was asked for: what becomes of limits, and whether temperatures count */
export function previewWords({ steps, samples, left, withTemperature, means, limitsScaledOtherwise, alarmsBefore, alarmsAfter }, { limits, temperature }) {
  return [
    el('p', {}, t('samplesSteps', { n: samples, steps: steps.map(stepWords).join('; ') })),
    temperature === 'corrects' ? el('p', { class: withTemperature === 0 ? 'caution' : null }, t('withTemperature', { n: withTemperature })) : null,
    left > 0 ? el('p', {}, t('thinned', { n: left })) : null,
    el('table', {}, el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, t('meanOfThese')), ['nowIn', 'thenIn'].map((key) => el('th', { scope: 'col', class: 'figure' }, t(key))))),
      el('tbody', {}, means.map(({ characteristic, before, after }) => el('tr', {}, el('th', { scope: 'row' }, layerName(characteristic)), el('td', { class: 'figure' }, um(before)), el('td', { class: 'figure' }, um(after)))))),
    el('p', {}, limitsWords(limitsScaledOtherwise, limits)),
    el('p', {}, alarmsBefore === null ? t('tooManySamples') : t('alarmsNowThen', { now: count(alarmsBefore.length), then: count(alarmsAfter.length) })),
    alarmsAfter && alarmsAfter.length > 0 ? el('details', {}, el('summary', {}, t('alarmsOfThen', { n: alarmsAfter.length })), el('ul', {}, alarmsAfter.map(({ title, openedAt }) => el('li', {}, t('alarmAt', { title: say(title), at: momentOf(openedAt) }))))) : null,
  ].filter(Boolean);
}

/** from when on times what, and what is added. */
export function stepWords({ from, factor, offsetUm }) {
  return t(offsetUm === 0 ? 'stepFactor' : 'stepBoth', { at: momentOf(from), factor: number(factor, 5), offset: um(offsetUm, 2) });
}

function limitsWords(versions, limits) {
  if (versions.length === 0) {
    return t('noOtherLimits');
  }
  return t(limits === 'carry' ? 'otherCarry' : 'otherFlag', { n: versions.length, versions: versions.join(', ') });
}
