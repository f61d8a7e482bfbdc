/** Which gauges there are, which lines they measure, and what they are set to for each layer. */
import { postJson } from './api.js';
import { el } from './elements.js';
import { number } from './format.js';
import { choice, field, figure, fold, moment, numberOf, part, reasonForm, setChoices, text } from './gaugeParts.js';
import { atWallTime, momentOf, nowMs, wallTime } from './plantClock.js';

export function gaugeLines(changed) {
  const table = el('div', { class: 'table-frame', role: 'region', 'aria-label': 'Gauges', tabindex: 0 });
  const settings = el('div', {});
  const name = text();
  const mhz = figure();
  const share = figure();
  const line = choice([]);
  const gauge = choice([]);
  const since = moment();
  const setting = settingForm(changed);
  const add = reasonForm('Add this gauge', 'decide', el('div', { class: 'gauge-row' }, field('Name on its label', name), field('Centre frequency', mhz, 'MHz'), field('Bandwidth at \u22126 dB', share, '% of it')), async (reason) => {
    await postJson('/api/v1/gauges', { name: name.value, centreMhz: numberOf(mhz), bandwidth: numberOf(share) / 100, reason });
    await changed();
    return `${name.value} is kept.`;
  });
  const use = reasonForm('It measures this line', 'decide', el('div', { class: 'gauge-row' }, field('Gauge', gauge), field('Line', line), field('Since, plant time', since)), async (reason) => {
    await postJson('/api/v1/gauges/use', { gauge: gauge.value, line: line.value, since: isoOf(since), reason });
    await changed();
    return `${gauge.value} measures ${line.value}.`;
  });
  const node = part('Gauges and their lines', table, fold('Add a gauge', add), fold('Say which line a gauge measures', use), fold('What gauges are set to, layer by layer', settings, setting.node));

  function show(told) {
    table.replaceChildren(told.gauges.length === 0 ? el('p', {}, 'No gauge yet. Add the first one: a calibration belongs to a gauge.') : gaugeTable(told));
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
    el('thead', {}, el('tr', {}, ['Gauge', 'Frequency', 'Bandwidth', 'Measures'].map((words) => el('th', { scope: 'col' }, words)))),
    el('tbody', {}, told.gauges.map((one) => el('tr', {},
      el('th', { scope: 'row' }, one.name),
      el('td', {}, `${number(one.centreMhz, 0)} MHz`),
      el('td', {}, `${number(one.bandwidth * 100, 0)} %`),
      el('td', {}, linesOf(told, one.name).map(({ line, since }) => `${line} since ${momentOf(since)}`).join(', ') || 'no line')))));
}

function settingTable({ line, structure, layers }) {
  const rows = layers.flatMap(({ name, members }) => members.map((member) => ({ ...member, reported: name })));
  return el('div', { class: 'table-frame', role: 'region', 'aria-label': `Settings of ${line}, ${structure}`, tabindex: 0 }, el('table', {},
    el('caption', {}, `${line}, ${structure}`),
    el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, 'Layer'), el('th', { scope: 'col' }, 'Resin'), ['Velocity, m/s', 'Greatest, µm'].map((words) => el('th', { scope: 'col', class: 'figure' }, words)), el('th', { scope: 'col' }, 'Said by'))),
    el('tbody', {}, rows.map((row) => el('tr', {},
      el('th', { scope: 'row' }, row.name), el('td', {}, row.resin || '\u2013'),
      el('td', { class: 'figure' }, number(row.velocityMps, 0)), el('td', { class: 'figure' }, number(row.greatestUm, 0)),
      el('td', {}, row.from === 'person' ? 'a person' : 'the structures file'))))));
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
  const node = reasonForm('The gauge is set to this', 'decide', el('div', { class: 'gauge-row' }, field('Line and film', made), field('Layer', layer), field('Velocity', velocity, 'm/s'), field('Greatest thickness expected', greatest, 'µm'), field('Since, plant time', since)), async (reason) => {
    const { line, structure } = chosen();
    await postJson('/api/v1/gauges/setting', { line, structure, layer: layer.value, velocityMps: numberOf(velocity), greatestUm: numberOf(greatest), since: isoOf(since), reason });
    await changed();
    return 'Kept. Readings from then on that were re-scaled are re-scaled from this velocity.';
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
