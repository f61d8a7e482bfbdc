/** The uncertainty budget of each layer with the entry for its velocity, and its specification with guard bands. */
import { el } from './elements.js';
import { length, number, um } from './format.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('film-check');
const say = await sayings('gauge');
const COMPONENTS = ['velocity', 'temperature', 'timing', 'couplant and zero'];

/** `given` is a list of percents with commas between; `changed()` is called with each new entry. */
export function budgetTable(given, changed) {
  const frame = el('div', { class: 'table-frame check-budget', tabindex: 0, role: 'region', 'aria-label': t('uncertaintyOf') });
  const caption = el('p', { class: 'soft', id: 'check-budget-caption' });
  const node = el('div', {}, caption, frame, el('p', { class: 'soft' }, t('budgetNote')));
  let percents = (given ?? '').split(',');
  let inputs = [];
  let names = '';

  function velocity() {
    const now = inputs.length > 0 ? inputs.map((input) => input.value) : percents;
    const texts = now.map((text) => text.replace(',', '.').trim());
    return texts.every((text) => text === '') ? '' : texts.join(',');
  }

  /** The film is another one. */
  function forget() {
    percents = [];
    inputs = [];
  }

  /** Inputs stay where they are while somebody types in them. */
  function show({ layers, line, rule }) {
    const before = names;
    names = JSON.stringify(layers.map(({ name }) => name));
    if (before !== names || inputs.length === 0) {
      inputs = layers.map(({ name }, i) => el('input', { type: 'text', inputmode: 'decimal', autocomplete: 'off', value: percents[i] ?? '', placeholder: t('familyHint'), 'aria-label': t('velocityOf', { name }), on: { input: changed } }));
    }
    const focused = document.activeElement;
    caption.textContent = captionOf(line, rule);
    frame.replaceChildren(el('table', { 'aria-describedby': 'check-budget-caption' }, head(line), el('tbody', {}, layers.map((layer, i) => row(layer, inputs[i], line)))));
    if (inputs.includes(focused)) {
      focused.focus();
    }
  }
  return { node, velocity, forget, show };
}

function captionOf(line, rule) {
  return [t('acceptedBy', { rule }), line === null ? '' : t('gaugeShareOf', { line })].filter(Boolean).join(' ');
}

function head(line) {
  const heads = [t('head.layer'), t('col.velocityU'), ...COMPONENTS.map((name) => t(`part.${name}`)), t('col.u'), 'k', t('col.U'), 'U %', t('col.specified'), t('col.accepted'), ...(line === null ? [] : [t('col.gaugeShare')])];
  return el('thead', {}, el('tr', {}, heads.map((words, i) => el('th', { scope: 'col', class: i > 0 ? 'figure' : null }, words))));
}

function row(layer, input, line) {
  const { name, nominalUm, basis, question, budget, spec, limits } = layer;
  const first = [el('th', { scope: 'row' }, el('b', {}, name), el('span', { class: 'soft' }, nominalUm === null ? t('noTarget') : length(nominalUm))), el('td', { class: 'figure entry' }, input, el('span', { class: 'soft' }, budget === null ? '' : say(basis)))];
  const last = [figure(range(spec.lower, spec.upper)), figure(accepted(limits)), ...(line === null ? [] : [el('td', { class: 'figure gauge-share' }, besideOf(layer))])];
  if (budget === null) {
    return el('tr', {}, first, el('td', { class: 'question', colspan: COMPONENTS.length + 4 }, say(question)), last);
  }
  const parts = COMPONENTS.map((component) => part(budget.components.find((one) => one.name === component)));
  const decimals = budget.expandedUm < 0.1 ? 4 : 3;
  const whole = [figure(um(budget.combinedUm, decimals)), figure(number(budget.factor, 2)), el('td', { class: 'figure expanded' }, um(budget.expandedUm, decimals)), figure(number((100 * budget.expandedUm) / nominalUm, 1))];
  return el('tr', { data: { layer: name } }, first, parts, whole, last, question ? el('td', { class: 'question' }, say(question)) : null);
}

function part(component) {
  return component
    ? el('td', { class: 'figure' }, um(component.contributionUm, 3), el('span', { class: 'soft' }, `${number(100 * component.share, 0)}\u202f%`))
    : el('td', { class: 'figure' }, '\u2013');
}

function figure(content) {
  return el('td', { class: 'figure' }, content);
}

function range(lower, upper) {
  const has = (value) => value !== null && value !== undefined;
  if (!has(lower) && !has(upper)) {
    return '\u2013';
  }
  return t(!has(upper) ? 'rangeFrom' : !has(lower) ? 'rangeTo' : 'range', { from: um(lower, 2), to: um(upper, 2) });
}

function accepted(limits) {
  if (limits === null) {
    return '\u2013';
  }
  return limits.leavesRoom ? range(limits.acceptFrom, limits.acceptUpTo) : t('noneLeft');
}

function besideOf({ beside }) {
  if (beside === null) {
    return t('noSamples');
  }
  const percent = (value) => (value === null ? '\u2013' : `${number(100 * value, value < 0.1 ? 1 : 0)}\u202f%`);
  if (!beside.fits) {
    return t('differLess');
  }
  const { observedCp, trueCp, risk } = beside;
  const small = (words) => el('span', { class: 'soft' }, words);
  return [t('both', { readings: percent(beside.ofReadings), means: percent(beside.ofMeans) }),
    observedCp === null || trueCp === null ? '' : small(t('cp', { observed: number(observedCp, 2), without: number(trueCp, 2) })),
    risk === null ? '' : small(t('risk', { consumer: rare(risk.consumer), producer: rare(risk.producer) }))];
}

/** A share of all that is made: percent, or parts in a million where it is rare. */
function rare(share) {
  const ppm = share * 1e6;
  return ppm >= 1000 ? `${number(share * 100, share < 0.1 ? 1 : 0)}\u202f%` : `${ppm > 0 && ppm < 1 ? '<1' : number(ppm, 0)}\u202fppm`;
}
