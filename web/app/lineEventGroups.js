/** Puts events of a line together so that they can be read: like ones near in time, and marks that would cover each other. Pure. */

/** What makes events of one kind alike; the others need nothing more. */
const ALIKE = {
  alarm: 'title', taken: 'title', returned: 'title', log: 'what',
  limits: 'structure', structure: 'structure', rescaled: 'structure', calibrated: 'gauge',
};
const LEAST_TOGETHER = 3;

/** Which event it is, whatever else came or went. */
export const keyOf = (event) => JSON.stringify([event.kind, event.at, event[ALIKE[event.kind] ?? 'roll'] ?? '']);

/**
 * Runs of three or more alike, each at most `nearMs` after the one before; the rest alone. `events` are oldest first; gives
 * arrays of events, oldest first in each, the one with the newest event first.
 */
export function alikeNear(events, nearMs) {
  const runs = [];
  const going = new Map();
  for (const event of events) {
    const alike = JSON.stringify([event.kind, event[ALIKE[event.kind]] ?? '']);
    const run = going.get(alike);
    if (run && Date.parse(event.at) - Date.parse(run.at(-1).at) <= nearMs) {
      run.push(event);
    } else {
      going.set(alike, [event]);
      runs.push(going.get(alike));
    }
  }
  const order = new Map(events.map((event, i) => [event, i]));
  return runs.flatMap((run) => (run.length < LEAST_TOGETHER ? run.map((event) => [event]) : [run]))
    .sort((a, b) => order.get(b.at(-1)) - order.get(a.at(-1)));
}

/**
 * Marks along a strip that do not cover each other: [{x, events}]. Those that would are one mark in the middle of theirs.
 * `places` are [{x, event}] from the left, `widthOf(count)` how wide a mark of so many is.
 */
export function marksApart(places, { width, widthOf, gap }) {
  const middle = ({ from, to, events }) => within((from + to) / 2, widthOf(events.length) / 2, width);
  const cover = (a, b) => middle(b) - middle(a) < (widthOf(a.events.length) + widthOf(b.events.length)) / 2 + gap;
  const marks = [];
  for (const { x, event } of places) {
    let mark = { from: x, to: x, events: [event] };
    while (marks.length > 0 && cover(marks.at(-1), mark)) {
      const before = marks.pop();
      mark = { from: before.from, to: mark.to, events: [...before.events, ...mark.events] };
    }
    marks.push(mark);
  }
  return marks.map((mark) => ({ x: middle(mark), events: mark.events }));
}

const within = (x, half, width) => Math.max(half, Math.min(width - half, x));
