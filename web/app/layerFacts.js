/** The figures beside the charts: what was measured, capability or performance, specification, limits. */
import { el } from './elements.js';
import { count, number, um, unit } from './format.js';
import { limitsAddress } from './limitsOverview.js';
import { readingsPart } from './layerReadings.js';
import { MEANINGS, SCALED_OTHERWISE } from './limitsWords.js';
import { moment } from './plantClock.js';
import { room } from './text.js';

const t = await room('layer');

export function layerFacts(series) {
  return el('div', { class: 'facts' },
    readingsPart(series),
    measured(series),
    capability(series),
    specification(series),
    limits(series));
}

function measured({ readings, mean, sigmaWithin, sigmaOverall }) {
  return part(t('measured'), table([
    [t('readings'), count(readings), ''],
    [t('mean'), um(mean), unit()],
    [t('within'), um(sigmaWithin, 3), unit()],
    [t('overall'), um(sigmaOverall, 3), unit()],
  ]));
}

function capability({ capability: indices, readings, specs, stable, shown }) {
  if (!indices) {
    return part(t('capability'), el('p', { class: 'soft' }, t('noCapability')));
  }
  const figures = table([
    ['Cp', number(indices.cp, 2), ''],
    ['Cpk', number(indices.cpk, 2), ''],
    ['Pp', number(indices.pp, 2), ''],
    ['Ppk', number(indices.ppk, 2), ''],
  ]);
  const judged = judgedBy(indices, readings, specs);
  if (shown === 'exported') {
    return part(t('asExported'), judged, figures);
  }
  return stable ? part(t('capability'), judged, figures) : part(t('performance'), el('p', { class: 'caution' }, t('unstable')), judged, figures);
}

/** Which readings the indices are of, and against what, where that is not simply all against what is asked now. */
function judgedBy({ from, spec, readings: judged }, readings, specs) {
  const asked = t(spec.lower === undefined ? 'askedTo' : spec.upper === undefined ? 'askedFrom' : 'askedBetween', { lower: um(spec.lower ?? null), upper: um(spec.upper ?? null), unit: unit() });
  if (judged < readings) {
    return el('p', { class: 'soft' }, t('judgedSince', { n: judged, of: count(readings), at: moment(from), asked }));
  }
  return from === specs.at(-1).from ? null : el('p', { class: 'soft' }, t('judgedThen', { asked }));
}

function specification({ spec, average }) {
  const rows = [
    [t('target'), spec.target],
    [t('singleFrom'), spec.lower],
    [t('singleTo'), spec.upper],
    [t('meanFrom'), average.lower],
    [t('meanTo'), average.upper],
  ].filter(([, value]) => value !== undefined);
  const body = rows.length > 0 ? table(rows.map(([word, value]) => [word, um(value), unit()])) : el('p', { class: 'soft' }, t('noneGiven'));
  return part(t('specification'), body);
}

function limits(series) {
  const { limits: versions, columns } = series;
  const now = versions.at(-1);
  if (series.shown === 'exported') {
    return part(t('limits'), el('p', {}, t('notDrawn')));
  }
  if (!now) {
    return part(t('limits'), el('p', {}, t('collecting', { n: columns.takenAt.length })), toLimits(series, t('limitsOfFilm')));
  }
  const rows = [
    [t('lower'), um(columns.meanLower.at(-1)), unit()],
    [t('centre'), um(columns.meanCentre.at(-1)), unit()],
    [t('upper'), um(columns.meanUpper.at(-1)), unit()],
  ];
  const older = versions.slice(0, -1).reverse();
  return part(t('limits'),
    now.state === 'frozen' ? null : el('p', { class: 'caution' }, t('limitsAre', { state: t.maybe(`state.${now.state}`) ?? now.state, meaning: MEANINGS[now.state] })),
    now.scaledOtherwise ? el('p', { class: 'caution', data: { scaledOtherwise: 'true' } }, SCALED_OTHERWISE) : null,
    now.retiredAt ? null : table(rows),
    versionWords(now),
    toLimits(series, t(now.state === 'trial' ? 'lookAndPut' : 'decide')),
    older.length > 0 ? el('details', {}, el('summary', {}, t('earlier', { n: older.length })), older.map(versionWords)) : null);
}

function toLimits({ line, structure }, words) {
  return el('a', { class: 'button quiet', href: limitsAddress(line, structure.code), data: { action: 'limits' } }, words);
}

function versionWords({ version, state, holdsFrom, author, reason, subgroups, baselineFrom, baselineTo }) {
  const at = (iso) => moment(Date.parse(iso));
  return el('p', { class: 'version' },
    el('strong', {}, t('version', { version, state: t.maybe(`state.${state}`) ?? state })), t('holdsFrom', { author, at: at(holdsFrom) }),
    el('q', {}, reason),
    t('fromSamples', { n: subgroups, from: at(baselineFrom), to: at(baselineTo) }));
}

function part(title, ...body) {
  return el('section', {}, el('h2', {}, title), body);
}

function table(rows) {
  return el('dl', { class: 'figures' }, rows.map(([word, value, sign]) =>
    el('div', {}, el('dt', {}, word), el('dd', {}, value, sign ? el('span', { class: 'unit' }, ` ${sign}`) : null))));
}
