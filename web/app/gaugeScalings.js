/** Readings that were given another velocity: each version with its steps, and the way to take it back. */
import { postJson } from './api.js';
import { el } from './elements.js';
import { number } from './format.js';
import { chips } from './chips.js';
import { fold, part, reasonForm } from './gaugeParts.js';
import { momentOf } from './plantClock.js';

const LIMITS = [['carry', 'Carry the limits along'], ['flag', 'Leave the limits, flagged']];

export function gaugeScalings(changed) {
  const list = el('div', {});
  const node = part('Readings with another velocity', list);
  let shown = '';

  function show({ made }) {
    const now = JSON.stringify(made.map(({ scalings }) => scalings));
    if (now === shown) {
      return;
    }
    shown = now;
    const all = made.flatMap(({ line, structure, layers, scalings }) => scalings.map((one) => ({ ...one, line, structure, layer: layers.find(({ position }) => position === one.position)?.name ?? `layer ${one.position}` })));
    all.sort((a, b) => Date.parse(b.at) - Date.parse(a.at));
    list.replaceChildren(all.length === 0
      ? el('p', {}, 'None: every reading is shown as the gauge exported it.')
      : el('ol', { class: 'plain gauge-list' }, all.map((one) => item(one, changed))));
  }
  return { node, show };
}

function item(one, changed) {
  const { line, structure, layer, version, takesBack, takenBack, steps, by, reason, at, calibration } = one;
  const what = takesBack > 0 ? `takes version ${takesBack} back` : steps.map(({ from, factor, offsetUm, velocityMps }) => `from ${momentOf(from)} on times ${number(factor, 5)}${offsetUm === 0 ? '' : ` and ${number(offsetUm, 2)} µm`} (${number(velocityMps, 1)} m/s)`).join('; ');
  return el('li', { data: { takenBack: String(takenBack) } },
    el('p', {}, el('strong', {}, `${layer}, ${line}, ${structure}, version ${version}`), `: ${what}. `, calibration ? `Calibration ${calibration}. ` : '', takenBack ? 'Taken back.' : ''),
    el('p', { class: 'soft' }, `${by}, ${momentOf(at)}: `, el('q', {}, reason)),
    takesBack > 0 || takenBack ? null : back(one, changed));
}

function back({ line, structure, position, version }, changed) {
  const limits = el('div', {}, chips(`back-${line}-${structure}-${position}-${version}`, 'Limits', LIMITS));
  limits.querySelector('input').checked = true;
  return fold('Take it back', reasonForm('Show these readings as before', 'decide', limits, async (reason) => {
    await postJson('/api/v1/calibrations/take-back', { line, structure, position, version, limits: limits.querySelector('input:checked').value, reason });
    await changed();
    return 'Taken back.';
  }));
}
