package dev.filmward.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Restored;
import dev.filmward.subgroup.Subgroup;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MeanRangeLimitsTest {
  private final MeanRangeLimits limits = new MeanRangeLimits(10, 2);

  @Test
  void theLimitsOfAMeanAreThreeOfItsStandardDeviationsOff() {
    assertThat(limits.mean(1)).isEqualTo(new Band(4, 10, 16));
    assertThat(limits.mean(4)).isEqualTo(new Band(7, 10, 13));
    assertThat(limits.mean(400)).isEqualTo(new Band(9.7, 10, 10.3));
  }

  /** D1, d2 and D2 of 7 as printed in ASTM MNL 7: 0.204, 2.704 and 5.204. */
  @Test
  void theLimitsOfARangeAreThoseOfThePrintedFactors() {
    Band range = limits.range(7);

    assertThat(range.lower()).isCloseTo(2 * 0.204, within(0.003));
    assertThat(range.centre()).isCloseTo(2 * 2.704, within(0.003));
    assertThat(range.upper()).isCloseTo(2 * 5.204, within(0.003));
  }

  @Test
  void aMeanIsPlottedInItsOwnStandardDeviations() {
    assertThat(limits.plot(4, 13, 0).zMean()).isEqualTo(3);
    assertThat(limits.plot(1, 4, 0).zMean()).isEqualTo(-3);
    assertThat(limits.plot(5, 10, 0).zMean()).isZero();
  }

  /** d2 = 2 / sqrt(pi) and d3 = sqrt(2 - 4 / pi) for two readings. */
  @Test
  void aRangeIsPlottedInItsOwnStandardDeviations() {
    double centre = 2 * 2 / Math.sqrt(Math.PI);
    double sigma = 2 * Math.sqrt(2 - 4 / Math.PI);

    assertThat(limits.zRange(2, centre)).isCloseTo(0, within(1e-12));
    assertThat(limits.zRange(2, centre + 1.5 * sigma)).isCloseTo(1.5, within(1e-12));
    assertThat(limits.zRange(2, 0)).isCloseTo(-centre / sigma, within(1e-12));
  }

  @Test
  void aSubgroupOfOneHasNoRangePoint() {
    ChartPoint point = limits.plot(Subgroup.of(new double[] {12}, 1));

    assertThat(point).isEqualTo(new ChartPoint(1, OptionalDouble.empty()));
    assertThat(point.hasRange()).isFalse();
  }

  /** From seven readings on the lower limit is above 0 (ASTM MNL 7: D3 is 0 up to six). */
  @ParameterizedTest
  @CsvSource({"2, false", "3, false", "4, false", "5, false", "6, false", "7, true", "100, true"})
  void noRangeCanBeLowWhereTheLowerLimitIsZero(int size, boolean possible) {
    assertThat(limits.range(size).lower() > 0).isEqualTo(possible);
    assertThat(limits.zRange(size, 0) < -3).isEqualTo(possible);
  }

  @Test
  void withoutSpreadAnyDifferenceIsInfinitelyFarOff() {
    MeanRangeLimits constant = new MeanRangeLimits(5.5, 0);

    assertThat(constant.plot(3, 5.5, 0)).isEqualTo(new ChartPoint(0, OptionalDouble.of(0)));
    assertThat(constant.zMean(3, 5.6)).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(constant.zMean(3, 5.4)).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThat(constant.zRange(3, 0.1)).isEqualTo(Double.POSITIVE_INFINITY);
  }

  @Test
  void theSmallestSigmaStillGivesNumbers() {
    MeanRangeLimits narrow = new MeanRangeLimits(5.5, Double.MIN_VALUE);

    assertThat(narrow.plot(5, 5.5, 0).zMean()).isZero();
    assertThat(narrow.zMean(5, 5.6)).isPositive();
    assertThat(narrow.zRange(5, 0)).isNegative();
    assertThat(narrow.zRange(5, 0.1)).isPositive();
  }

  @ParameterizedTest
  @CsvSource({"NaN, 1", "Infinity, 1", "10, NaN", "10, -1", "10, Infinity"})
  void whatCannotBeLimitsIsRefused(double centre, double sigma) {
    assertThatThrownBy(() -> new MeanRangeLimits(centre, sigma))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, -5})
  void aSubgroupWithoutReadingsIsRefused(int size) {
    assertThatThrownBy(() -> limits.mean(size)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> limits.zMean(size, 1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> limits.zRange(size, 1)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aPointWithoutAPlaceIsRefused() {
    assertThatThrownBy(() -> new ChartPoint(Double.NaN, OptionalDouble.empty()))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new ChartPoint(0, OptionalDouble.of(Double.NaN)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aBandThatDoesNotAscendIsRefused() {
    assertThatThrownBy(() -> new Band(1, 0, 2)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Band(0, 1, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void limitsAreTheSameAfterARestart() {
    assertThat(Restored.from(limits)).isEqualTo(limits);
  }

  @Test
  void chartsAreKnownByTheirWords() {
    assertThat(ChartKind.fromWord("xbar")).isEqualTo(ChartKind.XBAR);
    assertThat(ChartKind.fromWord("range").word()).isEqualTo("range");
    assertThatThrownBy(() -> ChartKind.fromWord("XBAR"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("no chart \"XBAR\"; the charts are xbar, range, deviation,");
  }
}
