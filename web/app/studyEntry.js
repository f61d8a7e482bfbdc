/** Entering the readings of a study, step by step in its random order, or from a file. */
import { getJson, postCsv, postJson } from './api.js';
import { el, setText } from './elements.js';
import { plural } from './format.js';
import { may, whyNot } from './person.js';
import { studyPaste } from './studyPaste.js';

const ROWS_SHOWN = 8;
const LONGEST = 500;

/** `changed` is told when readings were kept. Gives {node, show(study)}. */
export function studyEntry(changed) {
  const said = el('p', { class: 'said', role: 'status' });
  const body = el('tbody', {});
  const head = el('tr', {});
  const file = el('input', { id: 'study-file', type: 'file', accept: '.csv,.txt,.tsv,text/csv', disabled: !may('send-files'), on: { change: chosen } });
  const why = el('input', { id: 'study-why', maxlength: LONGEST, autocomplete: 'off' });
  const done = el('p', { class: 'soft' });
  const paste = studyPaste((body, words) => keep(body, words), said);
  const mending = el('details', { class: 'study-mend' });
  const node = el('section', { class: 'study-entry' },
    el('h2', {}, 'Measure and enter'),
    el('p', { class: 'soft' }, 'In this order, so that nobody remembers and nothing drifts with one spot. Couple anew for each row. Enter takes you to the next field; at the end of a row it is kept. What was read before is not shown while you measure.'),
    whyNot('send-files'), done,
    el('div', { class: 'table-frame', role: 'region', 'aria-label': 'The next steps', tabindex: 0 }, el('table', { class: 'study-table' }, el('thead', {}, head), body)), paste.node, said,
    el('div', { class: 'study-import' },
      el('label', { for: 'study-file' }, 'Or bring in a file'),
      el('p', { class: 'soft' }, 'CSV with part,operator,trial,layer,thickness_um, named as planned; trials of stability count on from date to date. All of it is taken, or nothing.'), file,
      el('label', { for: 'study-why' }, 'Why, where it changes readings that are there'), why),
    mending);
  let study = null;

  function show(next) {
    study = next;
    paste.show(study);
    const open = study.steps.map((step, i) => ({ step, place: i + 1 })).filter(({ step }) => step.um.includes(null));
    setText(done, `${study.entered} of ${plural(study.readings, 'reading')} entered${open.length === 0 ? '; none is missing.' : `, ${plural(open.length, 'step')} to go.`}`);
    head.replaceChildren(...['Step', 'Operator', study.kind === 'crossed' ? 'Spot' : 'Piece', study.kind === 'stability' ? 'Date' : 'Trial', ...study.layers.map(({ name }) => `${name} µm`)].map((words) => el('th', { scope: 'col' }, words)), el('th', { scope: 'col' }, el('span', { class: 'for-readers' }, 'Keep the row')));
    body.replaceChildren(...open.slice(0, ROWS_SHOWN).map(({ step, place }) => rowOf(step, place)));
    body.closest('.table-frame').hidden = open.length === 0;
    mending.hidden = study.entered === 0;
    mending.replaceChildren(...mendOf());
  }

  function rowOf(step, place) {
    const inputs = study.layers.map(({ name }, i) => el('input', { inputmode: 'decimal', autocomplete: 'off', size: 7, 'aria-label': `${name}, ${step.part}, ${step.operator}, ${step.date ?? `trial ${step.trial}`}, µm`, disabled: step.um[i] !== null || !may('send-files'), placeholder: step.um[i] !== null ? 'kept' : '', data: { layer: name }, on: { keydown } }));
    const keep = el('button', { type: 'button', class: 'quiet', disabled: !may('send-files'), data: { action: 'keep-step' }, on: { click: () => keepRow(step, inputs) } }, 'Keep');
    function keydown(event) {
      if (event.key === 'Enter') {
        event.preventDefault();
        const rest = inputs.slice(inputs.indexOf(event.target) + 1).find((input) => !input.disabled);
        rest ? rest.focus() : keepRow(step, inputs);
      }
    }
    return el('tr', {}, el('td', { class: 'soft' }, String(place)), el('td', {}, step.operator), el('th', { scope: 'row' }, step.part), el('td', {}, step.date ?? String(step.trial)), inputs.map((input) => el('td', { data: { label: `${input.dataset.layer} µm` } }, input)), el('td', {}, keep));
  }

  async function keepRow({ part, operator, trial }, inputs) {
    const open = inputs.filter((input) => !input.disabled && input.value.trim() !== '');
    const readings = open.map((input) => ({ part, operator, trial, layer: input.dataset.layer, um: numberOf(input.value) }));
    const wrong = open.find((input, i) => !(readings[i].um > 0));
    if (open.length === 0 || wrong) {
      setText(said, wrong ? `\u201c${wrong.value}\u201d is not a thickness in µm; write it like 14.2.` : 'Nothing is entered in this row yet.');
      return (wrong ?? inputs.find((input) => !input.disabled)).focus();
    }
    if (await keep({ readings }, `${part} by ${operator}, trial ${trial}: kept.`)) {
      body.querySelector('input:not([disabled])')?.focus();
    }
  }

  async function keep(readings, words) {
    setText(said, 'Being kept\u2026');
    try {
      await postJson(`/api/v1/gauge-studies/${study.id}/readings`, readings);
      await changed();
      setText(said, words);
      return true;
    } catch (error) {
      setText(said, `Not kept. ${error.sentence ?? error.message}`);
      return false;
    }
  }

  async function chosen() {
    const [given] = file.files;
    file.value = '';
    setText(said, `${given.name} is being read\u2026`);
    try {
      const query = new URLSearchParams({ name: given.name, why: why.value.trim() });
      const taken = await postCsv(`/api/v1/gauge-studies/${study.id}/file?${query}`, given);
      why.value = '';
      await changed();
      setText(said, `${given.name}: ${plural(taken.new, 'reading')} new, ${taken.known} known already, ${taken.corrected} corrected.`);
    } catch (error) {
      setText(said, `${given.name} was not taken. ${error.sentence ?? error.message}`);
    }
  }

  /** Another value for a reading that is there; the old one is kept beside it. */
  function mendOf() {
    const choice = (id, values) => el('select', { id }, values.map((value) => el('option', { value }, String(value))));
    const part = choice('mend-part', study.parts);
    const operator = choice('mend-operator', study.operators);
    const trial = choice('mend-trial', Array.from({ length: study.trials }, (_, i) => i + 1));
    const layer = choice('mend-layer', study.layers.map(({ name }) => name));
    const um = el('input', { id: 'mend-um', inputmode: 'decimal', autocomplete: 'off' });
    const reason = el('input', { id: 'mend-why', maxlength: LONGEST, autocomplete: 'off' });
    async function submit(event) {
      event.preventDefault();
      if (!(numberOf(um.value) > 0) || reason.value.trim() === '') {
        setText(said, 'A correction needs a thickness in µm and a reason.');
        return (numberOf(um.value) > 0 ? reason : um).focus();
      }
      const reading = { part: part.value, operator: operator.value, trial: Number(trial.value), layer: layer.value, um: numberOf(um.value) };
      await keep({ readings: [reading], why: reason.value.trim() }, `Corrected; the reading before is kept beside it.`);
    }
    return [el('summary', {}, study.corrections > 0 ? `Correct a reading (${study.corrections} so far)` : 'Correct a reading'),
      el('form', { novalidate: true, on: { submit } },
        ...[[part, study.kind === 'crossed' ? 'Spot' : 'Piece'], [operator, 'Operator'], [trial, 'Trial'], [layer, 'Layer'], [um, 'Thickness µm'], [reason, 'Why']].map(([input, words]) => el('div', {}, el('label', { for: input.id }, words), input)),
        el('button', { type: 'submit', class: 'quiet', disabled: !may('send-files') }, 'Correct it'))];
  }
  return { node, show };
}

/** Decimal point or comma. */
const numberOf = (text) => Number(text.trim().replace(',', '.'));

export const loadStudy = (id) => getJson(`/api/v1/gauge-studies/${id}`);
