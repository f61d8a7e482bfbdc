package dev.filmward.report.paper.drawing;

/**
 * How single readings are spread: bars of counts, the fitted curve where one was used, hatched land
 * outside the specification, a hairline at the target. Control limits are not on it: they are of
 * means. Pure.
 */
public final class DistributionChart {
  private static final double SIDE_PT = 8;
  private static final double TOP_PT = 12;
  private static final double BOTTOM_PT = 13;
  private static final int TICKS = 4;

  private DistributionChart() {}

  public static Drawing draw(DistributionFigure figure, double widthPt, double heightPt) {
    Sketch sketch = new Sketch(widthPt, heightPt);
    Box plot = new Box(SIDE_PT, TOP_PT, widthPt - SIDE_PT, heightPt - BOTTOM_PT);
    Extent extent = Extent.NONE.with(figure.edges()).with(figure.land().lower());
    extent = extent.with(figure.land().upper()).with(figure.target());
    Span x = Span.around(extent, plot.left(), plot.right());
    Extent tallest = Extent.NONE.with(0).with(figure.counts()).with(figure.curveCounts());
    double top = tallest.high() > 0 ? tallest.high() * 1.06 : 1;
    Span y = new Span(0, top, plot.bottom(), plot.top());
    sketch.fill(plot, Ink.PLY);
    figure.land().across(sketch, plot, x);
    bars(figure, sketch, x, y);
    sketch.path(curve(figure, x, y), Ink.INK, 0.9);
    axis(figure, sketch, plot, x);
    return sketch.drawing();
  }

  private static void bars(DistributionFigure figure, Sketch sketch, Span x, Span y) {
    for (int i = 0; i < figure.counts().length; i++) {
      if (figure.counts()[i] > 0) {
        Box bar =
            new Box(
                x.at(figure.edges()[i]),
                y.at(figure.counts()[i]),
                x.at(figure.edges()[i + 1]),
                y.at(0));
        sketch.fill(bar, Ink.RULE);
        sketch.outline(bar, 0.4);
      }
    }
  }

  private static String curve(DistributionFigure figure, Span x, Span y) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < figure.curveAt().length; i++) {
      line.append(i == 0 ? 'M' : 'L').append(Sketch.f(x.at(figure.curveAt()[i]))).append(' ');
      line.append(Sketch.f(y.at(figure.curveCounts()[i])));
    }
    return line.toString();
  }

  private static void axis(DistributionFigure figure, Sketch sketch, Box plot, Span x) {
    sketch.line(plot.left(), plot.bottom(), plot.right(), plot.bottom(), Ink.INK, 0.6);
    for (double tick : x.ticks(TICKS)) {
      sketch.line(x.at(tick), plot.bottom(), x.at(tick), plot.bottom() + 3, Ink.SOFT, 0.5);
      String text = figure.numbers().text(tick, x.decimals(TICKS));
      sketch.write(x.at(tick), plot.bottom() + 8, text, Label.Anchor.MIDDLE);
    }
    if (Double.isFinite(figure.target())) {
      double at = x.at(figure.target());
      sketch.line(at, plot.top(), at, plot.bottom(), Ink.SOFT, 0.4);
      sketch.write(at, plot.top() - 5, figure.targetWords(), Label.Anchor.MIDDLE);
    }
  }
}
