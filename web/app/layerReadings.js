/** Which readings a layer's charts show: with which velocities, and which of them are doubtful. */
import { el } from './elements.js';
import { number } from './format.js';
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
  return el('section', { class: 'facts-readings' }, el('h2', {}, 'Which readings'),
    inForce.length === 0 ? null : el('p', { class: isExported ? 'caution' : '' }, isExported
      ? 'As the gauge exported them, without limits: those are of the corrected readings.'
      : 'Corrected for the sound velocity. What the gauge exported is kept.'),
    inForce.length === 0 ? null : el('ul', { class: 'plain' }, inForce.map((one) => versionWords(one, series))),
    inForce.length === 0 ? null : el('a', { class: 'button quiet', href: switchedAddress(isExported), data: { action: 'switch-readings' } }, isExported ? 'Show them corrected' : 'Show them as exported'),
    doubtful.map(doubtWords));
}

function versionWords({ position, version, steps, by, reason, calibration }, { characteristic: { kind } }) {
  const what = steps.map(({ from, factor, offsetUm }) => `times ${number(factor, 5)}${offsetUm === 0 ? '' : ` and ${number(offsetUm, 2)} µm`} from ${momentOf(from)} on`).join('; ');
  return el('li', {}, `${kind === 'total' ? `Layer ${position}, v` : 'V'}ersion ${version}: ${what}${calibration ? `, calibration ${calibration}` : ''}. ${by}: `, el('q', {}, reason));
}

function doubtWords({ gauge, failedAt, after, before, verdict }) {
  const span = `${after ? `since ${momentOf(after)}` : 'since the beginning'}${before ? ` until ${momentOf(before)}` : ''}`;
  const decided = verdict ? ` ${verdict.verdict === 'keep' ? 'Kept' : 'Marked to be left out'} by ${verdict.by}: ${verdict.reason}` : ' Nobody has decided about them yet.';
  return el('p', {}, verdict ? null : mark('gauge'), ` Samples ${span} are doubtful: gauge ${gauge} failed its check of ${momentOf(failedAt)}.${decided} `, el('a', { href: '/gauge.html' }, 'Check standards'));
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
