/** What a gauge study says, in words. Pure. */
import { number, um } from './format.js';
import { sayings } from './said.js';
import { TOTAL } from './studyFigures.js';
import { room } from './text.js';

const t = await room('study');
const say = await sayings('gauge');

export const VERDICTS = Object.fromEntries(['acceptable', 'conditional', 'not-acceptable'].map((word) => [word, t(`verdict.${word}`)]));

/** A layer as it is called, or the total of all. */
export const layerWord = (name) => (name === TOTAL ? t('total') : name);

export const percent = (value) => (value === null ? '\u2013' : `${number(value, value < 9.95 ? 1 : 0)}\u202f%`);

/** A small probability as it is written. */
export const chanceOf = (p) => (p < 0.0001 ? t('pBelow') : number(p, 4));

/** Sentences on one layer, the most important first. */
export function sentencesOf(study) {
  const { lower, upper } = study.confidence.percentStudyVariation;
  return [
    t('makes', { percent: percent(study.percentStudyVariation), lower: percent(lower), upper: percent(upper), means: t(`means.${study.verdict.forProcess}`) }),
    toleranceOf(study),
    t('groups', { n: study.distinctCategories, wanted: String(study.verdict.categoriesWanted) }),
    interactionOf(study),
    ...adviceOf(study),
  ];
}

function toleranceOf({ percentTolerance, tolerance, verdict }) {
  return percentTolerance === null
    ? t('noTolerance')
    : t('sixSigma', { percent: percent(percentTolerance), um: um(tolerance.um, 2), words: say(tolerance.words), verdict: VERDICTS[verdict.forTolerance] });
}

function interactionOf({ anova, interactionPooled }) {
  if (anova.interaction === null) {
    return t('oneOperator');
  }
  return t(interactionPooled ? 'pooled' : 'interact', { p: chanceOf(anova.interaction.p) });
}

function adviceOf({ verdict, variance }) {
  if (verdict.verdict === 'acceptable') {
    return [];
  }
  return [t(variance.repeatability >= (variance.reproducibility ?? 0) ? 'mostRepeat' : 'mostBetween')];
}
