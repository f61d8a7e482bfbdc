/** Which readings a layer's charts show: with which velocities, and which of them are doubtful. */
import { el } from './elements.js';
import { number, um } from './format.js';
import { mark } from './marks.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('layer');

/** Versions that hold, without those that were taken back. */
export function scalingsInForce({ scalings = [] }) {
  return scalings.filter(({ takesBack, takenBack }) => takesBack === 0 && !takenBack);
}

/** For the chart: where readings begin to be another, as {x, text}. */
export function scalingSteps(series) {
  return series.shown === 'exported' ? [] : scalingsInForce(series).flatMap(({ version, steps }) => steps.map(({ from, factor }) => ({ x: Date.parse(from), text: t('readingsStep', { factor: number(factor, 4), version }) })));
}

/** For the figures beside the charts; null where there is nothing to say. */
export function readingsPart(series) {
  const inForce = scalingsInForce(series);
  const doubtful = (series.doubtful ?? []).filter(({ before }) => before === null || Date.parse(before) >= series.columns.takenAt[0]);
  if (inForce.length === 0 && doubtful.length === 0) {
    return null;
  }
  const isExported = series.shown === 'exported';
  return el('section', { class: 'facts-readings' }, el('h2', {}, t('whichReadings')),
    inForce.length === 0 ? null : el('p', { class: isExported ? 'caution' : '' }, t(isExported ? 'asExportedNoLimits' : 'correctedVelocity')),
    inForce.length === 0 ? null : el('ul', { class: 'plain' }, inForce.map((one) => versionWords(one, series))),
    inForce.length === 0 ? null : el('a', { class: 'button quiet', href: switchedAddress(isExported), data: { action: 'switch-readings' } }, t(isExported ? 'showCorrected' : 'showExported')),
    doubtful.map(doubtWords));
}

function versionWords({ position, version, steps: all, by, reason, calibration }, { characteristic: { kind } }) {
  const steps = all.map(stepWords).join('; ');
  const what = calibration ? t('scalingByCalibration', { what: steps, calibration }) : steps;
  return el('li', {}, t(kind === 'total' ? 'scalingOfLayer' : 'scalingOf', { position, version, what, by }), el('q', {}, reason));
}

function stepWords({ from, factor, offsetUm, temperatureC, percentPerKelvin }) {
  const step = t(offsetUm === 0 ? 'scalingStep' : 'scalingStepBoth', { factor: number(factor, 5), offset: um(offsetUm, 2), at: momentOf(from) });
  return temperatureC === undefined ? step : t('scalingWarm', { step, percent: number(percentPerKelvin, 2), celsius: number(temperatureC, 1) });
}

function doubtWords({ gauge, failedAt, after, before, verdict }) {
  const since = after ? t('doubtSince', { at: momentOf(after) }) : t('doubtSinceBeginning');
  const span = before ? t('doubtSpan', { since, at: momentOf(before) }) : since;
  const decided = verdict ? t(verdict.verdict === 'keep' ? 'doubtKept' : 'doubtLeftOut', verdict) : t('doubtUndecided');
  return el('p', {}, verdict ? null : mark('gauge'), t('doubtful', { span, gauge, at: momentOf(failedAt), decided }), el('a', { href: '/gauge.html' }, t('checkStandards')));
}

/** How many samples of this time, in words; for the head of the page. */
export const exportedWords = ({ samples }) => t('exported', { n: samples });

function switchedAddress(isExported) {
  const query = new URLSearchParams(location.search);
  if (isExported) {
    query.delete('readings');
  } else {
    query.set('readings', 'exported');
  }
  return `?${query}`;
}
