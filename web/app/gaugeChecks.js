/** Check standards: known films that a gauge is checked on at the start of a shift. */
import { postJson } from './api.js';
import { chips } from './chips.js';
import { el } from './elements.js';
import { number, plural, micrometres as um } from './format.js';
import { checkDrawing } from './gaugeCheckDrawing.js';
import { choice, field, figure, fold, numberOf, part, reasonForm, setChoices, text } from './gaugeParts.js';
import { mark } from './marks.js';
import { allow } from './person.js';
import { momentOf } from './plantClock.js';

const VERDICTS = [['keep', 'Keep them'], ['leave-out', 'Leave them out of the charts']];
const BASES = {
  stated: 'Limits about the reference thickness, from the stated deviation of readings.',
  'first-readings': 'Limits from the first eight readings.',
  reference: 'Limits from the uncertainty of the reference alone, until there are eight readings.',
  'none-yet': 'No limits yet: they come with the eighth reading.',
};

export function gaugeChecks(changed) {
  const doubts = el('div', {});
  const list = el('div', { class: 'gauge-standards' });
  const add = standardForm(changed);
  const node = part('Check standards', el('p', { class: 'gauge-words' }, 'A known film at the start of each shift, and after every change of the probe. One beyond its limits makes the samples since the last good check doubtful.'), doubts, list, fold('Add a check standard', add.node));
  let shown = '';

  function show(told) {
    add.show(told);
    const now = JSON.stringify([told.standards, told.doubtful, told.linearity]);
    if (now !== shown) {
      shown = now;
      doubts.replaceChildren(...told.doubtful.map((one) => doubt(one, changed)));
      list.replaceChildren(...(told.standards.length === 0 ? [el('p', {}, 'No check standard yet.')] : told.standards.map((one) => standard(one, changed))), ...told.linearity.map(linearity).filter(Boolean));
    }
  }
  return { node, show };
}

function standard(one, changed) {
  const reading = figure();
  const note = text();
  const said = el('p', { class: 'said', role: 'status' });
  const form = el('form', { class: 'gauge-form gauge-reading', novalidate: true, on: { submit } },
    field('Reading now', reading, 'µm'), field('Note', note), allow(el('button', { type: 'submit' }, 'Note this check'), 'tend-alarms'), said);

  async function submit(event) {
    event.preventDefault();
    try {
      await postJson(`/api/v1/check-standards/${one.id}/readings`, { um: numberOf(reading), note: note.value.trim() });
      await changed();
    } catch (error) {
      said.textContent = `Not noted. ${error.sentence ?? error.message}`;
    }
  }
  const last = one.readings.at(-1);
  return el('article', { data: { failed: String(Boolean(last?.failed)) } },
    el('h3', {}, `${one.name}, ${um(one.thicknessUm)} µm, gauge ${one.gauge}`),
    el('p', {}, last ? [last.failed ? mark('gauge') : null, ` Last ${um(last.um, 2)} µm, ${last.by}, ${momentOf(last.at)}: ${last.failed ? 'beyond its limits' : 'good'}.`] : 'Never checked yet.'),
    el('p', { class: 'soft' }, `${BASES[one.basis]} ${biasWords(one)}`),
    one.readings.length > 0 ? checkDrawing(one) : null,
    form);
}

function biasWords({ biasUm, uBiasUm, biasIsReal }) {
  if (biasUm === undefined || biasUm === null) {
    return '';
  }
  const figures = `${number(biasUm, 3)}${uBiasUm ? ` ± ${number(2 * uBiasUm, 3)}` : ''} µm`;
  return biasIsReal ? `The gauge reads off by ${figures}: more than chance. Calibrate it.` : `Bias ${figures}: no more than chance.`;
}

function linearity({ gauge, slope, standardError, isReal }) {
  return slope === undefined || slope === null ? null : el('p', {}, `Gauge ${gauge}, thin against thick: the bias changes by ${number(slope * 100, 2)} ± ${number(200 * standardError, 2)} % of the thickness, ${isReal ? 'more than chance: velocity or zero offset is off.' : 'no more than chance.'}`);
}

function doubt(one, changed) {
  const { gauge, failedAt, um: read, after, before, samples, verdict } = one;
  const where = samples.map(({ line, count }) => `${plural(count, 'sample')} of ${line}`).join(', ') || 'no line was said to be measured by it';
  const span = `${after ? `since the good check of ${momentOf(after)}` : 'since the beginning'}${before ? ` until that of ${momentOf(before)}` : ', until a check is good again'}`;
  return el('article', { class: 'gauge-doubt', data: { decided: String(verdict !== null) } },
    el('p', {}, verdict ? null : mark('gauge'), ` Gauge ${gauge} read ${um(read, 2)} µm at ${momentOf(failedAt)}, beyond its limits. Doubtful: ${where}, ${span}.`),
    verdict ? el('p', { class: 'soft' }, `${verdict.verdict === 'keep' ? 'Kept' : 'Marked to be left out'} by ${verdict.by}, ${momentOf(verdict.at)}: `, el('q', {}, verdict.reason)) : decide(one, changed));
}

function decide({ check }, changed) {
  const what = el('div', {}, chips(`verdict-${check}`, 'These samples', VERDICTS));
  what.querySelector('input').checked = true;
  return fold('Decide about them', reasonForm('This is what becomes of them', 'decide', what, async (reason) => {
    await postJson(`/api/v1/check-standards/failures/${check}`, { verdict: what.querySelector('input:checked').value, reason });
    await changed();
    return 'Decided.';
  }));
}

function standardForm(changed) {
  const gauge = choice([]);
  const inputs = { name: text(), thickness: figure(), expanded: figure(), sigma: figure(), material: text() };
  const node = reasonForm('Add this standard', 'decide', el('div', { class: 'gauge-row' },
    field('Gauge', gauge), field('Name on the film', inputs.name), field('Thickness', inputs.thickness, 'µm'), field('Expanded uncertainty U (k = 2)', inputs.expanded, 'µm'),
    field('Deviation of single readings, if known', inputs.sigma, 'µm'), field('Material', inputs.material)), async (reason) => {
    await postJson('/api/v1/check-standards', { gauge: gauge.value, name: inputs.name.value.trim(), thicknessUm: numberOf(inputs.thickness), expandedUm: numberOf(inputs.expanded), sigmaUm: numberOf(inputs.sigma), material: inputs.material.value.trim(), reason });
    await changed();
    return 'Kept.';
  });
  return { node, show: ({ gauges }) => setChoices(gauge, gauges.map(({ name }) => [name, name])) };
}
