/** A calibration in steps: what is calibrated, pieces and readings, the result, and readings given the new velocity. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { number } from './format.js';
import { gaugeApply } from './gaugeApply.js';
import { choice, field, figure, numberOf, part, reasonForm, setChoices, withUncertainty } from './gaugeParts.js';
import { gaugePieces } from './gaugePieces.js';
import { may } from './person.js';

const TYPING_MS = 400;

export function gaugeCalibrate(changed) {
  const gauge = choice([]);
  const layer = choice([]);
  const velocity = figure();
  const offset = figure();
  const pieces = gaugePieces(() => workOut());
  const result = el('div', { class: 'gauge-result', role: 'status' });
  const apply = gaugeApply(changed);
  let layers = [];
  let timer = null;
  let asked = 0;
  layer.addEventListener('change', takeLayer);
  [gauge, velocity, offset].forEach((input) => input.addEventListener('input', () => workOut()));

  const keep = reasonForm('Keep this calibration', 'decide', [], async (reason) => {
    const kept = await postJson('/api/v1/calibrations', { ...body(), reason });
    await changed();
    apply.offer(kept);
    return `Calibration ${kept.id} is kept. Readings are as before until you apply it below.`;
  });
  const node = part('Calibrate a layer',
    step('1', 'What is calibrated', el('div', { class: 'gauge-row' }, field('Gauge', gauge), field('Layer', layer), field('Velocity set before', velocity, 'm/s'), field('Zero offset before', offset, 'ns')),
      el('p', { class: 'soft' }, 'Best on a thicker film of the same resin, cooled the same way and as warm as the film is when it is measured.')),
    step('2', 'Pieces of known thickness', pieces.node),
    step('3', 'What that gives', result, keep),
    step('4', 'Give readings this velocity', apply.node));

  function show(told) {
    setChoices(gauge, told.gauges.map(({ name }) => [name, name]));
    const known = new Map();
    told.made.forEach(({ structure, layers: reported }) => reported.forEach(({ members }) => members.forEach((member) => known.set(`${structure}\n${member.name}`, { structure, ...member }))));
    const isFirst = layers.length === 0;
    layers = [...known.values()];
    setChoices(layer, layers.map(({ structure, name, resin }, at) => [String(at), `${name}${resin ? ` (${resin})` : ''}, ${structure}`]));
    if (isFirst) {
      takeLayer();
    }
    apply.show(told);
  }

  function takeLayer() {
    const one = layers[Number(layer.value)];
    velocity.value = one?.velocityMps ?? '';
    offset.value = one?.offsetNs ?? 0;
    workOut();
  }

  /** What the server is asked, or null where something is missing yet. */
  function body() {
    const one = layers[Number(layer.value)];
    const read = pieces.read();
    const before = { velocityMps: numberOf(velocity), offsetNs: numberOf(offset) ?? 0 };
    return one && gauge.value && read && before.velocityMps > 0 ? { gauge: gauge.value, structure: one.structure, layer: one.name, resin: one.resin, before, pieces: read } : null;
  }

  function workOut() {
    clearTimeout(timer);
    timer = setTimeout(ask, TYPING_MS);
  }

  async function ask() {
    const mine = ++asked;
    const question = body();
    keep.hidden = !question;
    if (!may('decide')) {
      keep.hidden = true;
      return setText(result, 'To calibrate is for engineers and quality. What was found stands below for everybody.');
    }
    if (!question) {
      return setText(result, gauge.value ? 'Fill in a piece and its readings; the result shows here at once.' : 'Add a gauge first, above.');
    }
    try {
      const answer = await postJson('/api/v1/calibrations/work-out', question);
      if (mine === asked) {
        result.replaceChildren(...resultWords(answer));
      }
    } catch (error) {
      keep.hidden = true;
      setText(result, `No result. ${error.sentence ?? error.message}`);
    }
  }
  return { node, show };
}

function step(at, title, ...body) {
  return el('div', { class: 'gauge-step' }, el('h3', {}, el('span', { class: 'gauge-step-number' }, at), ` ${title}`), body);
}

function resultWords({ before, found, factor, doubts, degrees }) {
  return [
    el('p', { class: 'gauge-figure' }, `${number(before.velocityMps, 1)} \u2192 ${number(found.velocityMps, 1)} m/s`),
    el('dl', { class: 'gauge-facts' },
      fact('Velocity', withUncertainty(found.velocityMps, found.uVelocityMps, 1, 'm/s')),
      fact('Zero offset', found.uOffsetNs > 0 ? withUncertainty(found.offsetNs, found.uOffsetNs, 2, 'ns') : `${number(found.offsetNs, 2)} ns, taken over`),
      fact('A reading', `times ${number(factor, 5)}: ${number(Math.abs(factor - 1) * 100, 2)} % ${factor >= 1 ? 'thicker' : 'thinner'} than exported`),
      found.chance === undefined || found.chance === null ? null : fact('One line?', `chi-square ${number(found.chiSquare, 1)} with ${found.degrees ?? degrees} degrees of freedom, chance ${number(found.chance, 3)}`)),
    doubts.length === 0 ? el('p', { class: 'soft' }, 'Nothing speaks against it.') : el('ul', { class: 'gauge-doubts' }, doubts.map((words) => el('li', {}, words))),
  ];
}

const fact = (word, value) => el('div', {}, el('dt', {}, word), el('dd', {}, value));
