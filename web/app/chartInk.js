/**
 * What the chart library does not draw: the hatched land outside the specification, single readings as
 * whiskers, rings with the short names of tests, written ends of limit lines, steps of limit versions.
 * A chart library plugin; reads the panel and the paint from `chart.filmward`, not from the options: the library wraps whatever
 * is in those, thing by thing, at a hundred times the price.
 */
import { landPattern } from './chartPaint.js';
import { shortTest } from './words.js';
import { um } from './format.js';
import { room } from './text.js';

const t = await room('layer');
const LINE_EM = 1.05;
const WORD_GAP_PX = 5;
const STAMP_MARGIN_PX = 2;
/** So many rings of a run are looked at for room for the name of a test, which costs with their number. */
const MOST_TRIES = 40;
const STAMPS = new Map();

export const chartInk = {
  id: 'filmward',
  beforeDatasetsDraw: (chart) => void (chart.filmward && clipped(chart, () => {
    const { panel, paint, isWide } = chart.filmward;
    land(chart, panel, paint);
    whiskers(chart, panel, paint, isWide);
  })),
  afterDatasetsDraw: (chart) => {
    if (!chart.filmward) {
      return;
    }
    const { panel, paint } = chart.filmward;
    crosses(chart, panel, paint);
    steps(chart, panel, paint);
    rings(chart, chart.filmward);
    labels(chart, panel, paint);
  },
};

function clipped({ ctx, chartArea: { left, top, width, height } }, draw) {
  ctx.save();
  ctx.beginPath();
  ctx.rect(left, top, width, height);
  ctx.clip();
  draw();
  ctx.restore();
}

/** Open grey crosses, off the line, for samples that are held out. */
function crosses({ ctx, scales: { x, y } }, panel, paint) {
  for (const { x: at, y: um, isBeyond } of panel.crosses ?? []) {
    const [px, py] = [x.getPixelForValue(at), y.getPixelForValue(um)];
    const arm = 4.5;
    stroke(ctx, paint.soft, 1.5, () => {
      ctx.moveTo(px - arm, py - arm);
      ctx.lineTo(px + arm, py + arm);
      ctx.moveTo(px - arm, py + arm);
      ctx.lineTo(px + arm, py - arm);
      if (isBeyond) {
        ctx.moveTo(px - arm, py);
        ctx.lineTo(px + arm, py);
      }
    });
  }
}

/** What was asked earlier ends where another took hold. */
function land(chart, panel, paint) {
  panel.land.forEach((spec) => landOf(chart, spec, paint));
}

function landOf({ ctx, chartArea, scales: { x, y } }, spec, paint) {
  const { top, bottom } = chartArea;
  const within = (at) => Math.max(chartArea.left, Math.min(chartArea.right, at === -Infinity ? chartArea.left : at === Infinity ? chartArea.right : x.getPixelForValue(at)));
  const [left, right] = [within(spec.from), within(spec.to)];
  if (right <= left) {
    return;
  }
  const strip = (from, to, words, wordsY) => {
    ctx.fillStyle = landPattern(ctx, paint);
    ctx.fillRect(left, from, right - left, to - from);
    const fitting = words.find((one) => ctx.measureText(one).width + 16 < right - left);
    if (fitting) {
      write(ctx, paint, fitting, left + 8, wordsY, 'left');
    }
  };
  if (spec.upper !== undefined && y.getPixelForValue(spec.upper) > top) {
    const edge = y.getPixelForValue(spec.upper);
    strip(top, edge, [t('outAbove', { um: um(spec.upper) }), um(spec.upper)], edge - lineOf(paint) / 2 - 3);
  }
  if (spec.lower !== undefined && y.getPixelForValue(spec.lower) < bottom) {
    const edge = y.getPixelForValue(spec.lower);
    strip(edge, bottom, [t('outBelow', { um: um(spec.lower) }), um(spec.lower)], edge + lineOf(paint) / 2 + 4);
  }
}

/** Where points stand close the whiskers are drawn faintly, so that the means still read. */
function whiskers({ ctx, scales: { x, y } }, panel, paint, isWide) {
  for (const { x: at, low, high, isOut } of panel.whiskers) {
    if (low !== null) {
      const px = x.getPixelForValue(at);
      ctx.globalAlpha = isWide || isOut ? 1 : 0.4;
      stroke(ctx, isOut ? paint.ink : paint.soft, isOut ? 2.5 : 1, () => {
        ctx.moveTo(px, y.getPixelForValue(low));
        ctx.lineTo(px, y.getPixelForValue(high));
      });
    }
  }
}

/** Where limits begin to hold: a tick through the top edge and its words above the plot. */
function steps({ ctx, chartArea: { left, right, top }, scales: { x } }, panel, paint) {
  const inside = panel.steps.map(({ x: at, text }) => ({ px: Math.max(left, x.getPixelForValue(at)), text })).filter(({ px }) => px < right);
  inside.forEach(({ px, text }, i) => {
    ctx.font = fontOf(paint, 400);
    const width = ctx.measureText(text).width + 2 * WORD_GAP_PX;
    const until = inside[i + 1]?.px ?? Infinity;
    stroke(ctx, paint.soft, 1, () => (ctx.moveTo(px + 0.5, top - lineOf(paint)), ctx.lineTo(px + 0.5, top + 6)));
    if (px + width < until) {
      const isLate = px + width > ctx.canvas.clientWidth;
      write(ctx, paint, text, px + (isLate ? -WORD_GAP_PX : WORD_GAP_PX), top - lineOf(paint) / 2, isLate ? 'right' : 'left');
    }
  });
}

