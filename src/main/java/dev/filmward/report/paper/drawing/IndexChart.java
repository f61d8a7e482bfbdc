package dev.filmward.report.paper.drawing;

import java.util.List;

/**
 * An index over the weeks with its confidence interval, against the value that is required. A
 * filled dot is capability, an open one only performance, since the process was not stable; a gap
 * is a week without; a dashed line between two weeks says that the specification changed. Pure.
 */
public final class IndexChart {
  private static final double LEFT_PT = 26;
  private static final double RIGHT_PT = 8;
  private static final double TOP_PT = 12;
  private static final double BOTTOM_PT = 13;
  private static final int TICKS = 4;
  private static final double WEEK_WORD_PT = 17;

  private IndexChart() {}

  public static Drawing draw(IndexFigure figure, double widthPt, double heightPt) {
    Sketch sketch = new Sketch(widthPt, heightPt);
    Box plot = new Box(LEFT_PT, TOP_PT, widthPt - RIGHT_PT, heightPt - BOTTOM_PT);
    Extent extent = Extent.NONE.with(figure.required());
    for (IndexPoint point : figure.points()) {
      extent = extent.with(point.value()).with(point.from()).with(point.to());
    }
    Span y = Span.around(extent, plot.bottom(), plot.top());
    sketch.fill(plot, Ink.PLY);
    for (double tick : y.ticks(TICKS)) {
      sketch.line(plot.left(), y.at(tick), plot.right(), y.at(tick), Ink.RULE, 0.4);
      String text = figure.numbers().text(tick, Math.max(1, y.decimals(TICKS)));
      sketch.write(plot.left() - 3, y.at(tick), text, Label.Anchor.END);
    }
    required(figure, sketch, plot, y);
    steps(figure, sketch, plot);
    weeks(figure.points(), sketch, plot, y);
    return sketch.drawing();
  }

  private static void required(IndexFigure figure, Sketch sketch, Box plot, Span y) {
    double at = y.at(figure.required());
    sketch.dashed(
        "M" + Sketch.f(plot.left()) + " " + Sketch.f(at) + "H" + Sketch.f(plot.right()),
        Ink.INK,
        0.9);
    double line = plot.top() - 6;
    sketch.dashed("M" + Sketch.f(plot.left()) + " " + Sketch.f(line) + "h12", Ink.INK, 0.9);
    sketch.write(plot.left() + 16, line, figure.requiredWords(), Label.Anchor.START);
  }

  private static void steps(IndexFigure figure, Sketch sketch, Box plot) {
    double step = plot.width() / Math.max(1, figure.points().size());
    for (int before : figure.steps()) {
      String at = Sketch.f(plot.left() + before * step);
      sketch.dashed(
          "M" + at + " " + Sketch.f(plot.top()) + "V" + Sketch.f(plot.bottom()), Ink.SOFT, 0.6);
    }
  }

  private static void weeks(List<IndexPoint> points, Sketch sketch, Box plot, Span y) {
    double step = plot.width() / Math.max(1, points.size());
    int every = (int) Math.max(1, Math.ceil(WEEK_WORD_PT / step));
    for (int i = 0; i < points.size(); i++) {
      IndexPoint point = points.get(i);
      double at = plot.left() + (i + 0.5) * step;
      if ((points.size() - 1 - i) % every == 0) {
        sketch.write(at, plot.bottom() + 7, point.week(), Label.Anchor.MIDDLE);
      }
      point(point, at, sketch, y);
    }
  }

  private static void point(IndexPoint point, double at, Sketch sketch, Span y) {
    if (Double.isFinite(point.from()) && Double.isFinite(point.to())) {
      sketch.line(at, y.at(point.from()), at, y.at(point.to()), Ink.INK, 0.8);
    }
    if (!Double.isFinite(point.value())) {
      return;
    }
    if (point.claim() == IndexPoint.Claim.CAPABILITY) {
      sketch.dot(at, y.at(point.value()), 2.4);
    } else {
      sketch.open(at, y.at(point.value()), 2.2);
    }
  }
}
