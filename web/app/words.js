/** What states, tests and roles are called, in the plain words that every screen uses. */
import { room } from './text.js';

const t = await room('words');

export const ROLES = Object.fromEntries(['skin', 'core', 'tie', 'barrier', 'seal'].map((role) => [role, t(`role.${role}`)]));

/** Tests that say nothing about thicker or thinner. */
const PATTERNS = ['stratification', 'mixture', 'alternation'];

/** The test that says most comes first. */
const WEIGHT = ['beyond-limit', 'two-of-three', 'four-of-five', 'eight-in-a-row', 'trend', 'mixture', 'alternation', 'stratification'];

export function shortTest({ chart, test }) {
  return chart === 'ewma' ? t('short.ewma') : t.maybe(`short.${test}`) ?? test;
}

export function bySeverity(a, b) {
  return WEIGHT.indexOf(a.test) - WEIGHT.indexOf(b.test);
}

/** Thicker, thinner or more spread: what the signal says about the film. */
export function direction({ chart, test, side }) {
  if (chart === 'range') {
    return t('spreadWider');
  }
  if (PATTERNS.includes(test)) {
    return t('pattern');
  }
  return t(side === 'high' ? 'thicker' : 'thinner');
}

/** Why the point is ringed, for somebody who never learned the rules. */
export function explain({ chart, test, side }) {
  if (chart === 'range') {
    return t('explain.range');
  }
  const way = side === 'high' ? 'high' : 'low';
  return t.maybe(`explain.${chart === 'ewma' ? 'ewma' : test}.${way}`) ?? t.maybe(`explain.${test}`) ?? t('explain.other', { test });
}

/** What a test looks for, before anything was found. */
export function rule({ chart, test }) {
  if (chart === 'range') {
    return t('rule.range');
  }
  return chart === 'ewma' ? t('rule.ewma') : t(`rule.${test}`);
}

/** A layer by the name that the plant gave it, else by its position; the total by ours. */
export function layerName({ position, name }) {
  return position === 0 ? t('total') : name || t('layerAt', { position });
}

/** The roles and extruders of a layer in a few words. */
export function makeUp({ kind, roles = [], extruders = [] }) {
  if (kind === 'total') {
    return t('allLayers');
  }
  const role = roles.map((name) => ROLES[name] ?? name).join(' + ');
  const fed = extruders.length > 0 ? t('fedBy', { extruders: extruders.join(', ') }) : '';
  return [role, fed].filter(Boolean).join(', ');
}

/** While limits are collected, on trial or retired, nothing raises an alarm. */
export function raisesAlarms({ state }) {
  return !['collecting', 'trial', 'retired'].includes(state);
}

/** What the limits of a line are worth today. */
export function limitsInWords({ state, version, subgroups }) {
  return t.maybe(`limits.${state}`, { version, n: subgroups }) ?? t('limits.other', { version, state });
}
