/** What states, tests and roles are called, in the plain words that every screen uses. */

export const ROLES = { skin: 'skin', core: 'core', tie: 'tie', barrier: 'barrier', seal: 'seal' };

/** Short names that fit beside a ringed point. */
const SHORT = {
  'beyond-limit': 'beyond limit',
  'two-of-three': '2 of 3',
  'four-of-five': '4 of 5',
  'eight-in-a-row': '8 in a row',
  trend: 'trend of 6',
  stratification: '15 close to the centre',
  mixture: '8 away from the centre',
  alternation: '14 up and down',
};

/** Tests that say nothing about thicker or thinner. */
const PATTERNS = ['stratification', 'mixture', 'alternation'];

/** The test that says most comes first. */
const WEIGHT = ['beyond-limit', 'two-of-three', 'four-of-five', 'eight-in-a-row', 'trend', 'mixture', 'alternation', 'stratification'];

export function shortTest({ chart, test }) {
  return chart === 'ewma' ? 'moving average' : SHORT[test] ?? test;
}

export function bySeverity(a, b) {
  return WEIGHT.indexOf(a.test) - WEIGHT.indexOf(b.test);
}

/** Thicker, thinner or more spread: what the signal says about the film. */
export function direction({ chart, test, side }) {
  if (chart === 'range') {
    return 'spread wider';
  }
  if (PATTERNS.includes(test)) {
    return 'unusual pattern';
  }
  return side === 'high' ? 'thicker' : 'thinner';
}

/** Why the point is ringed, for somebody who never learned the rules. */
export function explain({ chart, test, side }) {
  if (chart === 'range') {
    return 'Range chart, beyond limit: the readings of this one sample lie further apart than they usually do. Either the film differs across the web, or one reading is wrong.';
  }
  if (chart === 'ewma') {
    return `Moving average: the average of the last means, in which newer ones weigh more, lies ${side === 'high' ? 'above' : 'below'} where it stays in a steady process. The level has moved a little and stays moved.`;
  }
  const where = side === 'high' ? 'above' : 'below';
  const limit = side === 'high' ? 'upper' : 'lower';
  switch (test) {
    case 'beyond-limit':
      return `Mean chart, beyond limit: this mean lies ${where} the ${limit} control limit. A steady process does that about once in 370 samples.`;
    case 'two-of-three':
      return `Mean chart, 2 of 3: two of the last three means lie more than two thirds of the way from the centre line to the ${limit} control limit.`;
    case 'four-of-five':
      return `Mean chart, 4 of 5: four of the last five means lie more than one third of the way from the centre line to the ${limit} control limit.`;
    case 'eight-in-a-row':
      return `Mean chart, 8 in a row: the last eight means or more all lie ${where} the centre line. The level has probably moved.`;
    case 'trend':
      return `Mean chart, trend: the last six means or more each lie ${side === 'high' ? 'above' : 'below'} the one before. Something is drifting.`;
    case 'stratification':
      return 'Mean chart, close to the centre: the last fifteen means or more all lie within a third of the way to the control limits. The limits are too wide, or the lanes of a sample differ in a steady way.';
    case 'mixture':
      return 'Mean chart, away from the centre: of the last eight means or more none lies within a third of the way to the control limits. Two levels take turns.';
    case 'alternation':
      return 'Mean chart, up and down: the last fourteen means or more go up and down in turn. Two sources take turns, or somebody corrects after every sample.';
    default:
      return `Mean chart, ${test}: ${where} what is usual.`;
  }
}

const RULES = {
  'beyond-limit': 'A mean lies beyond a control limit.',
  'two-of-three': 'Two of three means lie more than two thirds of the way to a limit, on one side.',
  'four-of-five': 'Four of five means lie more than one third of the way to a limit, on one side.',
  'eight-in-a-row': 'Eight means follow each other on one side of the centre line.',
  trend: 'Six means follow each other upwards, or downwards.',
  stratification: 'Fifteen means follow each other within a third of the way to the limits.',
  mixture: 'Eight means follow each other, none within a third of the way to the limits.',
  alternation: 'Fourteen means go up and down in turn.',
};

/** What a test looks for, before anything was found. */
export function rule({ chart, test }) {
  if (chart === 'range') {
    return 'The readings of one sample lie further apart, or closer together, than the limits allow.';
  }
  return chart === 'ewma' ? 'The average of the last means, newer ones weighing more (0.2), lies beyond its limit (2.86).' : RULES[test];
}

/** The roles and extruders of a layer in a few words. */
export function makeUp({ kind, roles = [], extruders = [] }) {
  if (kind === 'total') {
    return 'all layers together';
  }
  const role = roles.map((name) => ROLES[name] ?? name).join(' + ');
  const fed = extruders.length > 0 ? `extruder ${extruders.join(', ')}` : '';
  return [role, fed].filter(Boolean).join(', ');
}

/** While limits are collected, on trial or retired, nothing raises an alarm. */
export function raisesAlarms({ state }) {
  return !['collecting', 'trial', 'retired'].includes(state);
}

/** What the limits of a line are worth today. */
export function limitsInWords({ state, version, subgroups }) {
  switch (state) {
    case 'collecting':
      return `collecting: ${subgroups} samples so far, no limits yet`;
    case 'trial':
      return 'limits are trial: no alarms yet';
    case 'provisional':
      return `limits version ${version}, provisional: only a mean beyond them raises an alarm`;
    case 'suspect':
      return `limits version ${version}, suspect: somebody doubts them`;
    case 'retired':
      return `limits version ${version}, retired: no alarms`;
    default:
      return `limits version ${version}, ${state}`;
  }
}
