/** What a gauge study says, in words. Pure. */
import { number } from './format.js';

export const VERDICTS = { acceptable: 'acceptable', conditional: 'for some uses', 'not-acceptable': 'not acceptable' };
export const STATES = { open: 'being measured', finished: 'finished', abandoned: 'given up' };

export const percent = (value) => (value === null ? '\u2013' : `${number(value, value < 9.95 ? 1 : 0)}\u202f%`);

const MEANS = {
  acceptable: 'a change of the process shows on the charts',
  conditional: 'enough for some uses, if the customer agrees; say so on the report',
  'not-acceptable': 'much of what the chart of this layer shows is the gauge',
};

/** Sentences on one layer, the most important first. */
export function sentencesOf(study) {
  const { lower, upper } = study.confidence.percentStudyVariation;
  return [
    `The gauge makes ${percent(study.percentStudyVariation)} of the spread of the readings (95\u202f% sure: ${percent(lower)} to ${percent(upper)}): ${MEANS[study.verdict.forProcess]}.`,
    toleranceOf(study),
    `It tells ${study.distinctCategories === 1 ? 'one group' : `${study.distinctCategories} groups`} of spots apart; ${study.verdict.categoriesWanted} or more are wanted.`,
    interactionOf(study),
    ...adviceOf(study),
  ];
}

function toleranceOf({ percentTolerance, tolerance, verdict }) {
  return percentTolerance === null
    ? 'No tolerance of this layer was known when the study was planned, so nothing is said about conformity.'
    : `Six sigma of the gauge take ${percent(percentTolerance)} of the tolerance (${number(tolerance.um, 2)} µm, ${tolerance.words}): ${VERDICTS[verdict.forTolerance]} for judging single readings.`;
}

function interactionOf({ anova, interactionPooled }) {
  if (anova.interaction === null) {
    return 'There was one operator, so reproducibility cannot be told; two are needed, three are usual.';
  }
  const p = anova.interaction.p < 0.0001 ? 'below 0.0001' : number(anova.interaction.p, 4);
  return interactionPooled
    ? `Operators and spots do not interact (p ${p}, above 0.25), so that is pooled with the repeatability.`
    : `Operators and spots interact (p ${p}): some operators read some spots otherwise. Both are tested against that.`;
}

function adviceOf({ verdict, variance }) {
  if (verdict.verdict === 'acceptable') {
    return [];
  }
  return variance.repeatability >= (variance.reproducibility ?? 0)
    ? ['Most of it is repeatability: look at the coupling, at the echo of this layer and at averaging before the people.']
    : ['Most of it is between operators: look at how each of them finds the spot and couples.'];
}
