/**
 * Draws on a chart how the level moves: the fitted level, when it changed with the interval for that, and where it leads. A plugin of the
 * chart library; reads `panel.movement` from `chart.filmward`.
 */
import { onward } from './movement.js';
import { moment } from './plantClock.js';

export const movementInk = {
  id: 'filmward-movement',
  afterDatasetsDraw: (chart) => {
    const { panel, paint } = chart.filmward ?? {};
    if (panel?.movement?.change) {
      clipped(chart, () => {
        level(chart, panel.movement, paint);
        changed(chart, panel.movement.change, paint);
        leads(chart, panel.movement, paint);
      });
    }
  },
};

function clipped({ ctx, chartArea: { left, top, right, bottom } }, draw) {
  ctx.save();
  ctx.beginPath();
  ctx.rect(left, top, right - left, bottom - top);
  ctx.clip();
  draw();
  ctx.restore();
}

function level({ ctx, scales: { x, y } }, { line }, paint) {
  stroke(ctx, paint, [], 2.5, () => line.forEach(({ at, um }, i) => pen(ctx, i, x.getPixelForValue(at), y.getPixelForValue(um))));
}

/** A wedge at the foot of the chart, its whisker the times at which the change may have come. */
function changed({ ctx, chartArea: { left, right, bottom }, scales: { x } }, { at, notBefore, notAfter }, paint) {
  const foot = bottom - 4;
  const px = (ms) => Math.max(left, Math.min(right, x.getPixelForValue(ms)));
  stroke(ctx, paint, [], 1.5, () => {
    ctx.moveTo(notBefore === null ? left : px(notBefore), foot);
    ctx.lineTo(px(notAfter), foot);
  });
  ctx.save();
  ctx.fillStyle = paint.ink;
  ctx.beginPath();
  ctx.moveTo(px(at), foot - 9);
  ctx.lineTo(px(at) - 5, foot);
  ctx.lineTo(px(at) + 5, foot);
  ctx.fill();
  ctx.restore();
}

/** Dashes on to the limit that is met first, a bar there for the interval, and the moment in figures. */
function leads({ ctx, chartArea: { left, right }, scales: { x, y } }, movement, paint) {
  const meeting = onward(movement);
  const from = movement.line.at(-1);
  if (!meeting || meeting.expected === null || !from) {
    return;
  }
  const [px, py] = [x.getPixelForValue(meeting.expected), y.getPixelForValue(meeting.um)];
  stroke(ctx, paint, [6, 5], 2, () => {
    ctx.moveTo(x.getPixelForValue(from.at), y.getPixelForValue(from.um));
    ctx.lineTo(px, py);
  });
  if (px <= right) {
    stroke(ctx, paint, [], 3, () => {
      ctx.moveTo(Math.max(left, x.getPixelForValue(meeting.notBefore ?? meeting.expected)), py);
      ctx.lineTo(Math.min(right, meeting.notAfter === null ? right : x.getPixelForValue(meeting.notAfter)), py);
    });
    ctx.save();
    ctx.fillStyle = paint.ink;
    ctx.font = `600 ${paint.font.size}px ${paint.font.family}`;
    ctx.textAlign = 'right';
    ctx.fillText(moment(meeting.expected), Math.min(right - 4, px + 20), py + (from.um > meeting.um ? -8 : paint.font.size + 6));
    ctx.restore();
  }
}

function pen(ctx, i, px, py) {
  if (i === 0) {
    ctx.moveTo(px, py);
  } else {
    ctx.lineTo(px, py);
  }
}

function stroke(ctx, paint, dash, width, path) {
  ctx.save();
  ctx.strokeStyle = paint.ink;
  ctx.lineWidth = width;
  ctx.setLineDash(dash);
  ctx.beginPath();
  path();
  ctx.stroke();
  ctx.restore();
}
