/** What a study of known pieces says, in words. Pure. */
import { list, number, um } from './format.js';
import { chanceOf, percent, VERDICTS } from './studyWords.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('study');
const say = await sayings('gauge');

export const VERDICTS_OF_BIAS = Object.fromEntries(['none-seen', 'within-reference', 'real'].map((word) => [word, t(`biasVerdict.${word}`)]));

/** On one piece, the verdict first. */
export function pieceSentences({ bias, lower, upper, deviation, judged, readings }, { expandedUm }) {
  const sure = { readings: t('readingsN', { n: readings }), lower: um(lower, 4), upper: um(upper, 4), u: um(judged.combinedUm, 4) };
  return [
    t(`biasSays.${judged.verdict}`, { bias: um(bias, 4) }),
    t(expandedUm > 0 ? 'sureByU' : 'sureBy', sure),
    t('repeats', { sigma: um(deviation, 4), judged: repeats(judged.repeats) }),
  ];
}

function repeats(one) {
  return one === null ? t('repeatsNone') : t('repeatsSix', { percent: percent(one.percentTolerance), um: um(one.toleranceUm, 2), words: say(one.words), verdict: VERDICTS[one.verdict] });
}

export function linearitySentences({ verdict }, { slope, intercept }) {
  return [
    t(`linear.${verdict}`),
    t('equation', { intercept: um(intercept.value, 4), sign: slope.value < 0 ? '\u2212' : '+', slope: number(Math.abs(slope.value), 5), p: chanceOf(slope.p) }),
  ];
}

export function stabilitySentences({ verdict, points, limits, basis }, { dates }) {
  const told = t('datesMeasured', { seen: String(points.length), dates: t('datesN', { n: dates.length }) });
  if (verdict === null) {
    return [t(points.length < 20 ? 'tooEarly' : 'neverDiffer'), t('limitsComeLater', { told })];
  }
  const beyond = limits.beyond.map((at) => points[at].date);
  const from = t(basis === 'means' ? 'limitsFromRanges' : 'limitsFromMoving', { told });
  return [t(`stable.${verdict}`), beyond.length > 0 ? `${from} ${t('beyondThem', { dates: list(beyond) })}` : from];
}
