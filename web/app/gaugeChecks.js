/** Check standards: known films that a gauge is checked on at the start of a shift. */
import { postJson } from './api.js';
import { chips } from './chips.js';
import { el } from './elements.js';
import { number, um, unit } from './format.js';
import { checkDrawing } from './gaugeCheckDrawing.js';
import { choice, field, figure, fold, part, reasonForm, setChoices, text, umOf } from './gaugeParts.js';
import { mark } from './marks.js';
import { allow } from './person.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('gauge');
const VERDICTS = ['keep', 'leave-out'].map((word) => [word, t(`verdict.${word}`)]);

export function gaugeChecks(changed) {
  const doubts = el('div', {});
  const list = el('div', { class: 'gauge-standards' });
  const add = standardForm(changed);
  const node = part(t('checkStandards'), el('p', { class: 'gauge-words' }, t('checkLead')), doubts, list, fold(t('addStandard'), add.node));
  let shown = '';

  function show(told) {
    add.show(told);
    const now = JSON.stringify([told.standards, told.doubtful, told.linearity]);
    if (now !== shown) {
      shown = now;
      doubts.replaceChildren(...told.doubtful.map((one) => doubt(one, changed)));
      list.replaceChildren(...(told.standards.length === 0 ? [el('p', {}, t('noStandard'))] : told.standards.map((one) => standard(one, changed))), ...told.linearity.map(linearity).filter(Boolean));
    }
  }
  return { node, show };
}

function standard(one, changed) {
  const reading = figure();
  const note = text();
  const said = el('p', { class: 'said', role: 'status' });
  const form = el('form', { class: 'gauge-form gauge-reading', novalidate: true, on: { submit } },
    field(t('readingNow'), reading, unit()), field(t('note'), note), allow(el('button', { type: 'submit' }, t('noteCheck')), 'tend-alarms'), said);

  async function submit(event) {
    event.preventDefault();
    try {
      await postJson(`/api/v1/check-standards/${one.id}/readings`, { um: umOf(reading), note: note.value.trim() });
      await changed();
    } catch (error) {
      said.textContent = t('notNoted', { why: error.sentence ?? error.message });
    }
  }
  const last = one.readings.at(-1);
  return el('article', { data: { failed: String(Boolean(last?.failed)) } },
    el('h3', {}, t('standardIs', { name: one.name, um: um(one.thicknessUm), gauge: one.gauge })),
    el('p', {}, last ? [last.failed ? mark('gauge') : null, t(last.failed ? 'lastFailed' : 'lastGood', { um: um(last.um, 2), by: last.by, at: momentOf(last.at) })] : t('neverChecked')),
    el('p', { class: 'soft' }, `${t(`basis.${one.basis}`)} ${biasWords(one)}`),
    one.readings.length > 0 ? checkDrawing(one) : null,
    form);
}

function biasWords({ biasUm, uBiasUm, biasIsReal }) {
  if (biasUm === undefined || biasUm === null) {
    return '';
  }
  const figures = t(uBiasUm ? 'biasWithU' : 'biasIs', { bias: um(biasUm, 3), u: um(2 * uBiasUm, 3) });
  return t(biasIsReal ? 'biasReal' : 'biasChance', { figures });
}

function linearity({ gauge, slope, standardError, isReal }) {
  return slope === undefined || slope === null ? null : el('p', {}, t(isReal ? 'linearReal' : 'linearChance', { gauge, slope: number(slope * 100, 2), u: number(200 * standardError, 2) }));
}

function doubt(one, changed) {
  const { gauge, failedAt, um: read, after, before, samples, verdict } = one;
  const where = samples.map(({ line, count }) => t('samplesOf', { n: count, line })).join(', ') || t('noLineSaid');
  const span = `${after ? t('sinceGood', { at: momentOf(after) }) : t('sinceBeginning')}${before ? t('untilGood', { at: momentOf(before) }) : t('untilAgain')}`;
  return el('article', { class: 'gauge-doubt', data: { decided: String(verdict !== null) } },
    el('p', {}, verdict ? null : mark('gauge'), t('doubtful', { gauge, um: um(read, 2), at: momentOf(failedAt), where, span })),
    verdict ? el('p', { class: 'soft' }, t(verdict.verdict === 'keep' ? 'keptBy' : 'leftOutBy', { by: verdict.by, at: momentOf(verdict.at) }), el('q', {}, verdict.reason)) : decide(one, changed));
}

function decide({ check }, changed) {
  const what = el('div', {}, chips(`verdict-${check}`, t('theseSamples'), VERDICTS));
  what.querySelector('input').checked = true;
  return fold(t('decideAboutThem'), reasonForm(t('becomesOfThem'), 'decide', what, async (reason) => {
    await postJson(`/api/v1/check-standards/failures/${check}`, { verdict: what.querySelector('input:checked').value, reason });
    await changed();
    return t('decided');
  }));
}

function standardForm(changed) {
  const gauge = choice([]);
  const inputs = { name: text(), thickness: figure(), expanded: figure(), sigma: figure(), material: text() };
  const node = reasonForm(t('addThisStandard'), 'decide', el('div', { class: 'gauge-row' },
    field(t('gauge'), gauge), field(t('nameOnFilm'), inputs.name), field(t('thickness'), inputs.thickness, unit()), field(t('expandedK2'), inputs.expanded, unit()),
    field(t('deviationKnown'), inputs.sigma, unit()), field(t('material'), inputs.material)), async (reason) => {
    await postJson('/api/v1/check-standards', { gauge: gauge.value, name: inputs.name.value.trim(), thicknessUm: umOf(inputs.thickness), expandedUm: umOf(inputs.expanded), sigmaUm: umOf(inputs.sigma), material: inputs.material.value.trim(), reason });
    await changed();
    return t('kept');
  });
  return { node, show: ({ gauges }) => setChoices(gauge, gauges.map(({ name }) => [name, name])) };
}
