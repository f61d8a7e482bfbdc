/** What a study of known pieces says, in words. Pure. */
import { list, number, plural } from './format.js';
import { percent, VERDICTS } from './studyWords.js';

export const VERDICTS_OF_BIAS = { 'none-seen': 'no bias seen', 'within-reference': 'within the reference', real: 'off' };

/** On one piece, the verdict first. */
export function pieceSentences({ bias, lower, upper, deviation, judged, readings }, { expandedUm }) {
  const interval = `${number(lower, 4)} to ${number(upper, 4)} µm`;
  return [{
    'none-seen': `No bias is seen: ${number(bias, 4)} µm, which chance explains.`,
    'within-reference': `Off by ${number(bias, 4)} µm, which the uncertainty of the reference explains.`,
    real: `The gauge is off by ${number(bias, 4)} µm: calibrate it.`,
  }[judged.verdict],
  `95\u202f% sure by ${plural(readings, 'reading')}: ${interval}${expandedUm > 0 ? `; with the uncertainty of the reference ± ${number(judged.combinedUm, 4)} µm about the bias` : '. The uncertainty of the reference is not stated, so it counts as none'}.`,
  `It repeats with a standard deviation of ${number(deviation, 4)} µm. ${repeats(judged.repeats)}`];
}

function repeats(one) {
  return one === null ? 'No tolerance of this layer was known, so that is not judged.' : `Six of it take ${percent(one.percentTolerance)} of the tolerance (${number(one.toleranceUm, 2)} µm, ${one.words}): ${VERDICTS[one.verdict]} for judging single readings.`;
}

export function linearitySentences({ verdict }, { slope, intercept }) {
  return [{
    right: 'The gauge is right over the range of these pieces.',
    off: 'The gauge is off, and no sign that it goes with the thickness: correct its zero.',
    'with-thickness': 'How far the gauge is off goes with the thickness: calibrate it on two thicknesses.',
  }[verdict],
  `Bias = ${number(intercept.value, 4)} ${slope.value < 0 ? '\u2212' : '+'} ${number(Math.abs(slope.value), 5)} × thickness, µm; the slope has p ${slope.p < 0.0001 ? 'below 0.0001' : number(slope.p, 4)}.`];
}

export function stabilitySentences({ verdict, points, limits, basis }, { dates }) {
  const so = { stable: 'Stable: no point lies beyond its limits.', 'not-stable': 'Not stable: ask what happened there before the gauge is trusted.' };
  const told = `${points.length} of ${plural(dates.length, 'date')} measured.`;
  if (verdict === null) {
    return [points.length < 20 ? 'Too early to say.' : 'The readings never differ, so nothing is said.', `${told} Limits come with the twentieth.`];
  }
  const beyond = limits.beyond.map((at) => points[at].date);
  return [so[verdict], `${told} Limits from ${basis === 'means' ? 'the ranges of the dates' : 'the moving ranges of single readings'}.${beyond.length > 0 ? ` Beyond them: ${list(beyond)}.` : ''}`];
}
