/** Entering the readings of a study, step by step in its random order, or from a file. */
import { getJson, postCsv, postJson } from './api.js';
import { el, setText } from './elements.js';
import { may, whyNot } from './person.js';
import { studyPaste } from './studyPaste.js';
import { layerWord } from './studyWords.js';
import { lengthIn } from './structureNumbers.js';
import { room } from './text.js';

const t = await room('study');
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
    el('h2', {}, t('measureEnter')),
    el('p', { class: 'soft' }, t('inThisOrder')),
    whyNot('send-files'), done,
    el('div', { class: 'table-frame', role: 'region', 'aria-label': t('nextSteps'), tabindex: 0 }, el('table', { class: 'study-table' }, el('thead', {}, head), body)), paste.node, said,
    el('div', { class: 'study-import' },
      el('label', { for: 'study-file' }, t('bringFile')),
      el('p', { class: 'soft' }, t('bringFileHow')), file,
      el('label', { for: 'study-why' }, t('whyChanges')), why),
    mending);
  let study = null;

  function show(next) {
    study = next;
    paste.show(study);
    const open = study.steps.map((step, i) => ({ step, place: i + 1 })).filter(({ step }) => step.um.includes(null));
    setText(done, t(open.length === 0 ? 'noneMissing' : 'toGo', { entered: String(study.entered), readings: t('readingsN', { n: study.readings }), steps: t('stepsN', { n: open.length }) }));
    head.replaceChildren(...[...['step', 'operator', study.kind === 'crossed' ? 'spot' : 'piece', study.kind === 'stability' ? 'date' : 'trial'].map((name) => t(`col.${name}`)), ...study.layers.map(({ name }) => t('layerUm', { name: layerWord(name) }))].map((words) => el('th', { scope: 'col' }, words)), el('th', { scope: 'col' }, el('span', { class: 'for-readers' }, t('keepTheRow'))));
    body.replaceChildren(...open.slice(0, ROWS_SHOWN).map(({ step, place }) => rowOf(step, place)));
    body.closest('.table-frame').hidden = open.length === 0;
    mending.hidden = study.entered === 0;
    mending.replaceChildren(...mendOf());
  }

  function rowOf(step, place) {
    const inputs = study.layers.map(({ name }, i) => el('input', { inputmode: 'decimal', autocomplete: 'off', size: 7, 'aria-label': t('inputOf', { layer: layerWord(name), part: step.part, operator: step.operator, when: step.date ?? t('trialIs', step) }), disabled: step.um[i] !== null || !may('send-files'), placeholder: step.um[i] !== null ? t('keptHint') : '', data: { layer: name }, on: { keydown } }));
    const keep = el('button', { type: 'button', class: 'quiet', disabled: !may('send-files'), data: { action: 'keep-step' }, on: { click: () => keepRow(step, inputs) } }, t('keep'));
    function keydown(event) {
      if (event.key === 'Enter') {
        event.preventDefault();
        const rest = inputs.slice(inputs.indexOf(event.target) + 1).find((input) => !input.disabled);
        rest ? rest.focus() : keepRow(step, inputs);
      }
    }
    return el('tr', {}, el('td', { class: 'soft' }, String(place)), el('td', {}, step.operator), el('th', { scope: 'row' }, step.part), el('td', { data: step.date ? {} : { word: t('col.trial') } }, step.date ?? String(step.trial)), inputs.map((input) => el('td', { data: { label: t('layerUm', { name: layerWord(input.dataset.layer) }) } }, input)), el('td', {}, keep));
  }

  async function keepRow({ part, operator, trial }, inputs) {
    const open = inputs.filter((input) => !input.disabled && input.value.trim() !== '');
    const readings = open.map((input) => ({ part, operator, trial, layer: input.dataset.layer, um: lengthIn(input.value.trim()) }));
    const wrong = open.find((input, i) => !readings[i].um);
    if (open.length === 0 || wrong) {
      setText(said, wrong ? t('noThickness', { typed: wrong.value }) : t('nothingInRow'));
      return (wrong ?? inputs.find((input) => !input.disabled)).focus();
    }
    if (await keep({ readings }, t('rowKept', { part, operator, trial: String(trial) }))) {
      body.querySelector('input:not([disabled])')?.focus();
    }
  }

  async function keep(readings, words) {
    setText(said, t('beingKept'));
    try {
      await postJson(`/api/v1/gauge-studies/${study.id}/readings`, readings);
      await changed();
      setText(said, words);
      return true;
    } catch (error) {
      setText(said, t('notKept', { why: error.sentence ?? error.message }));
      return false;
    }
  }

  async function chosen() {
    const [given] = file.files;
    file.value = '';
    setText(said, t('beingRead', { name: given.name }));
    try {
      const query = new URLSearchParams({ name: given.name, why: why.value.trim() });
      const taken = await postCsv(`/api/v1/gauge-studies/${study.id}/file?${query}`, given);
      why.value = '';
      await changed();
      setText(said, t('fileTaken', { name: given.name, fresh: t('readingsN', { n: taken.new }), known: String(taken.known), corrected: String(taken.corrected) }));
    } catch (error) {
      setText(said, t('fileNot', { name: given.name, why: error.sentence ?? error.message }));
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
      const thickness = lengthIn(um.value.trim());
      if (!thickness || reason.value.trim() === '') {
        setText(said, t('correctionNeeds'));
        return (thickness ? reason : um).focus();
      }
      const reading = { part: part.value, operator: operator.value, trial: Number(trial.value), layer: layer.value, um: thickness };
      await keep({ readings: [reading], why: reason.value.trim() }, t('corrected'));
    }
    return [el('summary', {}, study.corrections > 0 ? t('correctSoFar', { n: study.corrections }) : t('correct')),
      el('form', { novalidate: true, on: { submit } },
        ...[[part, t(study.kind === 'crossed' ? 'col.spot' : 'col.piece')], [operator, t('col.operator')], [trial, t('col.trial')], [layer, t('col.layer')], [um, t('thicknessUm')], [reason, t('why')]].map(([input, words]) => el('div', {}, el('label', { for: input.id }, words), input)),
        el('button', { type: 'submit', class: 'quiet', disabled: !may('send-files') }, t('correctIt')))];
  }
  return { node, show };
}

export const loadStudy = (id) => getJson(`/api/v1/gauge-studies/${id}`);
