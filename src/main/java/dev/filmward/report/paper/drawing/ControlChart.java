package dev.filmward.report.paper.drawing;

import java.util.ArrayList;
import java.util.List;

/**
 * The control chart of a week: means as an inked line with gaps where nothing was measured, stepped
 * limits that end in a written label, rings with the short name of the test at signals, hatched
 * strips where samples were held out, and hatched land outside the specification. Pure.
 */
public final class ControlChart {
  private static final double LEFT_PT = 34;
  private static final double RIGHT_PT = 74;
  private static final double TOP_PT = 10;
  private static final double BOTTOM_PT = 13;
  private static final double RING_PT = 3.2;
  private static final double SMALL_RING_PT = 2.1;
  private static final int MANY_RINGS = 40;
  private static final double DOTS_UP_TO = 250;
  private static final double WORD_PT = 8.5;
  private static final double NAME_AWAY_PT = 8.5;
  private static final double HALF_LETTER_PT = 1.9;
  private static final double DASH_PT = 4;
  private static final int TICKS = 4;

  private final ControlFigure figure;
  private final Sketch sketch;
  private final Box plot;
  private final Span x;
  private final Span y;

  private ControlChart(ControlFigure figure, double widthPt, double heightPt) {
    this.figure = figure;
    sketch = new Sketch(widthPt, heightPt);
    plot = new Box(LEFT_PT, TOP_PT, widthPt - RIGHT_PT, heightPt - BOTTOM_PT);
    x = new Span(figure.from(), figure.until(), plot.left(), plot.right());
    y = Span.around(extent(figure), plot.bottom(), plot.top());
  }

  public static Drawing draw(ControlFigure figure, double widthPt, double heightPt) {
    ControlChart chart = new ControlChart(figure, widthPt, heightPt);
    chart.drawAll();
    return chart.sketch.drawing();
  }

  private static Extent extent(ControlFigure figure) {
    Extent extent = Extent.NONE;
    for (ControlPoint point : figure.points()) {
      extent = extent.with(point.mean()).with(point.lower()).with(point.upper());
    }
    return extent;
  }

  private void drawAll() {
    sketch.fill(plot, Ink.PLY);
    lands();
    axes();
    heldOut();
    limits();
    moments();
    means();
    rings();
  }

  private void lands() {
    List<LandSince> lands = figure.lands();
    for (int i = 0; i < lands.size(); i++) {
      double from = i == 0 ? plot.left() : inPlot(lands.get(i).since());
      double to = i == lands.size() - 1 ? plot.right() : inPlot(lands.get(i + 1).since());
      if (from < to) {
        lands.get(i).land().beside(sketch, new Box(from, plot.top(), to, plot.bottom()), y);
      }
    }
  }

  private double inPlot(double seconds) {
    return Math.min(Math.max(x.at(seconds), plot.left()), plot.right());
  }

  private void axes() {
    for (Mark day : figure.days()) {
      if (x.holds(day.value())) {
        double at = x.at(day.value());
        sketch.line(at, plot.top(), at, plot.bottom(), Ink.RULE, 0.4);
        sketch.write(at + 2, plot.bottom() + 7, day.text(), Label.Anchor.START);
      }
    }
    for (double tick : y.ticks(TICKS)) {
      String text = figure.numbers().text(tick, y.decimals(TICKS));
      sketch.line(plot.left() - 3, y.at(tick), plot.left(), y.at(tick), Ink.SOFT, 0.5);
      sketch.write(plot.left() - 5, y.at(tick), text, Label.Anchor.END);
    }
  }

  /** Where something else begins to hold; the words stand at the foot, out of the way. */
  private void moments() {
    for (Mark moment : figure.moments()) {
      if (x.holds(moment.value())) {
        double at = x.at(moment.value());
        StringBuilder dashes = new StringBuilder();
        for (double up = plot.top(); up < plot.bottom(); up += DASH_PT) {
          dashes.append('M').append(f(at)).append(' ').append(f(up));
          dashes.append('V').append(f(Math.min(up + DASH_PT / 2, plot.bottom())));
        }
        sketch.path(dashes.toString(), Ink.SOFT, 0.9);
        sketch.writeOver(
            at + 2, plot.bottom() - 5, moment.text(), Label.Anchor.START, Label.Tone.SOFT);
      }
    }
  }

  private void heldOut() {
    for (ControlPoint point : figure.points()) {
      if (point.isHeldOut()) {
        double at = x.at(point.at());
        sketch.hatch(new Box(at - 1.5, plot.top(), at + 1.5, plot.bottom()), Hatch.HELD_OUT);
        if (point.isDrawn()) {
          double up = y.at(point.mean());
          sketch.path(cross(at, up), Ink.SOFT, 0.9);
        }
      }
    }
  }

  private static String cross(double x, double y) {
    return "M" + f(x - 2) + " " + f(y - 2) + "L" + f(x + 2) + " " + f(y + 2) + "M" + f(x - 2) + " "
        + f(y + 2) + "L" + f(x + 2) + " " + f(y - 2);
  }

