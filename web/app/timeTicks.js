/**
 * Ticks of a linear time axis in ms, at round times of day in the plant. Pure but for the plant's zone.
 * Aligned on the wall clock, so that they stay round across a change of summer time.
 */
import { day, minuteOfDay, timeOfDay } from './plantClock.js';

const MINUTE = 60_000;
const STEPS_MIN = [5, 10, 15, 30, 60, 120, 240, 360, 720, 1440];
const DAY_MIN = 1440;

/** At most about `most` ticks: [{value, label}]. */
export function timeTicks(min, max, most) {
  const spanMin = (max - min) / MINUTE;
  const step = STEPS_MIN.find((candidate) => spanMin / candidate <= most) ?? DAY_MIN;
  const walk = Math.min(step, 60) * MINUTE;
  const ticks = [];
  for (let value = firstAligned(min, Math.min(step, 60)); value <= max; value += walk) {
    if (minuteOfDay(value) % step === 0) {
      ticks.push({ value, label: labelOf(value) });
    }
  }
  const every = Math.ceil(ticks.length / most);
  return ticks.filter((tick, i) => i % Math.max(1, every) === 0);
}

function firstAligned(min, stepMin) {
  const grain = 5 * MINUTE;
  let value = Math.ceil(min / grain) * grain;
  while (minuteOfDay(value) % stepMin !== 0) {
    value += grain;
  }
  return value;
}

function labelOf(value) {
  return minuteOfDay(value) === 0 ? day(value) : timeOfDay(value);
}
