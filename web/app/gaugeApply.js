/** Gives readings the velocity of a calibration from a moment on: look first, then decide. */
import { postJson } from './api.js';
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { number } from './format.js';
import { isoOf } from './gaugeLines.js';
import { choice, field, moment, reasonForm, setChoices } from './gaugeParts.js';
import { previewWords } from './gaugePreview.js';
import { longWork } from './longWork.js';
import { may } from './person.js';
import { momentOf, nowMs, wallTime } from './plantClock.js';
import { room } from './text.js';

const t = await room('gauge');
const DAY_MS = 86_400_000;

export function gaugeApply(changed) {
  const calibration = choice([]);
  const layer = choice([]);
  const from = moment();
  const limits = chosenOf('limits', t('limitsBefore'), ['carry', 'flag'].map((word) => [word, t(`limits.${word}`)]));
  const temperature = chosenOf('temperature', t('temperatureToo'), ['left-out', 'corrects'].map((word) => [word, t(`temperature.${word}`)]));
  const model = el('p', { class: 'soft' });
  const preview = el('div', { class: 'gauge-preview', role: 'status' });
  const look = el('button', { type: 'button', class: 'quiet', data: { action: 'preview-rescaling' }, on: { click: ask } }, t('look'));
  const decide = reasonForm(t('rescale'), 'decide', [], async (reason) => {
    const { version, samples, left, from: since } = await longWork(preview, t('beingKept'), (waiting) => postJson('/api/v1/calibrations/rescale', { ...body(), reason }, waiting));
    decide.hidden = true;
    preview.replaceChildren();
    await changed();
    return [t('shownWith', { n: samples, at: momentOf(since), version }), left > 0 ? t('leftAsTheyWere', { n: left }) : ''].join(' ');
  });
  const none = el('p', { class: 'soft' }, t('noneToApply'));
  const fields = el('div', { class: 'gauge-stack' }, el('div', { class: 'gauge-row' }, field(t('calibration'), calibration), field(t('lineFilmLayer'), layer), field(t('fromPlant'), from)), temperature, model, limits, look, preview, decide);
  let told = null;
  let layers = [];
  decide.hidden = true;
  calibration.addEventListener('change', () => (offerLayers(), forget()));
  temperature.addEventListener('input', leaveLimits);
  [layer, from, limits, temperature].forEach((input) => input.addEventListener('input', forget));

  function show(all) {
    told = all;
    setChoices(calibration, all.calibrations.map((one) => [String(one.id), t('calibrationIs', { id: one.id, what: one.layer || one.resin, mps: number(one.found.velocityMps, 1), at: momentOf(one.at) })]));
    none.hidden = all.calibrations.length > 0;
    fields.hidden = !none.hidden;
    look.disabled = !may('decide');
    from.value ||= wallTime(nowMs() - DAY_MS);
    offerLayers();
  }

  function offerLayers() {
    const chosen = told.calibrations.find(({ id }) => String(id) === calibration.value);
    const fits = (structure, name, members) => chosen && (chosen.structure === '' || chosen.structure === structure) && (chosen.layer === name || members.some((one) => (chosen.layer === '' ? one.resin === chosen.resin : one.name === chosen.layer)));
    layers = told.made.flatMap(({ line, structure, layers: all }) => all.filter(({ name, members }) => fits(structure, name, members)).map(({ position, name }) => ({ line, structure, position, name })));
    setChoices(layer, layers.map((one, at) => [String(at), t('place', one)]));
    offerTemperature(chosen);
  }

  function offerTemperature(chosen) {
    const isKnown = chosen?.temperatureC !== undefined;
    temperature.hidden = !isKnown;
    setText(model, isKnown ? t('byModel', { percent: number(chosen.percentPerKelvin, 2), at: number(chosen.temperatureC, 1) }) : t('noModel'));
  }

  /** Limits cannot be carried along where each reading moves by another amount. */
  function leaveLimits() {
    const isWarm = temperature.elements.temperature.value === 'corrects';
    limits.querySelector('input[value="carry"]').disabled = isWarm;
    if (isWarm) {
      limits.elements.limits.value = 'flag';
    }
  }

  function forget() {
    decide.hidden = true;
    preview.replaceChildren();
  }

  const body = () => ({ ...layers[Number(layer.value)], name: undefined, calibration: Number(calibration.value), from: isoOf(from), temperature: temperature.hidden ? 'left-out' : temperature.elements.temperature.value, limits: limits.elements.limits.value });

  async function ask() {
    setText(preview, t('beingWorkedOut'));
    try {
      const answer = await longWork(preview, t('beingWorkedOut'), (waiting) => postJson('/api/v1/calibrations/preview', body(), waiting));
      preview.replaceChildren(...previewWords(answer, body()));
      decide.hidden = answer.samples + answer.left === 0;
    } catch (error) {
      decide.hidden = true;
      setText(preview, t('cannotApply', { why: error.sentence ?? error.message }));
    }
  }

  /** Offers a calibration that was just kept. */
  function offer(kept) {
    calibration.value = String(kept.id);
    offerLayers();
    forget();
  }
  return { node: el('div', {}, none, fields), show, offer };
}

/** Chips of which the first is chosen. */
function chosenOf(name, legend, choices) {
  const form = el('form', { on: { submit: (event) => event.preventDefault() } }, chips(name, legend, choices));
  form.querySelector('input').checked = true;
  return form;
}
