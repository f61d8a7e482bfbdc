/**
 * Numbers and ages as people read them, with the decimal sign and the unit of length that were chosen. Lengths come in um.
 * Thickness is rounded to what a gauge can resolve.
 */
import { decimalSign, locale, unitOf } from './choices.js';

const FIGURE_SPACE = '\u2007';
const LISTS = new Intl.ListFormat(locale(), { type: 'conjunction' });
const CHOICES = new Intl.ListFormat(locale(), { type: 'disjunction' });
const MINUS = '\u2212';

/** Decimals that suit a thickness of this size, for `um`. */
export function decimalsFor(referenceUm) {
  return Math.abs(referenceUm) < 20 ? 2 : 1;
}

/** The sign of the unit of length: µm or mil. */
export const unit = () => unitOf().sign;

/** A thickness in um as a number of the unit that was chosen, for scales and ticks. */
export const inUnit = (um) => um * unitOf().perUm;

/** The same the other way. */
export const fromUnit = (length) => length / unitOf().perUm;

/** A thickness in um, written in the unit that was chosen, without its sign; a dash where there is none. `decimals` are those for um. */
export function um(value, decimals = decimalsFor(value)) {
  return isNumber(value) ? number(inUnit(value), decimals + unitOf().moreDecimals) : '\u2013';
}

/** A thickness with its unit, not to be parted. */
export const length = (value, decimals = decimalsFor(value)) => `${um(value, decimals)}\u202f${unit()}`;

/** Like `um`, padded with figure spaces so that a right-aligned column stays aligned on the decimal. */
export function umAligned(value, decimals, columnDecimals) {
  return um(value, decimals) + FIGURE_SPACE.repeat(Math.max(0, columnDecimals - decimals));
}

/** A plain number with a fixed count of decimals; a dash where there is none. */
export function number(value, decimals) {
  return isNumber(value) ? withoutMinusZero(value.toFixed(decimals)).replace('-', MINUS).replace('.', decimalSign()) : '\u2013';
}

const withoutMinusZero = (text) => (/[1-9]/.test(text) ? text : text.replace('-', ''));

/** A count with thin spaces between thousands. */
export function count(value) {
  return isNumber(value) ? String(value).replace(/\B(?=(\d{3})+$)/g, '\u202f') : '\u2013';
}

/** How long ago: 42 s, 12 min, 1 h 30 min, 3 d 4 h. */
export function age(seconds) {
  const s = Math.max(0, Math.floor(seconds));
  if (s < 60) {
    return `${s}\u00a0s`;
  }
  const minutes = Math.floor(s / 60);
  if (minutes < 60) {
    return `${minutes}\u00a0min`;
  }
  const hours = Math.floor(minutes / 60);
  return hours < 24 ? `${hours}\u00a0h ${minutes % 60}\u00a0min` : `${Math.floor(hours / 24)}\u00a0d ${hours % 24}\u00a0h`;
}

/** a, b and c */
export function list(words) {
  return LISTS.format(words.map(String));
}

/** a, b or c */
export function oneOf(words) {
  return CHOICES.format(words.map(String));
}

function isNumber(value) {
  return typeof value === 'number' && Number.isFinite(value);
}
