/** Verdicts, acts and indices of the report in words. */
import { length, number, um } from './format.js';
import { mark } from './marks.js';
import { room } from './text.js';

const t = await room('report');
const NEEDS = { BELOW: 'act', NOT_STABLE: 'watch', NOT_SHOWN: 'watch' };

export const verdictInWords = (verdict) => t(`verdict.${verdict}`);

/** A mark only where a person is needed. */
export function verdictMark(verdict) {
  return NEEDS[verdict] ? mark(NEEDS[verdict], t(`mark.${NEEDS[verdict]}`)) : null;
}

const FIGURES = {
  OUT_OF_SPEC: (figure) => number(figure, 0),
  BELOW: (figure) => number(figure, 3),
  NOT_STABLE: (figure) => number(figure, 0),
  UNEXPLAINED_ALARMS: (figure) => number(figure, 0),
  MISREAD: (figure) => number(100 * figure, 1),
  DATA_MISSING: (figure) => number(100 * figure, 0),
  NO_LIMITS: () => '',
  WEAK_LANE: (figure) => number(figure, 2),
  NOT_SHOWN: (figure) => number(figure, 2),
  GIVEAWAY: (figure) => length(figure, 2),
};

export function actInWords({ kind, characteristic, figure }) {
  return t(`act.${kind}`, { what: characteristic === '' ? t('theFilm') : characteristic, figure: FIGURES[kind](figure) });
}

/** Name of a layer, the total, a share. */
export function nameOf({ kind, name }) {
  return kind === 'TOTAL' ? t('total') : kind === 'SHARE' ? t('shareOf', { name }) : name;
}

/** From lower to upper limit, either of which may be missing. */
export function boundsInWords({ lower, upper }) {
  return lower === null && upper === null ? '\u2013' : `${lower === null ? '' : um(lower, 2)}\u2009\u2026\u2009${upper === null ? '' : um(upper, 2)}`;
}

/** "Cpk 1.52 (Ppk at least 1.31)" or why there is none. */
export function indexInWords({ kind, why, method, cpk, ppk, atLeast }) {
  if (kind === 'NONE') {
    return t(`why.${why}`);
  }
  const least = atLeast === null ? '' : ` ${t('atLeast', { figure: number(atLeast, 2) })}`;
  const percentiles = method === 'PERCENTILES' ? ` ${t('byPercentiles')}` : '';
  return kind === 'CAPABILITY' ? t('capability', { cpk: number(cpk, 2), ppk: number(ppk, 2) }) + least + percentiles : `${t('performance', { ppk: number(ppk, 2) })}${least}${percentiles}, ${t(`why.${why}`)}`;
}
