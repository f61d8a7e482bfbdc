package dev.filmward.report.paper;

import dev.filmward.report.CharacteristicWeek;
import dev.filmward.report.CharacteristicWeek.Bins;
import dev.filmward.report.CharacteristicWeek.TrendWeek;
import dev.filmward.report.IndexWeek;
import dev.filmward.report.paper.Block.Figure;
import dev.filmward.report.paper.drawing.DistributionChart;
import dev.filmward.report.paper.drawing.DistributionFigure;
import dev.filmward.report.paper.drawing.IndexChart;
import dev.filmward.report.paper.drawing.IndexFigure;
import dev.filmward.report.paper.drawing.IndexPoint;
import java.util.List;

/** Distribution and trend of one characteristic. Pure. */
final class SpreadCharts {
  private static final double HEIGHT_PT = 84;
  private static final int CURVE_POINTS = 81;
  private static final double CURVE_SIGMAS = 4;

  private final Wording wording;
  private final Texts texts;
  private final double widthPt;

  SpreadCharts(Wording wording, double widthPt) {
    this.wording = wording;
    this.texts = wording.texts();
    this.widthPt = widthPt;
  }

  Figure distribution(CharacteristicWeek each, Bins bins, String caption) {
    Measure measure = Measure.of(each);
    double[] edges = new double[bins.counts().size() + 1];
    for (int i = 0; i < edges.length; i++) {
      edges[i] = (bins.start() + i * bins.width()) * measure.factor();
    }
    double target = measure.drawn(each.individual().target());
    double[] at = curveAt(each);
    DistributionFigure figure =
        new DistributionFigure(
            edges,
            bins.counts().stream().mapToDouble(Long::doubleValue).toArray(),
            scaled(at, measure.factor()),
            curve(each, bins, at),
            WeekCharts.land(each.individual(), measure, texts),
            target,
            texts.say("spread.target", "value", texts.number(target, measure.decimals())),
            texts::number);
    return new Figure(
        DistributionChart.draw(figure, widthPt, HEIGHT_PT),
        caption,
        texts.say("spread.alt", "name", wording.characteristic(each)));
  }

  /** Only where the normal distribution was used for the index. */
  private static double[] curveAt(CharacteristicWeek each) {
    boolean isUsed =
        each.index().kind() != IndexWeek.Kind.NONE
            && each.index().method() == IndexWeek.Method.NORMAL
            && each.mean().isPresent()
            && each.sigmaOverall().orElse(0) > 0;
    double[] at = new double[isUsed ? CURVE_POINTS : 0];
    for (int i = 0; i < at.length; i++) {
      double z = CURVE_SIGMAS * (2.0 * i / (CURVE_POINTS - 1) - 1);
      at[i] = each.mean().getAsDouble() + z * each.sigmaOverall().getAsDouble();
    }
    return at;
  }

  /** The readings that a normal distribution puts into a bar there: n width f(x). */
  private static double[] curve(CharacteristicWeek each, Bins bins, double[] at) {
    double[] counts = new double[at.length];
    double readings = bins.counts().stream().mapToLong(Long::longValue).sum();
    for (int i = 0; i < at.length; i++) {
      double sigma = each.sigmaOverall().orElseThrow();
      double z = (at[i] - each.mean().orElseThrow()) / sigma;
      counts[i] = readings * bins.width() * Math.exp(-z * z / 2) / (sigma * Math.sqrt(2 * Math.PI));
    }
    return counts;
  }

  private static double[] scaled(double[] values, double factor) {
    double[] scaled = values.clone();
    for (int i = 0; i < scaled.length; i++) {
      scaled[i] *= factor;
    }
    return scaled;
  }

  Figure trend(CharacteristicWeek each) {
    List<IndexPoint> points = each.trend().stream().map(week -> point(each, week)).toList();
    IndexFigure figure =
        new IndexFigure(
            points,
            each.specSteps(),
            wording.report().asked().index(),
            texts.say("trend.required", "value", wording.required()),
            texts::number);
    return new Figure(
        IndexChart.draw(figure, widthPt, HEIGHT_PT),
        texts.say("trend.caption"),
        texts.say(
            "trend.alt",
            "name",
            wording.characteristic(each),
            "now",
            wording.index(points.get(points.size() - 1).value())));
  }

  /** The interval of this week; of weeks before, the line down to what Ppk is at least. */
  private static IndexPoint point(CharacteristicWeek each, TrendWeek week) {
    TrendWeek last = each.trend().get(each.trend().size() - 1);
    double ppk = week.ppk().orElse(Double.NaN);
    boolean isNow = week.equals(last) && each.index().from().isPresent();
    double from = isNow ? each.index().from().orElse(Double.NaN) : week.atLeast().orElse(ppk);
    double to = isNow ? each.index().to().orElse(Double.NaN) : ppk;
    String word = week.week().substring(week.week().indexOf('W') + 1);
    return new IndexPoint(
        word,
        isNow ? each.index().ppk().orElse(ppk) : ppk,
        from,
        to,
        week.stable() ? IndexPoint.Claim.CAPABILITY : IndexPoint.Claim.PERFORMANCE);
  }
}
