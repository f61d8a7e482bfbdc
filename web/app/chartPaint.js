/** The page's own colours and type for canvas, read from its style sheet and read again when the scheme changes or the page goes to paper. */
const DARK = matchMedia('(prefers-color-scheme: dark)');
const PAPER = matchMedia('print');

export function paintOf(node) {
  const style = getComputedStyle(node);
  const colour = (name) => style.getPropertyValue(`--${name}`).trim();
  return {
    ink: colour('ink'),
    soft: colour('ink-soft'),
    ground: colour('ground'),
    sheet: colour('sheet'),
    rule: colour('rule'),
    hatch: colour('hatch'),
    act: colour('act'),
    font: { family: style.fontFamily, size: parseFloat(style.fontSize) * 0.875 },
  };
}

export function onSchemeChange(act) {
  const all = [DARK, PAPER];
  all.forEach((query) => query.addEventListener('change', act));
  return () => all.forEach((query) => query.removeEventListener('change', act));
}

/** Slanted hatching for the land outside the specification. */
export function landPattern(context, paint) {
  const size = 10;
  const tile = document.createElement('canvas');
  tile.width = size;
  tile.height = size;
  const pen = tile.getContext('2d');
  pen.strokeStyle = paint.hatch;
  pen.globalAlpha = 0.75;
  pen.lineWidth = 1;
  pen.beginPath();
  for (const shift of [-size, 0, size]) {
    pen.moveTo(shift, size);
    pen.lineTo(shift + size, 0);
  }
  pen.stroke();
  return context.createPattern(tile, 'repeat');
}
