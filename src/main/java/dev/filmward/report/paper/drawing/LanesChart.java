package dev.filmward.report.paper.drawing;

import java.util.List;

/**
 * The profile across the web: the mean of each lane with three standard deviations to either side,
 * the target as a hairline, hatched land outside the specification. Pure.
 */
public final class LanesChart {
  private static final double LEFT_PT = 30;
  private static final double RIGHT_PT = 8;
  private static final double TOP_PT = 5;
  private static final double BOTTOM_PT = 13;
  private static final int TICKS = 5;
  private static final double LANE_WORD_PT = 12;

  private LanesChart() {}

  public static Drawing draw(LanesFigure figure, double widthPt, double heightPt) {
    Sketch sketch = new Sketch(widthPt, heightPt);
    Box plot = new Box(LEFT_PT, TOP_PT, widthPt - RIGHT_PT, heightPt - BOTTOM_PT);
    Extent extent = Extent.NONE.with(figure.target());
    extent = extent.with(figure.land().lower()).with(figure.land().upper());
    for (LanePoint lane : figure.lanes()) {
      extent = extent.with(lane.mean()).with(lane.low()).with(lane.high());
    }
    Span y = Span.around(extent, plot.bottom(), plot.top());
    sketch.fill(plot, Ink.PLY);
    figure.land().beside(sketch, plot, y);
    if (Double.isFinite(figure.target())) {
      double at = y.at(figure.target());
      sketch.line(plot.left(), at, plot.right(), at, Ink.SOFT, 0.4);
    }
    for (double tick : y.ticks(TICKS)) {
      String text = figure.numbers().text(tick, y.decimals(TICKS));
      sketch.write(plot.left() - 3, y.at(tick), text, Label.Anchor.END);
    }
    lanes(figure.lanes(), sketch, plot, y);
    return sketch.drawing();
  }

  private static void lanes(List<LanePoint> lanes, Sketch sketch, Box plot, Span y) {
    double step = plot.width() / Math.max(1, lanes.size());
    int every = (int) Math.max(1, Math.ceil(LANE_WORD_PT / step));
    StringBuilder line = new StringBuilder();
    boolean isBroken = true;
    for (int i = 0; i < lanes.size(); i++) {
      LanePoint lane = lanes.get(i);
      double at = plot.left() + (i + 0.5) * step;
      if (i % every == 0) {
        sketch.write(at, plot.bottom() + 7, lane.lane(), Label.Anchor.MIDDLE);
      }
      if (Double.isFinite(lane.mean())) {
        if (Double.isFinite(lane.low()) && Double.isFinite(lane.high())) {
          sketch.line(at, y.at(lane.low()), at, y.at(lane.high()), Ink.SOFT, 0.7);
        }
        sketch.dot(at, y.at(lane.mean()), 1.7);
        line.append(isBroken ? 'M' : 'L').append(Sketch.f(at)).append(' ');
        line.append(Sketch.f(y.at(lane.mean())));
      }
      isBroken = !Double.isFinite(lane.mean());
    }
    sketch.path(line.toString(), Ink.INK, 0.8);
  }
}