/**
 * Newest first, since the newest name must not be the one that finds no room. Of rings that stand next to each other each test is
 * named once, where it spoke last and there is room: the words of every one of them are told on hover, focus and tap.
 */
function rings({ ctx, chartArea, scales: { x, y } }, { panel, paint, ringPx, isWide }) {
  const drawn = panel.rings.map((ring) => ({ ...ring, px: x.getPixelForValue(ring.x), py: y.getPixelForValue(ring.y) })).reverse();
  const stamps = { false: ringStamp(paint.ink, ringPx), true: ringStamp(paint.act, ringPx) };
  const half = ringPx + STAMP_MARGIN_PX;
  drawn.forEach(({ px, py, isCurrent }) => ctx.drawImage(stamps[isCurrent], px - half, py - half, 2 * half, 2 * half));
  const taken = isWide || drawn[0]?.isCurrent ? drawn.map(({ px, py }) => boxAround(px, py, 2 * ringPx, 2 * ringPx)) : [];
  const tries = new Map();
  drawn.forEach((ring, i) => {
    const colour = ring.isCurrent ? paint.act : paint.ink;
    const name = shortTest(ring.signals[0]);
    if (i > 0 && drawn[i - 1].index - ring.index > 1) {
      tries.clear();
    }
    const tried = tries.get(name) ?? 0;
    if (tried < MOST_TRIES && (ring.isCurrent || isWide)) {
      tries.set(name, nameRing(ctx, chartArea, { ...paint, soft: colour }, { ...ring, name, ringPx }, taken) ? MOST_TRIES : tried + 1);
    }
  });
}

/** One ring, drawn once: a hundred circles as paths take a tenth of a second, as stamps next to nothing. */
function ringStamp(colour, ringPx) {
  const ratio = window.devicePixelRatio || 1;
  const key = `${colour} ${ringPx} ${ratio}`;
  if (!STAMPS.has(key)) {
    const half = ringPx + STAMP_MARGIN_PX;
    const stamp = document.createElement('canvas');
    stamp.width = Math.ceil(2 * half * ratio);
    stamp.height = stamp.width;
    const pen = stamp.getContext('2d');
    pen.scale(ratio, ratio);
    stroke(pen, colour, 1.75, () => pen.arc(half, half, ringPx, 0, 2 * Math.PI));
    STAMPS.set(key, stamp);
  }
  return STAMPS.get(key);
}

/** Beyond the ring on its own side where that is free, else on the other side or beside it; says whether there was room. */
function nameRing(ctx, area, paint, { px, py, name, ringPx, signals }, taken) {
  ctx.font = fontOf(paint, 700);
  const width = ctx.measureText(name).width;
  const middleX = Math.min(Math.max(px, area.left + width / 2 + 2), area.right - width / 2 - 2);
  const away = (ringPx + lineOf(paint) * 0.65) * (signals[0].side === 'high' ? -1 : 1);
  const besideX = px - width / 2 - ringPx - 2 * WORD_GAP_PX;
  const place = [[middleX, py + away], [middleX, py - away], [besideX, py], [besideX, py + away]]
    .map(([x, y]) => boxAround(x, y, width + 6, lineOf(paint) - 2))
    .find((box) => box.left > area.left && box.top > area.top && box.bottom < area.bottom && !taken.some((other) => overlap(box, other)));
  if (place) {
    taken.push(place);
    write(ctx, paint, name, (place.left + place.right) / 2, (place.top + place.bottom) / 2, 'center', 700);
  }
  return Boolean(place);
}

function boxAround(x, y, width, height) {
  return { left: x - width / 2, right: x + width / 2, top: y - height / 2, bottom: y + height / 2 };
}

function overlap(a, b) {
  return a.left < b.right && a.right > b.left && a.top < b.bottom && a.bottom > b.top;
}

/** Limit lines end in words; where two ends meet, the lower one is pushed down. */
function labels({ ctx, chartArea: { right }, scales: { y } }, panel, paint) {
  let floor = -Infinity;
  for (const { y: value, text, isCentre } of [...panel.labels].sort((a, b) => b.y - a.y)) {
    const middle = Math.max(y.getPixelForValue(value), floor + lineOf(paint));
    floor = middle;
    write(ctx, { ...paint, soft: paint.ink }, text, right + 6, middle, 'left', isCentre ? 400 : 600);
  }
}

function write(ctx, paint, text, x, y, align, weight = 400) {
  ctx.font = fontOf(paint, weight);
  ctx.textAlign = align;
  ctx.textBaseline = 'middle';
  ctx.lineJoin = 'round';
  ctx.lineWidth = 4;
  ctx.strokeStyle = paint.ground;
  ctx.strokeText(text, x, y);
  ctx.fillStyle = paint.soft;
  ctx.fillText(text, x, y);
}

function stroke(ctx, colour, width, path) {
  ctx.strokeStyle = colour;
  ctx.lineWidth = width;
  ctx.beginPath();
  path();
  ctx.stroke();
}

/** The height of a line of words, which grows with the screen. */
const lineOf = ({ font }) => font.size * LINE_EM;

function fontOf({ font }, weight) {
  return `${weight} ${font.size}px ${font.family}`;
}
