/** Planning a gauge study: what it is to find out, which gauge, which film, which spots or pieces, who, how often. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { allow, signature } from './person.js';
import { studyDates } from './studyDates.js';
import { TOTAL } from './studyFigures.js';
import { KINDS } from './studyKinds.js';
import { studyPieces } from './studyPieces.js';
import { layerWord } from './studyWords.js';
import { room } from './text.js';

const t = await room('study');
const LONGEST = 500;

/** `planned(study)` is called with what was kept. */
export function studyPlan(structures, known, planned) {
  const kind = el('select', { id: 'plan-kind', on: { change: ofKind } }, KINDS.map((value) => el('option', { value }, t(`kind.${value}`))));
  const lead = el('p', { class: 'soft' });
  const layer = el('select', { id: 'plan-layer' });
  const pieces = studyPieces(known);
  const dates = studyDates();
  const gauge = el('input', { id: 'plan-gauge', maxlength: 60, autocomplete: 'off' });
  const film = el('select', { id: 'plan-film' }, structures.map(({ code, name }) => el('option', { value: code }, name === code ? code : `${code}: ${name}`)));
  const parts = el('textarea', { id: 'plan-parts', rows: 2 });
  parts.value = Array.from({ length: 10 }, (_, i) => i + 1).join(' ');
  const operators = el('textarea', { id: 'plan-operators', rows: 2 });
  const trials = el('input', { id: 'plan-trials', type: 'number', min: 2, max: 20, step: 1, value: 3, inputmode: 'numeric' });
  const purpose = el('textarea', { id: 'plan-purpose', rows: 2, maxlength: LONGEST });
  const sum = el('p', { class: 'soft', role: 'status' });
  const wanting = el('p', { class: 'said', role: 'status' });
  const layerField = field(layer, t('readAs'), t('readAsWhy'));
  let spots = null;
  let often = null;
  const form = el('form', { class: 'study-plan', novalidate: true, on: { submit, input: count } },
    el('h2', {}, t('plan')),
    el('div', { class: 'study-field' }, el('label', { for: 'plan-kind' }, t('whatToFind')), kind, lead),
    field(gauge, t('gaugeLabel')), field(film, t('film')),
    layerField, pieces.node, dates.node,
    spots = field(parts, t('markedSpots'), t('markedWhy')),
    field(operators, t('operators'), t('operatorsWhy')),
    often = field(trials, t('howOften'), t('howOftenWhy')),
    field(purpose, t('whyStudy')), sum,
    signature('decide'), allow(el('button', { type: 'submit', class: 'decide', data: { action: 'plan-study' } }, t('planIt')), 'decide'), wanting);

  const read = () => ({ ...ofAll(), ...(kind.value === 'crossed' ? ofSpots() : ofPieces()) });
  const ofAll = () => ({
    kind: kind.value, gauge: gauge.value.trim(), structure: film.value, purpose: purpose.value.trim(),
    operators: operators.value.split(/[,;\n]+/).map((name) => name.trim()).filter((name) => name !== ''),
  });
  const times = () => ({ trials: Math.trunc(Number(trials.value)) });
  const ofPieces = () => ({ layer: layer.value, pieces: pieces.read(), ...(kind.value === 'stability' ? dates.read() : times()) });
  const ofSpots = () => ({
    ...times(), parts: parts.value.split(/[\s,;]+/).filter((name) => name !== ''),
  });

  function ofKind() {
    const isCrossed = kind.value === 'crossed';
    setText(lead, t(`lead.${kind.value}`));
    spots.hidden = !isCrossed;
    layerField.hidden = isCrossed;
    pieces.show(kind.value);
    dates.node.hidden = kind.value !== 'stability';
    often.hidden = kind.value === 'stability';
    trials.max = isCrossed ? 20 : 200;
    trials.value = isCrossed ? 3 : 10;
    count();
  }

  function layersOfFilm() {
    const names = structures.find(({ code }) => code === film.value)?.layers ?? [];
    layer.replaceChildren(...[TOTAL, ...names].map((value) => el('option', { value }, layerWord(value))));
  }

  function count() {
    const plan = read();
    const layers = structures.find(({ code }) => code === plan.structure)?.layers.length ?? 0;
    if (plan.kind !== 'crossed') {
      const all = plan.kind === 'stability' ? plan.dates.length * plan.perDate : plan.pieces.length * plan.operators.length * plan.trials;
      return setText(sum, all > 0 ? t('inAll', { readings: t('readingsN', { n: all }) }) : '');
    }
    const steps = plan.parts.length * plan.operators.length * plan.trials;
    setText(sum, steps > 0 ? t('measured', { measurements: t('measurementsN', { n: steps }), readings: t('readingsN', { n: steps * layers }), layers: t('layersN', { n: layers }) }) : '');
  }

  async function submit(event) {
    event.preventDefault();
    const plan = read();
    const missing = [[gauge, plan.gauge, t('nameGauge')], [operators, plan.operators.join(''), t('nameWho')], [purpose, plan.purpose, t('writeWhy')]].find(([, value]) => value === '');
    const unknown = plan.pieces?.find(({ name, thicknessUm }) => name === '' || !(thicknessUm > 0));
    if (unknown || plan.pieces?.length === 0) {
      setText(wanting, t('pieceNeeds'));
      return pieces.node.querySelector('input').focus();
    }
    if (missing) {
      setText(wanting, missing[2]);
      return missing[0].focus();
    }
    try {
      planned(await postJson('/api/v1/gauge-studies', plan));
    } catch (error) {
      setText(wanting, t('notKept', { why: error.sentence ?? error.message }));
    }
  }
  film.addEventListener('change', layersOfFilm);
  layersOfFilm();
  ofKind();
  return form;
}

function field(input, words, more) {
  const note = more ? el('p', { class: 'soft', id: `${input.id}-note` }, more) : null;
  if (note) {
    input.setAttribute('aria-describedby', note.id);
  }
  return el('div', { class: 'study-field' }, el('label', { for: input.id }, words), note, input);
}
