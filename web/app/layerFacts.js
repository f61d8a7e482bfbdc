/** The figures beside the charts: what was measured, capability or performance, specification, limits. */
import { el } from './elements.js';
import { count, number, plural, um } from './format.js';
import { limitsAddress } from './limitsOverview.js';
import { readingsPart } from './layerReadings.js';
import { MEANINGS, SCALED_OTHERWISE } from './limitsWords.js';
import { moment } from './plantClock.js';

const UNSTABLE =
  'Samples in this time are unusual, so the process is not stable. These figures describe what was made; they are not called capability and promise nothing for the next roll.';

export function layerFacts(series) {
  return el('div', { class: 'facts' },
    readingsPart(series),
    measured(series),
    capability(series),
    specification(series),
    limits(series));
}

function measured({ readings, mean, sigmaWithin, sigmaOverall }) {
  return part('Measured', table([
    ['Readings', count(readings), ''],
    ['Mean', um(mean), 'µm'],
    ['Sigma within samples', number(sigmaWithin, 3), 'µm'],
    ['Sigma overall', number(sigmaOverall, 3), 'µm'],
  ]));
}

function capability({ capability: indices, stable, shown }) {
  if (!indices) {
    return part('Capability', el('p', { class: 'soft' }, 'Cannot be computed: it needs specification limits and enough readings.'));
  }
  const figures = table([
    ['Cp', number(indices.cp, 2), ''],
    ['Cpk', number(indices.cpk, 2), ''],
    ['Pp', number(indices.pp, 2), ''],
    ['Ppk', number(indices.ppk, 2), ''],
  ]);
  if (shown === 'exported') {
    return part('Figures of the readings as exported', figures);
  }
  return stable ? part('Capability', figures) : part('Performance, not capability', el('p', { class: 'caution' }, UNSTABLE), figures);
}

function specification({ spec, average }) {
  const rows = [
    ['Target', spec.target],
    ['Single reading from', spec.lower],
    ['Single reading to', spec.upper],
    ['Sample mean from', average.lower],
    ['Sample mean to', average.upper],
  ].filter(([, value]) => value !== undefined);
  const body = rows.length > 0 ? table(rows.map(([word, value]) => [word, um(value), 'µm'])) : el('p', { class: 'soft' }, 'None given for this layer.');
  return part('Specification, from the customer', body);
}

function limits(series) {
  const { limits: versions, columns } = series;
  const now = versions.at(-1);
  if (series.shown === 'exported') {
    return part('Control limits, from the process', el('p', {}, 'Not drawn here: they are of the corrected readings.'));
  }
  if (!now) {
    return part('Control limits, from the process', el('p', {}, `Collecting: ${plural(columns.takenAt.length, 'sample')} so far. Until there are limits nothing can be unusual.`), toLimits(series, 'The limits of this film'));
  }
  const rows = [
    ['Lower', um(columns.meanLower.at(-1)), 'µm'],
    ['Centre', um(columns.meanCentre.at(-1)), 'µm'],
    ['Upper', um(columns.meanUpper.at(-1)), 'µm'],
  ];
  const older = versions.slice(0, -1).reverse();
  return part('Control limits, from the process',
    now.state === 'frozen' ? null : el('p', { class: 'caution' }, `These limits are ${now.state}. ${MEANINGS[now.state]}`),
    now.scaledOtherwise ? el('p', { class: 'caution', data: { scaledOtherwise: 'true' } }, SCALED_OTHERWISE) : null,
    now.retiredAt ? null : table(rows),
    versionWords(now),
    toLimits(series, now.state === 'trial' ? 'Look at them and put them in force' : 'Decide about the limits'),
    older.length > 0 ? el('details', {}, el('summary', {}, `Earlier: ${plural(older.length, 'version')}`), older.map(versionWords)) : null);
}

function toLimits({ line, structure }, words) {
  return el('a', { class: 'button quiet', href: limitsAddress(line, structure.code), data: { action: 'limits' } }, words);
}

function versionWords({ version, state, holdsFrom, author, reason, subgroups, baselineFrom, baselineTo }) {
  const at = (iso) => moment(Date.parse(iso));
  return el('p', { class: 'version' },
    el('strong', {}, `Version ${version}, ${state}`), ` by ${author}, holds from ${at(holdsFrom)}. `,
    el('q', {}, reason),
    ` From ${plural(subgroups, 'sample')}, ${at(baselineFrom)} to ${at(baselineTo)}.`);
}

function part(title, ...body) {
  return el('section', {}, el('h2', {}, title), body);
}

function table(rows) {
  return el('dl', { class: 'figures' }, rows.map(([word, value, unit]) =>
    el('div', {}, el('dt', {}, word), el('dd', {}, value, unit ? el('span', { class: 'unit' }, ` ${unit}`) : null))));
}
