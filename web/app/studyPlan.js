/** Planning a gauge study: which gauge, which film, which spots, who, how often. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { plural } from './format.js';
import { allow, signature } from './person.js';

const LONGEST = 500;

/** `planned(study)` is called with what was kept. */
export function studyPlan(structures, planned) {
  const gauge = el('input', { id: 'plan-gauge', maxlength: 60, autocomplete: 'off' });
  const film = el('select', { id: 'plan-film' }, structures.map(({ code, name }) => el('option', { value: code }, name === code ? code : `${code}: ${name}`)));
  const parts = el('textarea', { id: 'plan-parts', rows: 2 });
  parts.value = Array.from({ length: 10 }, (_, i) => i + 1).join(' ');
  const operators = el('textarea', { id: 'plan-operators', rows: 2 });
  const trials = el('input', { id: 'plan-trials', type: 'number', min: 2, max: 20, step: 1, value: 3, inputmode: 'numeric' });
  const purpose = el('textarea', { id: 'plan-purpose', rows: 2, maxlength: LONGEST });
  const sum = el('p', { class: 'soft', role: 'status' });
  const wanting = el('p', { class: 'said', role: 'status' });
  const form = el('form', { class: 'study-plan', novalidate: true, on: { submit, input: count } },
    el('h2', {}, 'Plan a study'),
    field(gauge, 'Gauge or probe, as on its label'), field(film, 'Film'),
    field(parts, 'Marked spots', 'Names with spaces between them. Mark the spots on the film, so that everybody finds them again: film varies by 5 to 10 % within centimetres. They should cover what the process makes.'),
    field(operators, 'Operators', 'Names with commas between them; three are usual. With one, reproducibility cannot be told.'),
    field(trials, 'How often each of them measures each spot', 'Couple anew each time, else it is jitter and not repeatability.'),
    field(purpose, 'Why this study'), sum,
    signature('decide'), allow(el('button', { type: 'submit', class: 'decide', data: { action: 'plan-study' } }, 'Plan it'), 'decide'), wanting);

  const read = () => ({
    gauge: gauge.value.trim(), structure: film.value, purpose: purpose.value.trim(), trials: Math.trunc(Number(trials.value)),
    parts: parts.value.split(/[\s,;]+/).filter((name) => name !== ''),
    operators: operators.value.split(/[,;\n]+/).map((name) => name.trim()).filter((name) => name !== ''),
  });

  function count() {
    const plan = read();
    const layers = structures.find(({ code }) => code === plan.structure)?.layers.length ?? 0;
    const steps = plan.parts.length * plan.operators.length * plan.trials;
    setText(sum, steps > 0 ? `${plural(steps, 'measurement')}, ${plural(steps * layers, 'reading')} of ${plural(layers, 'layer')}.` : '');
  }

  async function submit(event) {
    event.preventDefault();
    const plan = read();
    const missing = [[gauge, plan.gauge, 'Name the gauge.'], [operators, plan.operators.join(''), 'Name who measures.'], [purpose, plan.purpose, 'Write why: whoever reads the result will ask.']].find(([, value]) => value === '');
    if (missing) {
      setText(wanting, missing[2]);
      return missing[0].focus();
    }
    try {
      planned(await postJson('/api/v1/gauge-studies', plan));
    } catch (error) {
      setText(wanting, `Not kept. ${error.sentence ?? error.message}`);
    }
  }
  count();
  return form;
}

function field(input, words, more) {
  const note = more ? el('p', { class: 'soft', id: `${input.id}-note` }, more) : null;
  if (note) {
    input.setAttribute('aria-describedby', note.id);
  }
  return el('div', { class: 'study-field' }, el('label', { for: input.id }, words), note, input);
}
