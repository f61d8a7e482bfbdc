/** The words of the handover page: what each part is called, and what it says when there is nothing in it. */
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('handover');
const say = await sayings('alarms');

export const titleOf = (part) => t.maybe(`part.${part}`) ?? part;

export function nothingIn({ part, kept }) {
  return kept ? t.maybe(`none.${part}`) ?? t('noneElse') : t.maybe(`notKept.${part}`) ?? t('notKeptElse');
}

const OF_GAUGES = ['calibrate', 'rescale', 'gauge', 'check', 'doubt'];

/** Where a thing can be looked at; null where it has no page. */
export function linkOf(item) {
  const [kind, id] = item.key.split(' ');
  return kind === 'alarm' ? `/alarms.html#${id}` : kind === 'file' ? '/intake.html' : kind === 'line' ? '/' : OF_GAUGES.includes(kind) ? '/gauge.html' : null;
}

const STATES = {
  act: 'act', watch: 'watch', stale: 'stale', unacknowledged: 'act', 'returned-unacknowledged': 'act',
  refused: 'act', 'in quarantine': 'watch', 'to do': 'watch', failed: 'gauge', 'to decide': 'gauge',
};

/** Which mark a state has; null where nobody is needed. */
export const markOf = (state) => STATES[state] ?? null;

export const stateWords = (state) => t.maybe(`state.${state}`) ?? say(state);
