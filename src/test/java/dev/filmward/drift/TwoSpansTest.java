package dev.filmward.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.FDistribution;
import org.apache.commons.math3.stat.inference.TTest;
import org.junit.jupiter.api.Test;

/** Two spans against a general-purpose library (Apache Commons Math) and arithmetic. */
class TwoSpansTest {
  private static final double[] BEFORE = {20.1, 20.3, 19.9, 20.0, 20.2, 20.1, 19.8, 20.0};
  private static final double[] AFTER = {20.6, 20.2, 20.5, 20.9, 20.4, 20.7};

  /** Commons Math computes Welch's test with the Satterthwaite degrees of freedom itself. */
  @Test
  void withoutAutocorrelationItIsWelchsTest() {
    TwoSpans spans = TwoSpans.of(side(BEFORE, 32, 0.04), side(AFTER, 24, 0.09));
    assertThat(spans.p()).isCloseTo(new TTest().tTest(BEFORE, AFTER), within(1e-12));
    assertThat(spans.level().value()).isCloseTo(mean(AFTER) - mean(BEFORE), within(1e-12));
    assertThat(spans.levelsDiffer()).isTrue();
  }

  @Test
  void theRatioOfSpreadsHasTheIntervalOfF() {
    Estimate ratio =
        TwoSpans.of(side(BEFORE, 32, 0.04), side(AFTER, 24, 0.09)).spread().orElseThrow();
    FDistribution law = new FDistribution(24, 32);
    assertThat(ratio.value()).isCloseTo(0.3 / 0.2, within(1e-12));
    assertThat(ratio.lower())
        .isCloseTo(Math.sqrt(2.25 / law.inverseCumulativeProbability(0.975)), within(1e-7));
    assertThat(ratio.upper())
        .isCloseTo(Math.sqrt(2.25 / law.inverseCumulativeProbability(0.025)), within(1e-7));
  }

  /** Half as many independent means make the interval wider by more than the root of two. */
  @Test
  void meansThatAreAlikeTellLess() {
    TwoSpans.Side plain = new TwoSpans.Side(40, 20, 0.04, 0, 0);
    TwoSpans.Side alike = new TwoSpans.Side(20, 20, 0.04, 0, 0);
    double narrow = TwoSpans.of(plain, plain).level().upper();
    double wide = TwoSpans.of(alike, alike).level().upper();
    assertThat(wide / narrow).isBetween(Math.sqrt(2), 1.1 * Math.sqrt(2));
    assertThat(TwoSpans.of(plain, plain).spread()).isEmpty();
  }

  @Test
  void levelsWithoutSpreadDifferOrDoNot() {
    TwoSpans.Side one = new TwoSpans.Side(8, 20, 0, 0, 0);
    assertThat(TwoSpans.of(one, one).levelsDiffer()).isFalse();
    assertThat(TwoSpans.of(one, new TwoSpans.Side(8, 21, 0, 0, 0)).levelsDiffer()).isTrue();
    assertThatThrownBy(() -> new TwoSpans.Side(1, 20, 0, 0, 0)).hasMessageContaining("two means");
  }

  private static TwoSpans.Side side(double[] means, double degrees, double within) {
    double mean = mean(means);
    double squares = 0;
    for (double each : means) {
      squares += (each - mean) * (each - mean);
    }
    return new TwoSpans.Side(means.length, mean, squares / (means.length - 1), degrees, within);
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double each : values) {
      sum += each;
    }
    return sum / values.length;
  }
}
