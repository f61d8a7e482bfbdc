/**
 * The plant's time: the server's clock and zone, so that a screen with a wrong clock still tells the
 * right age. Until the server has spoken, the clock of this screen is used.
 */
let aheadMs = 0;
let zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
let shapes = shapesFor(zone);

export function synchronise(isoNow, plantZone) {
  const server = Date.parse(isoNow);
  if (Number.isFinite(server)) {
    aheadMs = server - Date.now();
  }
  if (plantZone && plantZone !== zone) {
    shapes = shapesFor(plantZone);
    zone = plantZone;
  }
}

export const nowMs = () => Date.now() + aheadMs;
export const plantZone = () => zone;

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

function shapesFor(timeZone) {
  const shape = (options) => new Intl.DateTimeFormat('en-GB', { timeZone, ...options });
  return {
    time: shape({ hour: '2-digit', minute: '2-digit' }),
    seconds: shape({ hour: '2-digit', minute: '2-digit', second: '2-digit' }),
    day: shape({ weekday: 'short', day: 'numeric', month: 'short' }),
  };
}
