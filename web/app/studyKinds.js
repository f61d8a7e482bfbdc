/** The kinds of gauge studies, in words. Pure. */
import { list, um } from './format.js';
import { layerWord } from './studyWords.js';
import { room } from './text.js';

const t = await room('study');

export const KINDS = ['crossed', 'bias', 'linearity', 'stability'];

/** A piece with its value and uncertainty. */
export function pieceWords({ name, thicknessUm, expandedUm, k }) {
  return t(expandedUm > 0 ? 'pieceU' : 'piece', { name, um: um(thicknessUm), u: um(expandedUm, 2), k: String(k) });
}

/** What is measured, how often and by whom. */
export function extentOf({ kind, parts, operators, trials, pieces, dates, perDate, layers }) {
  const common = { who: list(operators), trials: String(trials), layer: layerWord(layers[0].name) };
  if (kind === 'crossed') {
    return t('extentSpots', { ...common, spots: t('spotsN', { n: parts.length }) });
  }
  return kind === 'stability'
    ? t('extentDates', { ...common, pieces: pieceWords(pieces[0]), dates: t('datesN', { n: dates.length }), from: dates[0], to: dates.at(-1), readings: t('readingsN', { n: perDate }) })
    : t('extentPieces', { ...common, pieces: pieces.map(pieceWords).join('; ') });
}
