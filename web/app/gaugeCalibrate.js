/** A calibration in steps: what is calibrated, pieces and readings, the result, and readings given the new velocity. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { number } from './format.js';
import { gaugeApply } from './gaugeApply.js';
import { choice, field, figure, numberOf, part, reasonForm, setChoices, withUncertainty } from './gaugeParts.js';
import { gaugePieces } from './gaugePieces.js';
import { may } from './person.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('gauge');
const say = await sayings('gauge');
const TYPING_MS = 400;

export function gaugeCalibrate(changed) {
  const gauge = choice([]);
  const layer = choice([]);
  const velocity = figure();
  const offset = figure();
  const celsius = figure();
  const percent = figure();
  const pieces = gaugePieces(() => workOut());
  const result = el('div', { class: 'gauge-result', role: 'status' });
  const apply = gaugeApply(changed);
  let layers = [];
  let timer = null;
  let asked = 0;
  layer.addEventListener('change', takeLayer);
  [gauge, velocity, offset, celsius, percent].forEach((input) => input.addEventListener('input', () => workOut()));

  const keep = reasonForm(t('keepCalibration'), 'decide', [], async (reason) => {
    const kept = await postJson('/api/v1/calibrations', { ...body(), reason });
    await changed();
    apply.offer(kept);
    return t('calibrationKept', { id: kept.id });
  });
  const node = part(t('calibrateLayer'),
    step('1', t('whatCalibrated'), el('div', { class: 'gauge-row' }, field(t('gauge'), gauge), field(t('layer'), layer), field(t('velocityBefore'), velocity, 'm/s'), field(t('offsetBefore'), offset, 'ns')),
      el('p', { class: 'soft' }, t('bestOn'))),
    step('2', t('knownPieces'), pieces.node,
      el('div', { class: 'gauge-row' }, field(t('temperature'), celsius, '°C'), field(t('coefficient'), percent, t('perKelvin'))),
      el('p', { class: 'soft' }, t('temperatureHint'))),
    step('3', t('whatGives'), result, keep),
    step('4', t('giveVelocity'), apply.node));

  function show(told) {
    setChoices(gauge, told.gauges.map(({ name }) => [name, name]));
    const known = new Map();
    told.made.forEach(({ structure, layers: reported }) => reported.forEach(({ members }) => members.forEach((member) => known.set(`${structure}\n${member.name}`, { structure, ...member }))));
    const isFirst = layers.length === 0;
    layers = [...known.values()];
    setChoices(layer, layers.map(({ structure, name, resin }, at) => [String(at), t(resin ? 'member' : 'memberPlain', { name, resin, structure })]));
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
    return one && gauge.value && read && before.velocityMps > 0 && !isHalfWarm() ? { gauge: gauge.value, structure: one.structure, layer: one.name, resin: one.resin, before, pieces: read, ...temperature() } : null;
  }

  const temperature = () => (numberOf(celsius) === null ? {} : { temperatureC: numberOf(celsius), percentPerKelvin: numberOf(percent) });

  /** One of temperature and coefficient says nothing without the other. */
  const isHalfWarm = () => (numberOf(celsius) === null) !== (numberOf(percent) === null);

  function missing() {
    return t(!gauge.value ? 'gaugeFirst' : isHalfWarm() ? 'bothTemperatures' : 'fillPiece');
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
      return setText(result, t('onlyDeciders'));
    }
    if (!question) {
      return setText(result, missing());
    }
    try {
      const answer = await postJson('/api/v1/calibrations/work-out', question);
      if (mine === asked) {
        result.replaceChildren(...resultWords(answer));
      }
    } catch (error) {
      keep.hidden = true;
      setText(result, t('noResult', { why: error.sentence ?? error.message }));
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
      fact(t('velocity'), withUncertainty(found.velocityMps, found.uVelocityMps, 1, 'm/s')),
      fact(t('zeroOffset'), found.uOffsetNs > 0 ? withUncertainty(found.offsetNs, found.uOffsetNs, 2, 'ns') : t('takenOver', { value: number(found.offsetNs, 2) })),
      fact(t('aReading'), t(factor >= 1 ? 'thicker' : 'thinner', { factor: number(factor, 5), percent: number(Math.abs(factor - 1) * 100, 2) })),
      found.chance === undefined || found.chance === null ? null : fact(t('oneLine'), t('chiSquare', { value: number(found.chiSquare, 1), degrees: String(found.degrees ?? degrees), chance: number(found.chance, 3) }))),
    doubts.length === 0 ? el('p', { class: 'soft' }, t('nothingAgainst')) : el('ul', { class: 'gauge-doubts' }, doubts.map((words) => el('li', {}, say(words)))),
  ];
}

const fact = (word, value) => el('div', {}, el('dt', {}, word), el('dd', {}, value));
