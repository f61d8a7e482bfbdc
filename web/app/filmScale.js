/**
 * Where the bands of a film's cross-section lie, in pixels. Pure. Two scales, two meanings: down the
 * page thickness is to scale (thin layers get a least height and are marked as broken); across the
 * page a band's cut end is off the target line by its deviation, exaggerated by a factor that is stated.
 */

const FACTORS = [50, 20, 10, 5, 3, 2, 1];
/** The factor is chosen so that at least this deviation fits; quiet films are not blown up further. */
const QUIET_DEVIATION = 0.02;
/** A cut end may draw back by this share of the film before a smaller factor is taken. */
const DEEPEST_CUT = 0.6;

/**
 * Heights to scale with a least height. Bands below it are raised and marked; the others share the
 * rest in proportion, repeatedly, since raising one may push another below the least height.
 */
export function bandHeights(thicknessesUm, totalPx, leastPx) {
  const least = Math.min(leastPx, totalPx / thicknessesUm.length);
  const raised = new Set();
  let pxPerUm = 0;
  for (let before = -1; before !== raised.size; ) {
    before = raised.size;
    const free = thicknessesUm.reduce((sum, um, i) => (raised.has(i) ? sum : sum + um), 0);
    pxPerUm = free > 0 ? (totalPx - least * raised.size) / free : 0;
    thicknessesUm.forEach((um, i) => um * pxPerUm < least && raised.add(i));
  }
  let top = 0;
  return thicknessesUm.map((um, i) => {
    const height = raised.has(i) ? least : um * pxPerUm;
    const band = { top, height, broken: raised.has(i) };
    top += height;
    return band;
  });
}

/** What a layer's thickness is drawn from: its target, else its usual level, else the reading itself. */
export function drawnUm(layer) {
  return layer.spec?.target ?? layer.limits?.centre ?? layer.mean ?? 1;
}

/** How far the mean is off the hairline, as a fraction; null where there is no mean. */
export function deviationOf(layer) {
  const target = layer.spec?.target;
  if (layer.mean === null || layer.mean === undefined) {
    return null;
  }
  return target ? (layer.mean - target) / target : layer.deviation;
}

/** The largest exaggeration at which every deviation still fits on its side of the hairline. */
export function exaggeration(layers, bodyPx, roomPx) {
  const deviations = layers.map((layer) => deviationOf(layer) ?? 0);
  const thickest = Math.max(QUIET_DEVIATION, ...deviations);
  const thinnest = Math.max(QUIET_DEVIATION, ...deviations.map((deviation) => -deviation));
  const fits = (factor) => thickest * factor * bodyPx <= roomPx && thinnest * factor <= DEEPEST_CUT;
  return FACTORS.find(fits) ?? 1;
}
