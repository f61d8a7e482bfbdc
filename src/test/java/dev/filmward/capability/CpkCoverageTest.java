package dev.filmward.capability;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.film.SpecLimits;
import dev.filmward.stats.Moments;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** In how many of many simulated weeks the true Cpk is at or above its 95 % lower limit. */
class CpkCoverageTest {
  private static final long SEED = 20_261_125;
  private static final int WEEKS = 10_000;

  /** Mean 4 sigma below the upper limit and 6 above the lower: a Cpk of 4/3. */
  @ParameterizedTest
  @ValueSource(ints = {30, 100, 300})
  void theLowerLimitHoldsInNinetyFiveOfAHundredWeeks(int n) {
    assertThat(coverage(n, SpecLimits.of(-6, 0, 4))).as("seed %d", SEED + n).isBetween(0.94, 0.96);
  }

  /** Both limits can be the nearer one; the limit is then more careful than it says. */
  @ParameterizedTest
  @ValueSource(ints = {30, 100, 300})
  void inTheMiddleTheLowerLimitHoldsMoreOften(int n) {
    assertThat(coverage(n, SpecLimits.of(-4, 0, 4))).as("seed %d", SEED + n).isBetween(0.95, 0.985);
  }

  /**
   * The limit exceeds the truth when the estimate exceeds one figure: solved once, not 10 000
   * times.
   */
  private static double coverage(int n, SpecLimits spec) {
    SplittableRandom random = new SplittableRandom(SEED + n);
    double critical = estimateWhoseLimitIs(4 / 3.0, n);
    int holds = 0;
    for (int week = 0; week < WEEKS; week++) {
      Moments readings = new Moments();
      for (int i = 0; i < n; i++) {
        readings.add(random.nextGaussian());
      }
      double sigma = readings.standardDeviation().getAsDouble();
      double cpk = Indices.of(readings.mean(), sigma, spec).cpk().getAsDouble();
      holds += cpk <= critical ? 1 : 0;
    }
    return holds / (double) WEEKS;
  }

  private static double estimateWhoseLimitIs(double truth, int n) {
    IndexConfidence confidence = IndexConfidence.of(0.95, n);
    double low = truth;
    double high = 2 * truth;
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      Indices indices = Indices.of(0, 1, SpecLimits.of(-3 * middle, 0, 3 * middle));
      if (confidence.cpk(indices).orElseThrow().atLeast() > truth) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return low;
  }
}
