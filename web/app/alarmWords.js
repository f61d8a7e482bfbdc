/** An alarm in words. Pure. */
import { bySeverity, direction, layerName, shortTest } from './words.js';
import { list } from './format.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('alarms');

const RANK = { high: 0, medium: 1, low: 2 };

export function isWaiting({ state }) {
  return state === 'unacknowledged' || state === 'returned-unacknowledged';
}

/** Kept from people: shelved, out of service, or suppressed while the line is not running. */
export function isHeld({ state }) {
  return ['shelved', 'out-of-service', 'suppressed'].includes(state);
}

export function isActive({ state }) {
  return state === 'unacknowledged' || state === 'acknowledged';
}

/** What the alarm asks of people now. */
export function stateInWords(alarm) {
  const taken = takenInWords(alarm);
  if (alarm.closed) {
    return alarm.shownAt === null ? t('overHeld') : t('closed', { taken });
  }
  if (isHeld(alarm)) {
    return heldInWords(alarm);
  }
  switch (alarm.state) {
    case 'unacknowledged':
    case 'acknowledged':
      return t('still', { taken });
    case 'returned-unacknowledged':
      return alarm.returnedAt ? t('wentBackAt', { taken, at: momentOf(alarm.returnedAt) }) : t('wentBack', { taken });
    default:
      return alarm.returnedAt ? t('backAt', { taken, at: momentOf(alarm.returnedAt), missing: missing(alarm) }) : t('back', { taken, missing: missing(alarm) });
  }
}

function heldInWords({ state, hold }) {
  if (state === 'suppressed') {
    return t('suppressed');
  }
  if (!hold) {
    return t(state === 'shelved' ? 'shelved' : 'outOfService');
  }
  const { by, reason } = hold;
  return state === 'shelved' ? t('shelvedUntil', { until: momentOf(hold.until), by, reason }) : t('outOfServiceBy', { by, reason });
}

/** Who took it, and who has it now where that is somebody else. */
function takenInWords({ acknowledged, owner }) {
  if (!acknowledged) {
    return owner ? t('withOwner', { name: owner.name }) : t('nobodyTook');
  }
  const taken = { by: acknowledged.by, at: momentOf(acknowledged.at) };
  return owner && owner.name !== acknowledged.by ? t('takenNow', { ...taken, name: owner.name }) : t('takenBy', taken);
}

/** What still keeps it open. */
function missing({ finding }) {
  if (!finding) {
    return t('needsBoth');
  }
  return finding.code === 'not-found-yet' ? t('needsCause') : t('needsAction');
}

/** Which mark it wears. */
export function markOf(alarm) {
  return !alarm.closed && isActive(alarm) ? 'act' : 'calm';
}

/** Who waits comes first, then priority, then the newest; closed ones last. */
export function byUrgency(a, b) {
  return Number(a.closed) - Number(b.closed)
    || Number(isWaiting(b)) - Number(isWaiting(a))
    || (RANK[a.priority] ?? 3) - (RANK[b.priority] ?? 3)
    || Date.parse(b.openedAt) - Date.parse(a.openedAt);
}

export function layersInWords({ characteristics }) {
  return list(characteristics.map(layerName));
}

/** Signals of one layer and one test together: [{kind, position, name, words, count, last}], what says most first. */
export function groupedSignals({ signals }) {
  const groups = new Map();
  for (const signal of [...signals].sort(bySeverity)) {
    const key = JSON.stringify([signal.kind, signal.position, signal.chart, signal.test, signal.side]);
    const group = groups.get(key) ?? { ...signal, words: t('signalIs', { direction: direction(signal), test: shortTest(signal) }), count: 0, last: signal };
    group.count += 1;
    group.last = Date.parse(signal.takenAt) > Date.parse(group.last.takenAt) ? signal : group.last;
    groups.set(key, group);
  }
  return [...groups.values()];
}
