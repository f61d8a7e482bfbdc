/** Readings that were given another velocity: each version with its steps, and the way to take it back. */
import { postJson } from './api.js';
import { chips } from './chips.js';
import { el } from './elements.js';
import { number } from './format.js';
import { fold, part, reasonForm } from './gaugeParts.js';
import { readingsPlace } from './gaugePlaces.js';
import { stepWords } from './gaugePreview.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('gauge');
/** Where temperatures count, only the second: each reading moves by another amount. */
const LIMITS = ['carry', 'flag'].map((word) => [word, t(`limits.${word}`)]);

export function gaugeScalings(changed) {
  const list = el('div', {});
  const node = part(t('otherVelocity'), list);
  let shown = '';

  function show({ made }) {
    const now = JSON.stringify(made.map(({ scalings }) => scalings));
    if (now === shown) {
      return;
    }
    shown = now;
    const all = made.flatMap(({ line, structure, layers, scalings }) => scalings.map((one) => ({ ...one, line, structure, layer: layers.find(({ position }) => position === one.position)?.name ?? t('layerNumber', { position: one.position }) })));
    all.sort((a, b) => Date.parse(b.at) - Date.parse(a.at));
    list.replaceChildren(all.length === 0
      ? el('p', {}, t('allAsExported'))
      : el('ol', { class: 'plain gauge-list' }, all.map((one) => item(one, changed))));
  }
  return { node, show };
}

function item(one, changed) {
  const { takesBack, takenBack, steps, by, reason, at, calibration } = one;
  const what = takesBack > 0 ? t('takesBack', { version: takesBack }) : steps.map(whole).join('; ');
  return el('li', { id: readingsPlace(one), data: { takenBack: String(takenBack) } },
    el('p', {}, el('strong', {}, t('versionOf', one)), `: ${what}. `, calibration ? `${t('calibrationNo', { id: calibration })} ` : '', takenBack ? t('takenBack') : ''),
    el('p', { class: 'soft' }, t('byAt', { by, at: momentOf(at) }), el('q', {}, reason)),
    takesBack > 0 || takenBack ? null : back(one, changed));
}

function whole(step) {
  const params = { step: stepWords(step), mps: number(step.velocityMps, 1) };
  return step.temperatureC === undefined ? t('stepMps', params) : t('stepWarm', { ...params, at: number(step.temperatureC, 1), percent: number(step.percentPerKelvin, 2) });
}

function back({ line, structure, position, version, steps }, changed) {
  const isWarm = steps.some(({ temperatureC }) => temperatureC !== undefined);
  const limits = el('div', {}, chips(`back-${line}-${structure}-${position}-${version}`, t('limitsWord'), isWarm ? LIMITS.slice(1) : LIMITS));
  limits.querySelector('input').checked = true;
  return fold(t('takeItBack'), reasonForm(t('asBefore'), 'decide', limits, async (reason) => {
    await postJson('/api/v1/calibrations/take-back', { line, structure, position, version, limits: limits.querySelector('input:checked').value, reason });
    await changed();
    return t('takenBack');
  }));
}
