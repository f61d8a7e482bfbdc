/** The uncertainty budget of each layer with the entry for its velocity, and its specification with guard bands. */
import { el } from './elements.js';
import { number, micrometres as um } from './format.js';

const COMPONENTS = ['velocity', 'temperature', 'timing', 'couplant and zero'];

/** `given` is a list of percents with commas between; `changed()` is called with each new entry. */
export function budgetTable(given, changed) {
  const frame = el('div', { class: 'table-frame check-budget', tabindex: 0, role: 'region', 'aria-label': 'Uncertainty of each layer' });
  const caption = el('p', { class: 'soft', id: 'check-budget-caption' });
  const node = el('div', {}, caption, frame, el('p', { class: 'soft' }, 'u\u2009=\u2009root of the sum of squares, U\u2009=\u2009k\u2009u (JCGM 100). Percents under a component are its share of u². Limits narrowed by the guard band of the rule (JCGM 106, ISO 14253-1, ILAC-G8): a reading between the accepted and the specified limit is a conditional pass. Whoever states conformity says by which rule.'));
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
      inputs = layers.map(({ name }, i) => el('input', { type: 'text', inputmode: 'decimal', autocomplete: 'off', value: percents[i] ?? '', placeholder: 'family', 'aria-label': `Velocity of ${name}, standard uncertainty in percent`, on: { input: changed } }));
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
  const share = line === null ? '' : ` The gauge\u2019s share is of the variance that the last samples of ${line} show, of readings, then of means, as far as its timing makes it. Risks are of single readings by this rule, the process taken as normal.`;
  return `Accepted by the rule: ${rule}.${share}`;
}

function head(line) {
  const capital = (name) => name[0].toUpperCase() + name.slice(1);
  const heads = ['Layer', 'Velocity u %', ...COMPONENTS.map((name) => `${capital(name)} µm`), 'u µm', 'k', 'U µm', 'U %', 'Specified µm', 'Accepted µm', ...(line === null ? [] : ['Gauge\u2019s share'])];
  return el('thead', {}, el('tr', {}, heads.map((words, i) => el('th', { scope: 'col', class: i > 0 ? 'figure' : null }, words))));
}

function row(layer, input, line) {
  const { name, nominalUm, basis, question, budget, spec, limits } = layer;
  const first = [el('th', { scope: 'row' }, el('b', {}, name), el('span', { class: 'soft' }, nominalUm === null ? 'no target' : `${um(nominalUm)}\u202fµm`)), el('td', { class: 'figure entry' }, input, el('span', { class: 'soft' }, budget === null ? '' : basis))];
  const last = [figure(range(spec.lower, spec.upper)), figure(accepted(limits)), ...(line === null ? [] : [el('td', { class: 'figure gauge-share' }, besideOf(layer))])];
  if (budget === null) {
    return el('tr', {}, first, el('td', { class: 'question', colspan: COMPONENTS.length + 4 }, question), last);
  }
  const parts = COMPONENTS.map((component) => part(budget.components.find((one) => one.name === component)));
  const decimals = budget.expandedUm < 0.1 ? 4 : 3;
  const whole = [figure(number(budget.combinedUm, decimals)), figure(number(budget.factor, 2)), el('td', { class: 'figure expanded' }, number(budget.expandedUm, decimals)), figure(number((100 * budget.expandedUm) / nominalUm, 1))];
  return el('tr', { data: { layer: name } }, first, parts, whole, last, question ? el('td', { class: 'question' }, question) : null);
}

function part(component) {
  return component
    ? el('td', { class: 'figure' }, number(component.contributionUm, 3), el('span', { class: 'soft' }, `${number(100 * component.share, 0)}\u202f%`))
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
  return !has(upper) ? `from ${um(lower, 2)}` : !has(lower) ? `up to ${um(upper, 2)}` : `${um(lower, 2)} to ${um(upper, 2)}`;
}

function accepted(limits) {
  if (limits === null) {
    return '\u2013';
  }
  return limits.leavesRoom ? range(limits.acceptFrom, limits.acceptUpTo) : 'no value is left';
}

function besideOf({ beside }) {
  if (beside === null) {
    return 'no samples';
  }
  const percent = (value) => (value === null ? '\u2013' : `${number(100 * value, value < 0.1 ? 1 : 0)}\u202f%`);
  if (!beside.fits) {
    return 'readings differ less: is the timing better?';
  }
  const { observedCp, trueCp, risk } = beside;
  const small = (words) => el('span', { class: 'soft' }, words);
  return [`${percent(beside.ofReadings)}, ${percent(beside.ofMeans)}`,
    observedCp === null || trueCp === null ? '' : small(`Cp ${number(observedCp, 2)}, without the gauge ${number(trueCp, 2)}`),
    risk === null ? '' : small(`accepted outside ${rare(risk.consumer)}, refused inside ${rare(risk.producer)}`)];
}

/** A share of all that is made: percent, or parts in a million where it is rare. */
function rare(share) {
  const ppm = share * 1e6;
  return ppm >= 1000 ? `${number(share * 100, share < 0.1 ? 1 : 0)}\u202f%` : `${ppm > 0 && ppm < 1 ? '<1' : number(ppm, 0)}\u202fppm`;
}
