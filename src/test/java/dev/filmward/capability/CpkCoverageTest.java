package dev.filmward.capability;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.film.SpecLimits;
import dev.filmward.stats.Moments;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * In how many of many simulated weeks the true Cpk is at or above its 95 % lower limit. The default
 * holds in 94 to 96 of 100 wherever the mean is at least half a standard error off the middle of
 * two limits, and with one limit; in the very middle it holds in up to 97. Standard error of a
 * count: 0.35 of 100 of 4000 weeks, 0.22 of 10 000, which the bounds allow for twice.
 */
class CpkCoverageTest {
  private static final long SEED = 20_261_125;
  private static final int WEEKS = 10_000;
  private static final int FEWER_WEEKS = 4000;
  private static final double LEAST = 0.94 - 2 * 0.0035;

  /** Off the middle by 0.5 to 3 standard errors, and by one sigma; a Cpk of 4/3. */
  @ParameterizedTest
  @CsvSource({
    "30, 0.5", "30, 1", "30, 2", "30, 3", "30, 5.5",
    "100, 0.5", "100, 1", "100, 2", "100, 3", "100, 10",
    "300, 0.5", "300, 1", "300, 2", "300, 3", "300, 17"
  })
  void offTheMiddleTheDefaultHoldsInNinetyFourToNinetySixOfAHundredWeeks(
      int n, double standardErrors) {
    assertThat(coverageOfDefault(n, standardErrors)).as("seed %d", SEED + n).isBetween(LEAST, 0.96);
  }

  /** Where both limits bind alike; the exact limits of one side would hold in 97.5. */
  @ParameterizedTest
  @ValueSource(ints = {30, 100, 300})
  void inTheVeryMiddleTheDefaultIsALittleTooCareful(int n) {
    assertThat(coverageOfDefault(n, 0)).as("seed %d", SEED + n).isBetween(0.95, 0.97);
  }

  /** Mean 4 sigma below the upper limit and 6 above the lower: a Cpk of 4/3. */
  @ParameterizedTest
  @ValueSource(ints = {30, 100, 300})
  void offTheMiddleTheExactLimitHoldsInNinetyFive(int n) {
    assertThat(coverageOfNearer(n, SpecLimits.of(-6, 0, 4)))
        .as("seed %d", SEED + n)
        .isBetween(0.94, 0.96);
  }

  /** Both limits can be the nearer one; the limit is then more careful than it says. */
  @ParameterizedTest
  @ValueSource(ints = {30, 100, 300})
  void inTheMiddleTheExactLimitHoldsMoreOften(int n) {
    assertThat(coverageOfNearer(n, SpecLimits.of(-4, 0, 4)))
        .as("seed %d", SEED + n)
        .isBetween(0.965, 0.985);
  }

  @Test
  void theDefaultIsTheOneThatIsNearerToWhatItSays() {
    Indices indices = Indices.of(0, 1, SpecLimits.of(-4, 0, 4));
    IndexConfidence confidence = IndexConfidence.of(0.95, 30);
    assertThat(confidence.cpk(indices))
        .isEqualTo(confidence.cpk(indices, CpkMethod.CENTRING_ESTIMATED));
  }

  private static double coverageOfDefault(int n, double standardErrors) {
    SplittableRandom random = new SplittableRandom(SEED + n);
    double offset = standardErrors / Math.sqrt(n);
    SpecLimits spec = SpecLimits.of(-4 - 2 * offset, 0, 4);
    int holds = 0;
    for (int week = 0; week < FEWER_WEEKS; week++) {
      Indices indices = week(random, n, spec);
      double offsetFound = indices.offsetUm() / indices.sigma();
      CentredCpk estimate =
          new CentredCpk(EffectiveSize.independent(n), indices.cpk().getAsDouble(), offsetFound);
      holds += estimate.above(4 / 3.0) >= 0.05 ? 1 : 0;
    }
    return holds / (double) FEWER_WEEKS;
  }

  /**
   * The limit exceeds the truth when the estimate exceeds one figure: solved once, not 10 000
   * times.
   */
  private static double coverageOfNearer(int n, SpecLimits spec) {
    SplittableRandom random = new SplittableRandom(SEED + n);
    double critical = estimateWhoseLimitIs(4 / 3.0, n);
    int holds = 0;
    for (int week = 0; week < WEEKS; week++) {
      holds += week(random, n, spec).cpk().getAsDouble() <= critical ? 1 : 0;
    }
    return holds / (double) WEEKS;
  }

  private static Indices week(SplittableRandom random, int n, SpecLimits spec) {
    Moments readings = new Moments();
    for (int i = 0; i < n; i++) {
      readings.add(random.nextGaussian());
    }
    return Indices.of(readings.mean(), readings.standardDeviation().getAsDouble(), spec);
  }

  private static double estimateWhoseLimitIs(double truth, int n) {
    IndexConfidence confidence = IndexConfidence.of(0.95, n);
    double low = truth;
    double high = 2 * truth;
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      Indices indices = Indices.of(0, 1, SpecLimits.of(-3 * middle, 0, 3 * middle));
      if (confidence.cpk(indices, CpkMethod.NEARER_LIMIT_EXACT).orElseThrow().atLeast() > truth) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return low;
  }
}
