/** Numbers of the structure pages as people type and read them: with either decimal sign, lengths in the unit that was chosen. Pure. */
import { decimalSign, unitOf } from './choices.js';
import { fromUnit, inUnit, number, unit } from './format.js';

const UNITS = { um: 1, 'µm': 1, 'μm': 1, mm: 1000, mil: 25.4, in: 25_400 };
const LENGTH = /^(\d+(?:[.,]\d+)?|[.,]\d+)\s*(um|µm|μm|mm|mil|in)?$/i;
const NUMBER = /^(?:\d+(?:[.,]\d+)?|[.,]\d+)$/;
const DECIMALS = 3;
/** So many digits of what was typed are kept; the rest is rounding. */
const DIGITS = 12;

const sign = (text) => text.replace('.', decimalSign());
const valueOf = (text) => Number(text.replace(',', '.'));

/** Without zeros at the end and without the unit; nothing where there is none. */
export function exact(um) {
  return um === undefined || um === null ? '' : sign(String(Number(inUnit(um).toFixed(DECIMALS + unitOf().moreDecimals))));
}

/** Lengths of a column with as many decimals as the one that needs most; a dash where there is none. */
export function evenly(lengths) {
  const decimals = Math.max(0, ...lengths.map((um) => (exact(um).split(decimalSign())[1] ?? '').length));
  return lengths.map((um) => number(um === undefined ? null : inUnit(um), decimals));
}

/** With the unit, not to be parted. */
export const exactLength = (um) => `${exact(um)}\u202f${unit()}`;

/** um; undefined where nothing is written, null where it is no length. */
export function lengthIn(text) {
  if (text === '') {
    return undefined;
  }
  const [, number, given] = text.match(LENGTH) ?? [];
  const um = number === undefined ? NaN : given ? valueOf(number) * UNITS[given.toLowerCase()] : fromUnit(valueOf(number));
  return um > 0 ? Number(um.toPrecision(DIGITS)) : null;
}

export const plainNumber = {
  write: (value) => sign(String(value)),
  read: (text) => (text === '' ? undefined : NUMBER.test(text) && valueOf(text) > 0 ? valueOf(text) : null),
};

/** "10 %" or a length, as so much about a target in um; undefined and null as above. */
export function toleranceIn(text, target) {
  const percent = text.match(/^(.*\S)\s*%$/);
  if (!percent) {
    return lengthIn(text);
  }
  const share = plainNumber.read(percent[1]);
  return share === null || share === undefined ? null : Number(((target * share) / 100).toPrecision(DIGITS));
}
