/** Decides which mark a layer or a line wears, and says why in words. Pure; knows nothing of drawing. */
import { bySeverity, direction, limitsInWords, shortTest } from './words.js';
import { plural } from './format.js';

/** 'act' | 'watch' | 'gauge' | 'missing' | 'calm'. Limits that are not frozen raise no alarm, so they advise only. */
export function needOfLayer(layer, limitsState) {
  if (layer.outOfSpec > 0) {
    return 'act';
  }
  if (layer.state === 'unusual') {
    return limitsState === 'frozen' ? 'act' : 'watch';
  }
  return ['missing', 'gauge'].includes(layer.state) ? layer.state : 'calm';
}

/** The reasons beside a layer: [{mark: 'unusual' | 'spec', words}]. */
export function reasons(layer) {
  const said = [];
  if (layer.state === 'unusual') {
    const [worst, ...others] = [...layer.signals].sort(bySeverity);
    const more = others.length > 0 ? ` +${others.length}` : '';
    const words = worst ? `unusual: ${direction(worst)} (${shortTest(worst)}${more})` : 'unusual';
    said.push({ mark: 'unusual', words });
  }
  if (layer.outOfSpec > 0) {
    said.push({ mark: 'spec', words: `${plural(layer.outOfSpec, 'reading')} out of spec` });
  }
  return said;
}

/** What a line's limits are worth, with the way on where there is one. */
export function limitsOfLine({ limits }) {
  const canFreeze = limits.state === 'trial';
  return { words: limitsInWords(limits), advice: canFreeze ? 'Freeze them' : null };
}
