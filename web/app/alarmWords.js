/** An alarm in words. Pure. */
import { bySeverity, direction, shortTest } from './words.js';
import { list } from './format.js';
import { momentOf } from './plantClock.js';

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
    return alarm.shownAt === null ? 'Over. It was held back all the time and asked nothing of anybody.' : `Closed. ${taken}.`;
  }
  if (isHeld(alarm)) {
    return heldInWords(alarm);
  }
  switch (alarm.state) {
    case 'unacknowledged':
      return `${taken}. Still unusual.`;
    case 'acknowledged':
      return `${taken}. Still unusual.`;
    case 'returned-unacknowledged':
      return `${taken}. It went back to usual by itself${since(alarm.returnedAt)}.`;
    default:
      return `${taken}. Back to usual${since(alarm.returnedAt)}. ${missing(alarm)}`;
  }
}

function heldInWords({ state, hold }) {
  if (state === 'suppressed') {
    return 'Suppressed: the line is not running. If it goes on when the line runs, it comes back.';
  }
  const by = hold ? ` by ${hold.by}: ${hold.reason}` : '';
  return state === 'shelved' ? `Shelved${hold ? ` until ${momentOf(hold.until)}` : ''}${by}` : `Out of service${by}`;
}

/** Who took it, and who has it now where that is somebody else. */
function takenInWords({ acknowledged, owner }) {
  if (!acknowledged) {
    return owner ? `With ${owner.name}, but not taken yet` : 'Nobody has taken it yet';
  }
  const now = owner && owner.name !== acknowledged.by ? `, now with ${owner.name}` : '';
  return `Taken by ${acknowledged.by} at ${momentOf(acknowledged.at)}${now}`;
}

function since(iso) {
  return iso ? ` at ${momentOf(iso)}` : '';
}

/** What still keeps it open. */
function missing({ finding }) {
  if (!finding) {
    return 'It closes when cause and action are written down.';
  }
  return finding.code === 'not-found-yet' ? 'It closes when the cause is found.' : 'It closes when the action is written down.';
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
  return list(characteristics.map(({ name, position }) => name || `layer ${position}`));
}

/** Signals of one layer and one test together: [{kind, position, name, words, count, last}], what says most first. */
export function groupedSignals({ signals }) {
  const groups = new Map();
  for (const signal of [...signals].sort(bySeverity)) {
    const key = JSON.stringify([signal.kind, signal.position, signal.chart, signal.test, signal.side]);
    const group = groups.get(key) ?? { ...signal, words: `${direction(signal)}, ${shortTest(signal)}`, count: 0, last: signal };
    group.count += 1;
    group.last = Date.parse(signal.takenAt) > Date.parse(group.last.takenAt) ? signal : group.last;
    groups.set(key, group);
  }
  return [...groups.values()];
}
