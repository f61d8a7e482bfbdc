/** States of limits, and what a new baseline would change, in words. Pure. */
import { length } from './format.js';
import { room } from './text.js';

const t = await room('limits');

const DECIMALS = 2;
const HARDLY = 0.1;

/** A state as people say it. */
export const stateWord = (state) => t.maybe(`state.${state}`) ?? state;

/** What each state means for alarms, one sentence each. */
export const MEANINGS = Object.fromEntries(['collecting', 'trial', 'provisional', 'frozen', 'suspect', 'retired'].map((state) => [state, t(`means.${state}`)]));

/** What is done about neighbouring samples that are alike. */
export const REMEDIES = Object.fromEntries(['sample-less-often', 'without-runs', 'residuals', 'accept'].map((name) => [name, t(`remedy.${name}`)]));

/** What a person may do with limits in a state: {act, to, verb, then}. */
export function moves(state) {
  const doubt = step('doubt', 'suspect', MEANINGS.suspect);
  const retire = step('retire', 'retired', t('retiring'));
  switch (state) {
    case 'provisional':
      return [step('freeze', 'frozen', MEANINGS.frozen), doubt, retire];
    case 'frozen':
      return [doubt, retire];
    case 'suspect':
      return [step('stand', 'frozen', MEANINGS.frozen), retire];
    default:
      return [];
  }
}

function step(act, to, then) {
  return { act, to, verb: t(`verb.${act}`), then };
}

/** {lower, upper} of the mean of `size` readings. */
export function limitsOfMean({ centre, sigma }, size) {
  const reach = (3 * sigma) / Math.sqrt(size);
  return { lower: centre - reach, upper: centre + reach };
}

/** {words, isFar}: isFar where the proposed centre lies beyond the limits of now. */
export function changeOf(current, proposed, size) {
  if (!proposed) {
    return { words: t(current ? 'noNewStay' : 'noLimits'), isFar: false };
  }
  if (!current) {
    return { words: t('theFirst'), isFar: false };
  }
  const moved = proposed.centre - current.centre;
  const { lower, upper } = limitsOfMean(current, size);
  const isFar = proposed.centre < lower || proposed.centre > upper;
  const isMoved = Math.abs(moved) > current.sigma / Math.sqrt(size);
  const centre = isMoved ? t(moved > 0 ? 'centreThicker' : 'centreThinner', { by: length(Math.abs(moved), DECIMALS) }) : t('centreAsWas');
  const words = [centre, ...(isFar ? [t('beyondNow')] : []), width(proposed.sigma / current.sigma - 1)];
  return { words: words.join(', '), isFar };
}

function width(change) {
  if (!Number.isFinite(change) || Math.abs(change) < HARDLY) {
    return t('asWide');
  }
  return t(change > 0 ? 'wider' : 'narrower', { percent: Math.round(Math.abs(change) * 100) });
}

/** Of limits that were computed of readings at another velocity than those they are drawn over. */
export const SCALED_OTHERWISE = t('scaledOtherwise');
