/** Figures of lanes in time. Pure. Lengths in um; a lane that was never measured has none. */

/** For each lane its mean over the columns, the least and the greatest of them, and how far it is off the mean of all. */
export function laneSummary({ lanes, means }) {
  const all = meanOf(means.flat());
  const rows = lanes.map((lane, i) => {
    const values = means.map((column) => column[i]).filter((value) => value !== null);
    const mean = meanOf(values);
    return { lane, mean, off: mean === null ? null : mean - all, least: extreme(values, Math.min), greatest: extreme(values, Math.max) };
  });
  const measured = rows.filter(({ off }) => off !== null).sort((a, b) => a.off - b.off);
  return { rows, thinnest: measured[0], thickest: measured.at(-1) };
}

/** The middle, and the deviation at which the ink is full: what 98 of 100 cells stay within. */
export function scaleOf({ means }) {
  const values = means.flat().filter((value) => value !== null);
  const middle = meanOf(values);
  const off = values.map((value) => Math.abs(value - middle)).sort((a, b) => a - b);
  return { middle, reach: Math.max(off[Math.floor(off.length * 0.98)] ?? 0, 0.01) };
}

function meanOf(values) {
  const given = values.filter((value) => value !== null);
  return given.length === 0 ? null : given.reduce((a, b) => a + b, 0) / given.length;
}

const extreme = (values, choose) => (values.length === 0 ? null : values.reduce((a, b) => choose(a, b)));
