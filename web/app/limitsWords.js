/** States of limits, and what a new baseline would change, in words. Pure. */
import { micrometres as um } from './format.js';

const DECIMALS = 2;
const HARDLY = 0.1;

/** What each state means for alarms, one sentence each. */
export const MEANINGS = {
  collecting: 'There are too few samples for limits, so nothing can be unusual and nothing raises an alarm.',
  trial: 'The limits are shown on the charts and raise no alarm.',
  provisional: 'In use from a small baseline: only a mean beyond its limits raises an alarm.',
  frozen: 'In use and signed: every test that is chosen to raise alarms can raise one.',
  suspect: 'Still in use: alarms are raised as before, and everybody sees that somebody doubts the limits.',
  retired: 'Not in use: nothing is judged by them and they raise no alarm.',
};

/** What is done about neighbouring samples that are alike. */
export const REMEDIES = {
  'sample-less-often': 'samples are taken further apart from now on, and new limits made from those',
  'without-runs': 'only means beyond their limits raise alarms; the tests of runs are turned off',
  residuals: 'alarms are checked against the residuals',
  accept: 'the false alarms are known and taken',
};

/** What a person may do with limits in a state: {to, verb, doing, then}. */
export function moves(state) {
  const doubt = { to: 'suspect', verb: 'Doubt them', doing: 'Doubt', then: MEANINGS.suspect };
  const stand = { to: 'frozen', verb: 'Stand by them', doing: 'Stand by', then: MEANINGS.frozen };
  const retire = {
    to: 'retired',
    verb: 'Retire',
    doing: 'Retire',
    then: 'From the next sample on nothing is judged and nothing raises an alarm, until new limits are put in force. This cannot be taken back.',
  };
  switch (state) {
    case 'provisional':
      return [{ ...stand, verb: 'Freeze them', doing: 'Freeze' }, doubt, retire];
    case 'frozen':
      return [doubt, retire];
    case 'suspect':
      return [stand, retire];
    default:
      return [];
  }
}

/** {lower, upper} of the mean of `size` readings. */
export function limitsOfMean({ centre, sigma }, size) {
  const reach = (3 * sigma) / Math.sqrt(size);
  return { lower: centre - reach, upper: centre + reach };
}

/** {words, isFar}: isFar where the proposed centre lies beyond the limits of now. */
export function changeOf(current, proposed, size) {
  if (!proposed) {
    return { words: current ? 'no new limits: these stay' : 'no limits', isFar: false };
  }
  if (!current) {
    return { words: 'the first limits', isFar: false };
  }
  const moved = proposed.centre - current.centre;
  const { lower, upper } = limitsOfMean(current, size);
  const isFar = proposed.centre < lower || proposed.centre > upper;
  const isMoved = Math.abs(moved) > current.sigma / Math.sqrt(size);
  const centre = isMoved ? `centre ${um(Math.abs(moved), DECIMALS)}\u00a0µm ${moved > 0 ? 'thicker' : 'thinner'}` : 'centre as it was';
  const words = [centre, ...(isFar ? ['beyond the limits of now'] : []), width(proposed.sigma / current.sigma - 1)];
  return { words: words.join(', '), isFar };
}

function width(change) {
  if (!Number.isFinite(change) || Math.abs(change) < HARDLY) {
    return 'about as wide';
  }
  return `${Math.round(Math.abs(change) * 100)}\u202f% ${change > 0 ? 'wider' : 'narrower'}`;
}

/** Of limits that were computed of readings at another velocity than those they are drawn over. */
export const SCALED_OTHERWISE = 'These limits were computed of readings at another sound velocity than those shown now. Carry them along, or compute others, before you trust a signal.';
