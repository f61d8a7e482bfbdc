/** Ticks of a value axis at round numbers. Pure. Gives {values, decimals}. */
const STEPS = [1, 2, 2.5, 5, 10];

export function valueTicks(min, max, most) {
  const rough = (max - min) / most;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = STEPS.map((one) => one * power).find((one) => one >= rough);
  const decimals = Math.max(0, Math.min(4, -Math.floor(Math.log10(step)) + (String(step).includes('25') ? 1 : 0)));
  const values = [];
  for (let k = Math.ceil(min / step); k * step <= max; k++) {
    values.push(k * step);
  }
  return { values, decimals };
}
