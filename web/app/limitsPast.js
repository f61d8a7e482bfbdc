/** Old against new: which alarms each set of limits would have raised on all that is stored, side by side. */
import { el } from './elements.js';
import { momentOf } from './plantClock.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('limits');
const say = await sayings('alarms');

const SHOWN = 8;

export function oldAgainstNew({ characteristics, alarmsUnderCurrent: old, alarmsUnderProposed: fresh }, stored) {
  const version = Math.max(0, ...characteristics.map(({ current }) => current?.version ?? 0));
  const hasNew = characteristics.some(({ proposed }) => proposed);
  return el('div', { class: 'past' },
    el('p', { class: 'soft' }, t('asIfOn', { n: stored })),
    el('div', { class: 'past-pair' },
      side('current', (alarms) => t(version > 0 ? 'underVersion' : 'withoutLimits', { version, alarms }), version > 0 ? old : null, fresh),
      side('proposed', (alarms) => t('underProposed', { alarms }), hasNew ? fresh : null, old)));
}

/** `alarms` is null where there are no such limits; `title` says how many there are. */
function side(name, title, alarms, others) {
  const known = new Set(others.map(keyOf));
  const items = [...(alarms ?? [])].reverse().map((alarm) => item(alarm, known.has(keyOf(alarm))));
  const [first, more] = [items.slice(0, SHOWN), items.slice(SHOWN)];
  return el('section', { data: { past: name, count: items.length } },
    el('h3', {}, title(alarms === null ? t('nonePossible') : items.length === 0 ? t('noAlarms') : t('alarms', { n: items.length }))),
    el('ul', { class: 'plain' }, first),
    more.length > 0 ? el('details', {}, el('summary', {}, t('earlierAlarms', { n: more.length })), el('ul', { class: 'plain' }, more)) : null);
}

function item(alarm, isInBoth) {
  return el('li', { data: { only: !isInBoth } },
    el('span', { class: 'past-title' }, say(alarm.title), isInBoth ? null : [' ', el('b', { class: 'only' }, t('onlyHere'))]),
    el('span', { class: 'soft' }, t('alarmWhere', { at: momentOf(alarm.openedAt), roll: alarm.roll, sample: alarm.sample })));
}

function keyOf({ title, roll, sample }) {
  return JSON.stringify([title, roll, sample]);
}