  /** Steps where other limits began to hold. */
  private void limits() {
    List<ControlPoint> points = figure.points();
    int begin = 0;
    for (int i = 1; i <= points.size(); i++) {
      if (i == points.size() || !points.get(i).sameLimits(points.get(begin))) {
        double from = begin == 0 ? plot.left() : x.at(points.get(begin).at());
        double to = i == points.size() ? plot.right() : x.at(points.get(i).at());
        limitLines(points.get(begin), from, to);
        if (i < points.size()) {
          sketch.line(to, plot.top() - 3, to, plot.top() + 4, Ink.SOFT, 0.8);
        }
        begin = i;
      }
    }
    if (!points.isEmpty()) {
      labels(points.get(points.size() - 1));
    }
  }

  private void limitLines(ControlPoint at, double from, double to) {
    for (double limit : new double[] {at.lower(), at.upper()}) {
      if (Double.isFinite(limit)) {
        sketch.line(from, y.at(limit), to, y.at(limit), Ink.INK, 0.9);
      }
    }
    if (Double.isFinite(at.centre())) {
      sketch.line(from, y.at(at.centre()), to, y.at(at.centre()), Ink.SOFT, 0.4);
    }
  }

  /** Limit lines end in words; where two ends meet, the lower one is pushed down. */
  private void labels(ControlPoint last) {
    double floor = Double.NEGATIVE_INFINITY;
    double[] values = {last.upper(), last.centre(), last.lower()};
    List<String> words = List.of(figure.upperWords(), figure.centreWords(), figure.lowerWords());
    for (int i = 0; i < values.length; i++) {
      if (Double.isFinite(values[i])) {
        double at = Math.max(y.at(values[i]), floor + WORD_PT);
        floor = at;
        sketch.write(
            plot.right() + 4,
            at,
            words.get(i),
            Label.Anchor.START,
            i == 1 ? Label.Tone.SOFT : Label.Tone.INK);
      }
    }
  }

  private void means() {
    StringBuilder line = new StringBuilder();
    boolean isBroken = true;
    double before = Double.NaN;
    for (ControlPoint point : thinned()) {
      if (!point.isDrawn() || point.isHeldOut()) {
        isBroken = isBroken || !point.isDrawn();
        continue;
      }
      boolean isGap = isBroken || point.at() - before > figure.gapSeconds();
      line.append(isGap ? 'M' : 'L').append(f(x.at(point.at()))).append(' ');
      line.append(f(y.at(point.mean())));
      isBroken = false;
      before = point.at();
    }
    sketch.path(line.toString(), Ink.INK, 0.6);
    if (figure.points().size() <= DOTS_UP_TO) {
      figure.points().stream()
          .filter(point -> point.isDrawn() && !point.isHeldOut())
          .forEach(point -> sketch.dot(x.at(point.at()), y.at(point.mean()), 0.9));
    }
  }

  /** Where many points share a place across the page, their lowest and highest. */
  private List<ControlPoint> thinned() {
    return figure.points().size() <= 4 * plot.width()
        ? figure.points()
        : Columns.thinned(figure.points(), point -> (long) (2 * x.at(point.at())));
  }

  private void rings() {
    List<ControlPoint> ringed =
        figure.points().stream()
            .filter(point -> point.signal().isPresent() && point.isDrawn())
            .toList();
    double radius = ringed.size() > MANY_RINGS ? SMALL_RING_PT : RING_PT;
    List<Box> taken = new ArrayList<>();
    for (ControlPoint point : ringed) {
      double at = x.at(point.at());
      double up = y.at(point.mean());
      sketch.ring(at, up, radius);
      taken.add(new Box(at - radius, up - radius, at + radius, up + radius));
    }
    String before = "";
    for (ControlPoint point : ringed) {
      String name = point.signal().orElseThrow();
      if (!name.equals(before)) {
        name(point, name, taken);
      }
      before = name;
    }
  }

  /**
   * Above the plot or on the outer side of the ring, else on the inner one, where there is room.
   */
  private void name(ControlPoint point, String text, List<Box> taken) {
    double half = text.length() * HALF_LETTER_PT + 1;
    double middle = Math.min(Math.max(x.at(point.at()), plot.left() + half), plot.right() - half);
    double strip = plot.top() - NAME_AWAY_PT / 2;
    double up = y.at(point.mean());
    double[] lines =
        point.mean() >= point.centre()
            ? new double[] {strip, up - NAME_AWAY_PT, up + NAME_AWAY_PT}
            : new double[] {up + NAME_AWAY_PT, strip, up - NAME_AWAY_PT};
    for (double line : lines) {
      Box box = new Box(middle - half, line - 4.4, middle + half, line + 4.4);
      boolean isOnPaper = box.top() >= 0 && box.bottom() < plot.bottom();
      if (isOnPaper && taken.stream().noneMatch(box::meets)) {
        taken.add(box);
        sketch.writeOver(middle, line, text, Label.Anchor.MIDDLE, Label.Tone.STRONG);
        return;
      }
    }
  }

  private static String f(double value) {
    return Sketch.f(value);
  }
}
