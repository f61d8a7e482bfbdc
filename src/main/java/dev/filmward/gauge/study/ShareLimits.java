package dev.filmward.gauge.study;

import dev.filmward.stats.AnovaTable.Part;
import dev.filmward.stats.ChiSquareDraws;
import java.util.Arrays;

/**
 * Confidence limits of the gauge, two-sided, 95 %: of its variance in um², and of its share in the
 * standard deviation of all readings in percent. A study of three operators is sure of little, and
 * this says so. Immutable.
 *
 * <p>By generalised inference: each expected mean square is its sum of squares over a chi-square
 * number, the components follow from them as from the mean squares themselves, and the limits are
 * percentiles of 20 000 draws. The draws are the same each time, so that a study gives the same
 * limits whenever it is worked out; from other draws they would differ by about 1 % of themselves.
 * They hold in about 95 of 100 studies, not in exactly so many.
 *
 * <p>Source: M. Hamada and S. Weerahandi, Measurement system assessment via generalized inference,
 * Journal of Quality Technology 32 (2000) 241 (from memory).
 */
public record ShareLimits(
    double gaugeLower, double gaugeUpper, double percentLower, double percentUpper) {
  /** How sure the limits are. */
  public static final double CONFIDENCE = 0.95;

  private static final int DRAWS = 20_000;
  private static final long SEED = 1956;

  public ShareLimits {
    if (!(gaugeLower <= gaugeUpper) || !(percentLower <= percentUpper)) {
      throw new IllegalArgumentException("limits in no order: " + gaugeLower + ", " + gaugeUpper);
    }
  }

  static ShareLimits of(StudyAnova anova, CrossedReadings readings) {
    ChiSquareDraws chiSquares = new ChiSquareDraws(SEED);
    double[] gauges = new double[DRAWS];
    double[] percents = new double[DRAWS];
    for (int i = 0; i < DRAWS; i++) {
      Components drawn = Components.of(drawn(anova, chiSquares), readings).shown();
      gauges[i] = drawn.gauge();
      percents[i] = 100 * Math.sqrt(drawn.gauge() / drawn.total());
    }
    Arrays.sort(gauges);
    Arrays.sort(percents);
    return new ShareLimits(lower(gauges), upper(gauges), lower(percents), upper(percents));
  }

  /** A table of what the expected mean squares may be; its tests mean nothing. */
  private static StudyAnova drawn(StudyAnova anova, ChiSquareDraws chiSquares) {
    Part error = drawn(anova.error(), chiSquares);
    return new StudyAnova(
        drawn(anova.part(), chiSquares),
        anova.operator().map(line -> drawn(line, chiSquares)),
        anova.interaction().map(line -> drawn(line, chiSquares)),
        error,
        anova.pooling(),
        error);
  }

  private static StudyAnova.Line drawn(StudyAnova.Line line, ChiSquareDraws chiSquares) {
    return new StudyAnova.Line(drawn(line.part(), chiSquares), line.f(), line.p());
  }

  private static Part drawn(Part part, ChiSquareDraws chiSquares) {
    double expected = part.sumOfSquares() / chiSquares.next(part.degrees());
    return new Part(expected * part.degrees(), part.degrees());
  }

  private static double lower(double[] sorted) {
    return sorted[(int) Math.round((1 - CONFIDENCE) / 2 * (DRAWS - 1))];
  }

  private static double upper(double[] sorted) {
    return sorted[(int) Math.round((1 + CONFIDENCE) / 2 * (DRAWS - 1))];
  }
}
