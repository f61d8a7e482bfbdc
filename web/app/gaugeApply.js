/** Gives readings the velocity of a calibration from a moment on: look first, then decide. */
import { postJson } from './api.js';
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { count, number, plural, micrometres as um } from './format.js';
import { isoOf } from './gaugeLines.js';
import { choice, field, moment, reasonForm, setChoices } from './gaugeParts.js';
import { may } from './person.js';
import { momentOf, nowMs, wallTime } from './plantClock.js';

const DAY_MS = 86_400_000;
const LIMITS = [['carry', 'Carry the limits along'], ['flag', 'Leave the limits, flagged']];

export function gaugeApply(changed) {
  const calibration = choice([]);
  const layer = choice([]);
  const from = moment();
  const limits = el('form', { on: { submit: (event) => event.preventDefault() } }, chips('limits', 'Limits computed before', LIMITS));
  const preview = el('div', { class: 'gauge-preview', role: 'status' });
  const look = el('button', { type: 'button', class: 'quiet', data: { action: 'preview-rescaling' }, on: { click: ask } }, 'Look what would happen');
  const decide = reasonForm('Re-scale the readings', 'decide', [], async (reason) => {
    const done = await postJson('/api/v1/calibrations/rescale', { ...body(), reason });
    decide.hidden = true;
    preview.replaceChildren();
    await changed();
    return `Version ${done.version}: ${plural(done.samples, 'sample')} since ${momentOf(done.from)} are shown with the new velocity${done.left > 0 ? `, ${count(done.left)} without readings stay as they were` : ''}.`;
  });
  const none = el('p', { class: 'soft' }, 'There is no calibration yet that could be applied.');
  const fields = el('div', {}, el('div', { class: 'gauge-row' }, field('Calibration', calibration), field('Line, film and layer', layer), field('From when on, plant time', from)), limits, look, preview, decide);
  let told = null;
  let layers = [];
  decide.hidden = true;
  limits.querySelector('input').checked = true;
  calibration.addEventListener('change', () => (offerLayers(), forget()));
  [layer, from, limits].forEach((input) => input.addEventListener('input', forget));

  function show(all) {
    told = all;
    setChoices(calibration, all.calibrations.map((one) => [String(one.id), `${one.id}: ${one.layer || one.resin}, ${number(one.found.velocityMps, 1)} m/s, ${momentOf(one.at)}`]));
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
    setChoices(layer, layers.map(({ line, structure, name }, at) => [String(at), `${line}, ${structure}, ${name}`]));
  }

  function forget() {
    decide.hidden = true;
    preview.replaceChildren();
  }

  const body = () => ({ ...layers[Number(layer.value)], name: undefined, calibration: Number(calibration.value), from: isoOf(from), limits: limits.elements.limits.value });

  async function ask() {
    setText(preview, 'Being worked out\u2026');
    try {
      const answer = await postJson('/api/v1/calibrations/preview', body());
      preview.replaceChildren(...previewWords(answer, limits.elements.limits.value));
      decide.hidden = answer.samples + answer.left === 0;
    } catch (error) {
      decide.hidden = true;
      setText(preview, `That cannot be applied. ${error.sentence ?? error.message}`);
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

function previewWords({ steps, samples, left, means, limitsScaledOtherwise, alarmsBefore, alarmsAfter }, limits) {
  const factors = steps.map(({ from, factor, offsetUm }) => `from ${momentOf(from)} times ${number(factor, 5)}${offsetUm === 0 ? '' : ` and ${number(offsetUm, 2)} µm`}`);
  return [
    el('p', {}, `${plural(samples, 'sample')}: ${factors.join('; ')}.`),
    left > 0 ? el('p', {}, `${plural(left, 'sample')} had their readings thinned away; their figures stay as they are.`) : null,
    el('table', {}, el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, 'Mean of these samples'), ['now', 'then'].map((words) => el('th', { scope: 'col', class: 'figure' }, `${words}, µm`)))),
      el('tbody', {}, means.map(({ characteristic, before, after }) => el('tr', {}, el('th', { scope: 'row' }, characteristic.name), el('td', { class: 'figure' }, um(before)), el('td', { class: 'figure' }, um(after)))))),
    el('p', {}, limitsWords(limitsScaledOtherwise, limits)),
    el('p', {}, alarmWords(alarmsBefore, alarmsAfter)),
    alarmsAfter && alarmsAfter.length > 0 ? el('details', {}, el('summary', {}, `The ${plural(alarmsAfter.length, 'alarm')} of then`), el('ul', {}, alarmsAfter.map(({ title, openedAt }) => el('li', {}, `${title}, ${momentOf(openedAt)}`)))) : null,
  ].filter(Boolean);
}

function limitsWords(versions, limits) {
  if (versions.length === 0) {
    return 'No limits were computed of readings at another velocity.';
  }
  const which = `${versions.length === 1 ? 'Version' : 'Versions'} ${versions.join(', ')} of the limits ${versions.length === 1 ? 'was' : 'were'} computed of readings at another velocity`;
  return limits === 'carry' ? `${which}; a new version of each is multiplied by the same factor.` : `${which} and will be flagged until somebody puts others in force.`;
}

function alarmWords(before, after) {
  return before === null ? 'There are too many samples to work the alarms out beforehand.' : `Alarms of these samples: ${count(before.length)} now, ${count(after.length)} then.`;
}
