/**
 * The plant's time: the server's clock and zone, so that a screen with a wrong clock or zone still tells
 * the right age and time of day. Until the server names its zone, the offset of its own times is used.
 */
import { locale } from './choices.js';

let aheadMs = null;
let zone = null;
let shapes = shapesFor(undefined);

export function synchronise(isoNow, named = null) {
  const server = Date.parse(isoNow);
  if (Number.isFinite(server)) {
    aheadMs = server - Date.now();
  }
  if (named !== null && named !== zone) {
    zone = named;
    shapes = shapesFor(zone);
  } else if (zone === null) {
    shapes = shapesFor(offsetOf(isoNow));
  }
}

export const isSynchronised = () => aheadMs !== null;

export const nowMs = () => Date.now() + (aheadMs ?? 0);

/** 06:42 */
export const timeOfDay = (ms) => shapes.time.format(ms);
/** 06:42:17 */
export const timeWithSeconds = (ms) => shapes.seconds.format(ms);
/** Wed 25 Nov */
export const day = (ms) => shapes.day.format(ms);
/** Hour and minute of the day in the plant, for ticks. */
export function minuteOfDay(ms) {
  const [hour, minute] = timeOfDay(ms).split(':').map(Number);
  return hour * 60 + minute;
}

/** 06:42 today, otherwise Tue 24 Nov, 06:42. */
export function moment(ms) {
  return day(ms) === day(nowMs()) ? timeOfDay(ms) : `${day(ms)}, ${timeOfDay(ms)}`;
}

/** The same for a time as the server writes it. Its own offset counts, so it needs no zone; one in UTC is told in the plant's. */
export function momentOf(iso) {
  const own = iso.endsWith('Z') && zone !== null ? shapes : shapesAt(offsetOf(iso));
  const ms = Date.parse(iso);
  const today = own.day.format(ms) === own.day.format(nowMs());
  return today ? own.time.format(ms) : `${own.day.format(ms)}, ${own.time.format(ms)}`;
}

/** 2026-11-25T06:42 in the plant, as fields for a date and time want it. */
export const wallTime = (ms) => shapes.wall.format(ms).replace(' ', 'T');

/** 2026-11-25 06:42, for paper, which does not know what day it is read. */
export const datedOf = (iso) => wallTime(Date.parse(iso)).replace('T', ' ');

/** The moment of a wall time in the plant; NaN where the text is none. The second step is for days on which the clock changes. */
export function atWallTime(text) {
  const aim = Date.parse(`${text}Z`);
  const miss = (ms) => aim - Date.parse(`${wallTime(ms)}Z`);
  if (!Number.isFinite(aim)) {
    return NaN;
  }
  const near = aim + miss(aim);
  return near + miss(near);
}

const byOffset = new Map();

function shapesAt(offset) {
  if (!byOffset.has(offset)) {
    byOffset.set(offset, shapesFor(offset));
  }
  return byOffset.get(offset);
}

/** "2026-11-25T06:42:00+01:00" gives "+01:00". */
function offsetOf(iso) {
  return String(iso).match(/[+-]\d\d:\d\d$/)?.[0] ?? 'UTC';
}

function shapesFor(timeZone) {
  const shape = (options, language = locale()) => {
    try {
      return new Intl.DateTimeFormat(language, { timeZone, ...options });
    } catch {
      return new Intl.DateTimeFormat(language, options);
    }
  };
  return {
    time: shape({ hour: '2-digit', minute: '2-digit' }),
    seconds: shape({ hour: '2-digit', minute: '2-digit', second: '2-digit' }),
    day: shape({ weekday: 'short', day: 'numeric', month: 'short' }),
    wall: shape({ year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit' }, 'sv-SE'),
  };
}
