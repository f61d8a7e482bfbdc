/** A structure and what changed in it, in words. */
import { plainNumber, exactLength } from './structureNumbers.js';
import { room } from './text.js';

const t = await room('structures');
const UNITS = { density: 'g/cm³', velocity: 'm/s' };
const TEXTS = ['name', 'role', 'resin', 'extruder', 'layers'];

export const ROLES = ['skin', 'core', 'tie', 'barrier', 'seal'].map((role) => [role, t(`role.${role}`)]);

export const roleWord = (role) => t.maybe(`role.${role}`) ?? role;

/** "layer 3 Barrier: upper limit 5.5 µm → 6 µm" */
export function changeWords({ part, position, name, what, was, is }) {
  const where = part === 'layer' || part === 'reported' ? (position > 0 ? t(`at.${part}`, { position, name }) : t('at.gauge')) : t(`at.${part}`);
  if (what === 'added' || what === 'removed') {
    return t(what === 'added' ? 'added' : 'removed', { where });
  }
  if (what === 'moved') {
    return t('moved', { where, was, is });
  }
  const names = { where, what: t(`what.${what}`), was: valueWords(what, was), is: valueWords(what, is) };
  return t(was === null ? 'changeNew' : is === null ? 'changeGone' : 'change', names);
}

function valueWords(what, value) {
  if (value === null) {
    return t('none');
  }
  if (what === 'role') {
    return roleWord(value);
  }
  return TEXTS.includes(what) ? value : what in UNITS ? `${plainNumber.write(value)}\u202f${UNITS[what]}` : exactLength(value);
}

/** "13.3 µm to 14.7 µm", "at least 13.3 µm"; nothing where there are none. */
export function limitsWords({ lower, upper } = {}) {
  if (lower !== undefined && upper !== undefined) {
    return t('between', { lower: exactLength(lower), upper: exactLength(upper) });
  }
  return lower !== undefined ? t('atLeast', { lower: exactLength(lower) }) : upper !== undefined ? t('atMost', { upper: exactLength(upper) }) : '';
}

/** A file of one version, into the hand of the person. */
export function keepFile(name, text, type = 'application/yaml') {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
