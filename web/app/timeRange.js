/** How far back the charts look. The choice is part of the address, so that it can be sent to somebody. */
const HOUR_MS = 3_600_000;

export const RANGES = [
  { name: 'shift', words: 'Last 8 hours', ms: 8 * HOUR_MS },
  { name: 'day', words: 'Last day', ms: 24 * HOUR_MS },
  { name: 'week', words: 'Last week', ms: 168 * HOUR_MS },
  { name: 'all', words: 'All', ms: null },
];
const USUAL = 'day';

export function rangeOf(params) {
  return RANGES.find(({ name }) => name === params.get('range')) ?? RANGES.find(({ name }) => name === USUAL);
}

/** Counted back from the newest sample, not from now, so that a stopped line still shows something. */
export function startOf({ ms }, newestMs) {
  return ms === null || newestMs === null ? null : newestMs - ms;
}
