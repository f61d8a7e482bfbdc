package dev.filmward.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.ChartConstants;
import dev.filmward.subgroup.Subgroup;
import org.junit.jupiter.api.Test;

/** Subgroups of one to five readings; figures computed apart from this project. */
class UnequalSubgroupsTest {
  private static final double[][] SUBGROUPS = {
    {10.1, 9.8, 10.3},
    {10.0, 10.2, 9.9, 10.4, 10.1},
    {9.7, 10.0},
    {10.2, 10.1, 10.0, 9.9},
    {10.5, 10.3, 10.6, 10.2, 10.4},
    {9.9}
  };

  private final Baseline baseline = new Baseline();

  UnequalSubgroupsTest() {
    for (double[] readings : SUBGROUPS) {
      baseline.add(Subgroup.of(readings, readings.length));
    }
  }

  @Test
  void theCentreWeighsEachSubgroupBySize() {
    assertThat(baseline.subgroups()).isEqualTo(6);
    assertThat(baseline.readings()).isEqualTo(20);
    assertThat(baseline.centre()).isCloseTo(202.6 / 20, within(1e-14));
  }

  @Test
  void theSubgroupOfOneHasNoRange() {
    assertThat(baseline.rangeBar()).isCloseTo((0.5 + 0.5 + 0.3 + 0.3 + 0.4) / 5, within(1e-14));
  }

  /** I. W. Burr, Statistical Quality Control Methods (1976). */
  @Test
  void sigmaIsTheBestLinearCombinationOfTheRanges() {
    assertThat(baseline.sigmaWithin().orElseThrow()).isCloseTo(0.2027574764171711, within(1e-11));
  }

  @Test
  void eachSubgroupHasLimitsOfItsOwnSize() {
    double pooledSigma = 0.18316009130708313;
    MeanRangeLimits limits = new MeanRangeLimits(10.13, pooledSigma);
    double[] upper = {
      10.447242584062822,
      10.375735048956622,
      10.518541227817956,
      10.404740136960624,
      10.375735048956622,
      10.679480273921248
    };

    for (int i = 0; i < SUBGROUPS.length; i++) {
      Band band = limits.mean(SUBGROUPS[i].length);
      assertThat(band.upper()).isCloseTo(upper[i], within(1e-13));
      assertThat(band.lower()).isCloseTo(2 * 10.13 - upper[i], within(1e-13));
    }
  }

  @Test
  void withEqualSizesSigmaIsTheAverageRangeOverD2() {
    Baseline equal = new Baseline();
    equal.add(4, 10, 1);
    equal.add(4, 11, 2);
    equal.add(1, 12, 0);

    assertThat(equal.sigmaWithin().orElseThrow())
        .isCloseTo(1.5 / ChartConstants.d2(4), within(1e-15));
  }
}
