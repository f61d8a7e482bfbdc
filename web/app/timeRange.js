/** How far back the charts look. The choice is part of the address, so that it can be sent to somebody. */
const HOUR_MS = 3_600_000;

export const RANGES = [
  { name: 'shift', ms: 8 * HOUR_MS },
  { name: 'day', ms: 24 * HOUR_MS },
  { name: 'week', ms: 168 * HOUR_MS },
  { name: 'all', ms: null },
];
const USUAL = 'day';

export function rangeOf(params) {
  return RANGES.find(({ name }) => name === params.get('range')) ?? RANGES.find(({ name }) => name === USUAL);
}

/** A span that somebody chose stands in the address as `from` and `to`, ISO 8601; else it counts back from the newest sample, so that a stopped line shows something too. In ms. */
export function spanOf(params, newestMs) {
  const { from, to } = chosenSpan(params);
  if (from !== null || to !== null) {
    return { from, to };
  }
  const { ms } = rangeOf(params);
  return { from: ms === null || newestMs === null ? null : newestMs - ms };
}

export function chosenSpan(params) {
  const at = (name) => (Number.isFinite(Date.parse(params.get(name))) ? Date.parse(params.get(name)) : null);
  return { from: at('from'), to: at('to') };
}

/** Puts a span in the address; `how` is 'push', so that the browser's way back works, or 'replace'. Null keeps what is there. */
export function writeSpan(params, span, how) {
  if (span !== null) {
    params.set('from', new Date(Math.round(span.from)).toISOString());
    params.set('to', new Date(Math.round(span.to)).toISOString());
    params.delete('range');
  }
  history[`${how}State`](null, '', `?${params}${location.hash}`);
}

const LEAST_SPAN_MS = 60_000;

/** The span half as long around the middle, twice as long, a quarter earlier or later. */
export const MOVES = {
  closer: ({ from, to }) => around({ from, to }, 0.5),
  wider: ({ from, to }) => around({ from, to }, 2),
  earlier: ({ from, to }) => ({ from: from - (to - from) / 4, to: to - (to - from) / 4 }),
  later: ({ from, to }) => ({ from: from + (to - from) / 4, to: to + (to - from) / 4 }),
};

function around({ from, to }, factor) {
  const half = Math.max(LEAST_SPAN_MS, (to - from) * factor) / 2;
  const middle = (from + to) / 2;
  return { from: middle - half, to: middle + half };
}
