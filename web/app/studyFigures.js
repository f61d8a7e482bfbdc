/**
 * Turns the steps of a study into what its charts draw. Pure. Lengths in um; a step has one thickness a layer, null
 * where it is not entered.
 */
export const TOTAL = 'total';

/** Of a step: the thickness of a layer, or the total of all of them; null where one is missing. */
export function thicknessOf(step, layer, layers) {
  const at = layers.findIndex(({ name }) => name === layer);
  if (at >= 0) {
    return step.um[at];
  }
  return step.um.includes(null) ? null : step.um.reduce((a, b) => a + b, 0);
}

/** {parts, operators: [{name, means: [um | null], readings: [{x, y}]}], least, greatest}; x counts parts from 0. */
export function byPart(study, layer) {
  const readings = readingsOf(study, layer);
  const operators = study.operators.map((name) => {
    const own = readings.filter((one) => one.operator === name);
    return {
      name,
      means: study.parts.map((part) => mean(own.filter((one) => one.part === part).map(({ um }) => um))),
      readings: own.map(({ part, um }) => ({ x: study.parts.indexOf(part), y: um })),
    };
  });
  return { parts: study.parts, operators, ...reachOf(readings.map(({ um }) => um)) };
}

/** What each operator reads off the mean of the part: {operators: [{name, mean, readings: [um]}], least, greatest}. */
export function byOperator(study, layer) {
  const readings = readingsOf(study, layer);
  const means = new Map(study.parts.map((part) => [part, mean(readings.filter((one) => one.part === part).map(({ um }) => um))]));
  const operators = study.operators.map((name) => {
    const off = readings.filter((one) => one.operator === name).map(({ part, um }) => um - means.get(part));
    return { name, mean: mean(off), readings: off };
  });
  return { operators, ...reachOf(operators.flatMap((one) => one.readings)) };
}

/** The layer that most needs a better gauge. */
export function worstOf(studies) {
  const order = ['acceptable', 'conditional', 'not-acceptable'];
  const badness = ({ verdict, percentStudyVariation }) => order.indexOf(verdict.verdict) * 1000 + percentStudyVariation;
  return studies.reduce((worst, one) => (worst === null || badness(one) > badness(worst) ? one : worst), null);
}

/** Shares of the variance, largest unit first: [{name, share}], which add up to 1. */
export function varianceShares({ variance }) {
  const { repeatability, reproducibility, part, total } = variance;
  return [['repeatability', repeatability], ['reproducibility', reproducibility ?? 0], ['part', part]].map(([name, value]) => ({ name, share: value / total }));
}

function readingsOf(study, layer) {
  return study.steps
    .map((step) => ({ part: step.part, operator: step.operator, um: thicknessOf(step, layer, study.layers) }))
    .filter(({ um }) => um !== null);
}

function mean(values) {
  return values.length === 0 ? null : values.reduce((a, b) => a + b, 0) / values.length;
}

function reachOf(values) {
  const least = Math.min(...values);
  const greatest = Math.max(...values);
  const margin = Math.max((greatest - least) * 0.08, 1e-6);
  return { least: least - margin, greatest: greatest + margin };
}
