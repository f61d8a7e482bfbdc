/**
 * Decides which mark a layer wears, and says why in words. Pure; knows nothing of drawing.
 *
 * act: an open alarm names the layer, or a reading is out of spec. watch: a test is fulfilled without an
 * alarm. note: the same while limits are trial. A line carries its open alarms as `alarms`.
 */
import { isActive } from './alarmWords.js';
import { bySeverity, direction, raisesAlarms, shortTest } from './words.js';
import { room } from './text.js';

const t = await room('board');

/** 'act' | 'watch' | 'gauge' | 'note' | 'missing' | 'calm' */
export function needOfLayer(layer, line) {
  if (layer.outOfSpec > 0) {
    return 'act';
  }
  if (layer.state === 'unusual') {
    return needOfUnusual(layer, line);
  }
  return ['missing', 'gauge'].includes(layer.state) ? layer.state : 'calm';
}

function needOfUnusual(layer, line) {
  if (!raisesAlarms(line.limits)) {
    return 'note';
  }
  const explained = line.alarms.length > 0 || line.state !== 'act';
  return alarmOf(layer, line) || !explained ? 'act' : 'watch';
}

/** The open alarm that names the layer and is still active, or undefined. */
export function alarmOf(layer, line) {
  const named = ({ kind, position }) => kind === layer.kind && position === layer.position;
  return line.alarms.find((alarm) => isActive(alarm) && alarm.characteristics.some(named));
}

/** The reasons beside a layer: [{mark: 'unusual' | 'gauge' | 'spec', words}]. */
export function reasons(layer, line) {
  const said = [];
  if (layer.state === 'unusual') {
    const [worst] = [...layer.signals].sort(bySeverity);
    const against = t(raisesAlarms(line.limits) ? 'unusual' : 'unusualTrial');
    said.push({ mark: 'unusual', words: worst ? t('unusualHow', { against, direction: direction(worst), test: shortTest(worst) }) : against });
  }
  if (layer.state === 'gauge') {
    said.push({ mark: 'gauge', words: t('misreadHeld', { kinds: line.heldOut?.words.join(', ') ?? t('leftOutByHand') }) });
  }
  if (layer.outOfSpec > 0) {
    said.push({ mark: 'spec', words: t('outOfSpec', { n: layer.outOfSpec }) });
  }
  return said;
}
