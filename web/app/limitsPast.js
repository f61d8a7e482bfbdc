/** Old against new: which alarms each set of limits would have raised on all that is stored, side by side. */
import { el } from './elements.js';
import { plural } from './format.js';
import { momentOf } from './plantClock.js';

const SHOWN = 8;

export function oldAgainstNew({ characteristics, alarmsUnderCurrent: old, alarmsUnderProposed: fresh }, stored) {
  const version = Math.max(0, ...characteristics.map(({ current }) => current?.version ?? 0));
  const hasNew = characteristics.some(({ proposed }) => proposed);
  return el('div', { class: 'past' },
    el('p', { class: 'soft' }, `Each as if it had been in force and frozen all the time, on ${stored === 1 ? 'the one sample' : `all ${stored} samples`} stored.`),
    el('div', { class: 'past-pair' },
      side('current', version > 0 ? `Under version ${version}` : 'Without limits', version > 0 ? old : null, fresh),
      side('proposed', 'Under the proposed limits', hasNew ? fresh : null, old)));
}

/** `alarms` is null where there are no such limits. */
function side(name, title, alarms, others) {
  const known = new Set(others.map(keyOf));
  const items = [...(alarms ?? [])].reverse().map((alarm) => item(alarm, known.has(keyOf(alarm))));
  const [first, more] = [items.slice(0, SHOWN), items.slice(SHOWN)];
  return el('section', { data: { past: name, count: items.length } },
    el('h3', {}, `${title}: `, alarms === null ? 'no alarms possible' : plural(items.length, 'alarm').replace(/^0/, 'no')),
    el('ul', { class: 'plain' }, first),
    more.length > 0 ? el('details', {}, el('summary', {}, `${plural(more.length, 'earlier alarm')}`), el('ul', { class: 'plain' }, more)) : null);
}

function item(alarm, isInBoth) {
  return el('li', { data: { only: !isInBoth } },
    el('span', { class: 'past-title' }, alarm.title, isInBoth ? null : [' ', el('b', { class: 'only' }, 'only here')]),
    el('span', { class: 'soft' }, `${momentOf(alarm.openedAt)}, roll ${alarm.roll}, sample ${alarm.sample}`));
}

function keyOf({ title, roll, sample }) {
  return JSON.stringify([title, roll, sample]);
}
