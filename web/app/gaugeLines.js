/** Which gauges there are, which lines they measure, and what they are set to for each layer. */
import { postJson } from './api.js';
import { el } from './elements.js';
import { number, um, unit } from './format.js';
import { choice, field, figure, fold, moment, numberOf, part, reasonForm, setChoices, text, umOf } from './gaugeParts.js';
import { atWallTime, momentOf, nowMs, wallTime } from './plantClock.js';
import { room } from './text.js';

const t = await room('gauge');

export function gaugeLines(changed) {
  const table = el('div', { class: 'table-frame', role: 'region', 'aria-label': t('gauges'), tabindex: 0 });
  const settings = el('div', {});
  const name = text();
  const mhz = figure();
  const share = figure();
  const line = choice([]);
  const gauge = choice([]);
  const since = moment();
  const setting = settingForm(changed);
  const add = reasonForm(t('addThisGauge'), 'decide', el('div', { class: 'gauge-row' }, field(t('nameOnLabel'), name), field(t('centreFrequency'), mhz, 'MHz'), field(t('bandwidthAt'), share, t('ofIt'))), async (reason) => {
    await postJson('/api/v1/gauges', { name: name.value, centreMhz: numberOf(mhz), bandwidth: numberOf(share) / 100, reason });
    await changed();
    return t('nameKept', { name: name.value });
  });
  const use = reasonForm(t('itMeasures'), 'decide', el('div', { class: 'gauge-row' }, field(t('gauge'), gauge), field(t('line'), line), field(t('sincePlant'), since)), async (reason) => {
    await postJson('/api/v1/gauges/use', { gauge: gauge.value, line: line.value, since: isoOf(since), reason });
    await changed();
    return t('measuresLine', { gauge: gauge.value, line: line.value });
  });
  const node = part(t('gaugesAndLines'), table, fold(t('addGauge'), add), fold(t('sayLine'), use), fold(t('setToByLayer'), settings, setting.node));

  function show(told) {
    table.replaceChildren(told.gauges.length === 0 ? el('p', {}, t('noGauge')) : gaugeTable(told));
    setChoices(gauge, told.gauges.map((one) => [one.name, one.name]));
    setChoices(line, [...new Set(told.made.map((one) => one.line))].map((one) => [one, one]));
    since.value ||= wallTime(nowMs());
    settings.replaceChildren(...told.made.map(settingTable));
    setting.show(told);
  }
  return { node, show };
}

export const isoOf = (input) => {
  const ms = atWallTime(input.value);
  return Number.isNaN(ms) ? '' : new Date(ms).toISOString();
};

/** The lines that a gauge measures now, each with the moment since when. */
function linesOf({ uses }, name) {
  const held = new Map();
  [...uses].sort((a, b) => Date.parse(a.since) - Date.parse(b.since)).filter(({ since }) => Date.parse(since) <= nowMs()).forEach((use) => held.set(use.line, use));
  return [...held.values()].filter((use) => use.gauge === name);
}

function gaugeTable(told) {
  return el('table', {},
    el('thead', {}, el('tr', {}, ['gauge', 'frequency', 'bandwidth', 'measures'].map((key) => el('th', { scope: 'col' }, t(key))))),
    el('tbody', {}, told.gauges.map((one) => el('tr', {},
      el('th', { scope: 'row' }, one.name),
      el('td', {}, `${number(one.centreMhz, 0)} MHz`),
      el('td', {}, `${number(one.bandwidth * 100, 0)} %`),
      el('td', {}, linesOf(told, one.name).map(({ line, since }) => t('lineSince', { line, at: momentOf(since) })).join(', ') || t('noLine'))))));
}

function settingTable({ line, structure, layers }) {
  const rows = layers.flatMap(({ name, members }) => members.map((member) => ({ ...member, reported: name })));
  return el('div', { class: 'table-frame', role: 'region', 'aria-label': t('settingsOf', { line, structure }), tabindex: 0 }, el('table', {},
    el('caption', {}, `${line}, ${structure}`),
    el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, t('layer')), el('th', { scope: 'col' }, t('resin')), ['velocityUnit', 'greatestUnit'].map((key) => el('th', { scope: 'col', class: 'figure' }, t(key))), el('th', { scope: 'col' }, t('saidBy')))),
    el('tbody', {}, rows.map((row) => el('tr', {},
      el('th', { scope: 'row' }, row.name), el('td', {}, row.resin || '\u2013'),
      el('td', { class: 'figure' }, number(row.velocityMps, 0)), el('td', { class: 'figure' }, um(row.greatestUm, 0)),
      el('td', {}, t(row.from === 'person' ? 'aPerson' : 'theFile')))))));
}

function settingForm(changed) {
  const made = choice([]);
  const layer = choice([]);
  const velocity = figure();
  const greatest = figure();
  const since = moment();
  let all = [];
  const chosen = () => all[Number(made.value)];
  made.addEventListener('change', layers);

  function layers() {
    setChoices(layer, (chosen()?.layers ?? []).flatMap(({ members }) => members.map(({ name }) => [name, name])));
  }
  const node = reasonForm(t('gaugeIsSet'), 'decide', el('div', { class: 'gauge-row' }, field(t('lineAndFilm'), made), field(t('layer'), layer), field(t('velocity'), velocity, 'm/s'), field(t('greatestExpected'), greatest, unit()), field(t('sincePlant'), since)), async (reason) => {
    const { line, structure } = chosen();
    await postJson('/api/v1/gauges/setting', { line, structure, layer: layer.value, velocityMps: numberOf(velocity), greatestUm: umOf(greatest), since: isoOf(since), reason });
    await changed();
    return t('settingKept');
  });
  return {
    node,
    show: (told) => {
      all = told.made;
      setChoices(made, all.map(({ line, structure }, at) => [String(at), `${line}, ${structure}`]));
      since.value ||= wallTime(nowMs());
      layers();
    },
  };
}
