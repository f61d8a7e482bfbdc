/** The kinds of gauge studies, in words. Pure. */
import { list, micrometres, plural } from './format.js';

export const KINDS = {
  crossed: { name: 'Spread between people and couplings', short: 'crossed', lead: 'Several people measure the same marked spots several times: how much of the spread is the gauge?' },
  bias: { name: 'Bias and repeatability on one piece', short: 'bias', lead: 'One reference piece, measured again and again: is the gauge off, and does it repeat?' },
  linearity: { name: 'Linearity over several pieces', short: 'linearity', lead: 'Reference pieces from thin to thick: does being off go with the thickness? Five are usual.' },
  stability: { name: 'Stability over time', short: 'stability', lead: 'One reference piece, measured on twenty dates or more: does the gauge stay as it is?' },
};

/** A piece with its value and uncertainty. */
export function pieceWords({ name, thicknessUm, expandedUm, k }) {
  return `${name}, ${micrometres(thicknessUm)}${expandedUm > 0 ? ` ± ${micrometres(expandedUm)}` : ''} µm${expandedUm > 0 ? ` (k ${k})` : ', uncertainty not stated'}`;
}

/** What is measured, how often and by whom. */
export function extentOf({ kind, parts, operators, trials, pieces, dates, perDate, layers }) {
  if (kind === 'crossed') {
    return `${plural(parts.length, 'spot')}, ${list(operators)}, ${trials} times each`;
  }
  const read = `read as ${layers[0].name}`;
  return kind === 'stability'
    ? `${pieceWords(pieces[0])}, ${read}; ${plural(dates.length, 'date')} from ${dates[0]} to ${dates.at(-1)}, ${plural(perDate, 'reading')} each`
    : `${pieces.map(pieceWords).join('; ')}, ${read}; ${list(operators)}, ${trials} times each`;
}
