/** The entries of the film check: the gauge before the film, and what a budget is worked out with. */
import { el } from './elements.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('film-check');
const say = await sayings('gauge');
const MHZ = [20, 30, 50, 75, 100, 125];
const USUAL = { frequency: '100', bandwidth: '80', temperature: '2', timing: '0.1', zero: '0.1', shots: '1' };
const COUPLINGS = ['immersion', 'contact'].map((word) => [word, t(`coupling.${word}`)]);
const RULES = ['guard-95', 'guard-expanded', 'simple'].map((word) => [word, t(`rule.${word}`)]);
const COVERAGES = ['two', 'student'].map((word) => [word, t(`coverage.${word}`)]);

/** `changed()` is called with each new entry. */
export function checkForm(params, changed) {
  const structure = select('check-structure', [], changed);
  const frequency = number('check-frequency', params.get('frequency') ?? USUAL.frequency, changed, { list: 'check-mhz', min: 0 });
  const share = Number(params.get('bandwidth'));
  const bandwidth = number('check-bandwidth', share > 0 ? String(Math.round(share * 1000) / 10) : USUAL.bandwidth, changed, { min: 0 });
  const coupling = select('check-coupling', COUPLINGS, changed, params.get('coupling'));
  const couplant = select('check-couplant', [], changed);
  const backing = select('check-backing', [], changed);
  const node = el('form', { class: 'check-form', novalidate: true, on: { submit: (event) => event.preventDefault() } },
    field(t('film'), structure, '', 'wide'), field(t('frequency'), frequency, 'MHz'), field(t('bandwidth'), bandwidth, '%'),
    field(t('coupling'), coupling), field(t('through'), couplant), field(t('behind'), backing),
    el('datalist', { id: 'check-mhz' }, MHZ.map((mhz) => el('option', { value: mhz }))));

  function values() {
    return {
      structure: structure.value || params.get('structure'),
      frequency: plain(frequency.value),
      bandwidth: plain(bandwidth.value, (percent) => percent / 100),
      coupling: coupling.value,
      couplant: couplant.value || params.get('couplant'),
      backing: backing.value || params.get('backing'),
    };
  }

  function show(plan) {
    fill(structure, plan.structures.map(({ code, name }) => [code, name === code ? code : t('codeName', { code, name })]), plan.structure.code);
    fill(couplant, plan.couplants.map(({ key, name }) => [key, say(name)]), plan.couplant.key);
    fill(backing, plan.backings.map(({ key, name }) => [key, name]), plan.backing.key);
  }
  return { node, values, show };
}

export function budgetForm(params, changed) {
  const entry = (name, attributes = {}) => number(`worth-${name}`, params.get(name) ?? USUAL[name], changed, { min: 0, ...attributes });
  const [temperature, timing, zero, shots] = [entry('temperature'), entry('timing'), entry('zero'), entry('shots', { min: 1, step: 1 })];
  const coverage = select('worth-coverage', COVERAGES, changed, params.get('coverage'));
  const rule = select('worth-rule', RULES, changed, params.get('rule'));
  const line = select('worth-line', [['', t('noLine')]], changed);
  const node = el('form', { class: 'check-form', novalidate: true, on: { submit: (event) => event.preventDefault() } },
    field(t('temperature'), temperature, 'K'), field(t('timing'), timing, 'ns'), field(t('zero'), zero, 'ns'), field(t('shots'), shots),
    field(t('coverage'), coverage), field(t('rule'), rule, '', 'wide'), field(t('besideCharts'), line));

  function values() {
    return {
      temperature: plain(temperature.value), timing: plain(timing.value), zero: plain(zero.value), shots: plain(shots.value),
      coverage: coverage.value, rule: rule.value, line: line.value || null,
    };
  }

  function show(lines) {
    fill(line, [['', t('noLine')], ...[...new Set(lines.map((one) => one.line))].map((name) => [name, name])], params.get('line') ?? '');
  }
  return { node, values, show };
}

/** What people type, with a decimal comma too; as it is where it is no number, so that the server says so. */
function plain(text, change = (value) => value) {
  const value = Number(text.replace(',', '.'));
  return text.trim() !== '' && Number.isFinite(value) ? String(change(value)) : text;
}

function number(id, value, changed, attributes) {
  return el('input', { id, type: 'text', inputmode: 'decimal', autocomplete: 'off', value, ...attributes, on: { input: changed } });
}

function select(id, options, changed, chosen = null) {
  const node = el('select', { id, on: { change: changed } });
  fill(node, options, chosen);
  return node;
}

function fill(node, options, chosen) {
  node.replaceChildren(...options.map(([value, words]) => el('option', { value, selected: value === chosen }, words)));
}

function field(words, input, unit = '', width = 'usual') {
  return el('div', { data: { width } }, el('label', { for: input.id }, words, unit ? [' ', el('span', { class: 'unit' }, unit)] : ''), input);
}
