package dev.filmward.capability;

import dev.filmward.stats.AndersonDarling;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * Are readings normal enough for indices that assume it? By the test of Anderson and Darling at 5
 * %; with more than 1000 readings that test finds faults that do not matter, so skewness and
 * kurtosis decide: they may move the point 3 sigma from the mean by 0.3 sigma, a tenth of what an
 * index is counted in. That bound is ours.
 *
 * <p>Autocorrelated or rounded readings look less normal than they are. Fewer than 8 readings, or
 * all equal, are not judged. Immutable. Source: see {@link AndersonDarling} and {@link Shape}.
 *
 * @param shape empty where nothing was judged, as is the test
 */
public record NormalityGate(
    Normality verdict, Optional<AndersonDarling> test, Optional<Shape> shape, int readings) {
  private static final int FEWEST = 8;
  private static final int MOST_FOR_TEST = 1000;
  private static final double SIGNIFICANCE = 0.05;
  private static final double BEARABLE_DISPLACEMENT = 0.3;

  public static NormalityGate of(double[] readings) {
    int n = readings.length;
    if (n < FEWEST || Arrays.stream(readings).allMatch(reading -> reading == readings[0])) {
      return new NormalityGate(Normality.NOT_JUDGED, Optional.empty(), Optional.empty(), n);
    }
    AndersonDarling test = AndersonDarling.of(readings);
    Shape shape = Shape.of(readings);
    boolean normal =
        n > MOST_FOR_TEST
            ? shape.displacementAtThreeSigma() <= BEARABLE_DISPLACEMENT
            : test.p() >= SIGNIFICANCE;
    Normality verdict = normal ? Normality.NORMAL : Normality.NOT_NORMAL;
    return new NormalityGate(verdict, Optional.of(test), Optional.of(shape), n);
  }

  /** The verdict with the figures it rests on. */
  public String words() {
    if (test.isEmpty() || shape.isEmpty()) {
      return verdict.words();
    }
    return readings > MOST_FOR_TEST
        ? String.format(
            Locale.ROOT,
            "%s (skewness %.2f, excess kurtosis %.2f)",
            verdict.words(),
            shape.get().skewness(),
            shape.get().excessKurtosis())
        : String.format(
            Locale.ROOT, "%s (Anderson-Darling p = %.3f)", verdict.words(), test.get().p());
  }
}
