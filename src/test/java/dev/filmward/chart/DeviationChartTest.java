package dev.filmward.chart;

import static dev.filmward.chart.DeviationBaseline.Estimate.AVERAGE;
import static dev.filmward.chart.DeviationBaseline.Estimate.POOLED;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.ChartConstants;
import dev.filmward.stats.Figures;
import dev.filmward.stats.Restored;
import dev.filmward.subgroup.Subgroup;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DeviationChartTest {

  /** NIST reference data SILICON.DAT; chart values computed apart from this project. */
  @Test
  void limitsOfTwentyDaysOfFiveSpecimensAreMet() {
    DeviationBaseline baseline =
        of(Figures.rows(DeviationChartTest.class, "specimen-thickness.csv"));
    MeanDeviationLimits limits = baseline.limits(AVERAGE).orElseThrow();

    assertThat(baseline.averageDeviation().orElseThrow())
        .isCloseTo(0.820658177768561, within(1e-14));
    assertThat(baseline.pooledDeviation().orElseThrow())
        .isCloseTo(0.9396541917109719, within(1e-14));
    assertThat(baseline.sigmaWithin(POOLED).orElseThrow())
        .isCloseTo(0.9425951273041355, within(1e-13));
    assertThat(limits.sigmaWithin()).isCloseTo(0.8730539863175308, within(1e-14));
    assertThat(limits.centre()).isCloseTo(23.726, within(1e-13));
    assertThat(limits.mean(5).lower()).isCloseTo(22.5546751631401, within(1e-12));
    assertThat(limits.mean(5).upper()).isCloseTo(24.897324836859905, within(1e-12));
    assertThat(limits.deviation(5).lower()).isZero();
    assertThat(limits.deviation(5).centre()).isCloseTo(0.820658177768561, within(1e-14));
    assertThat(limits.deviation(5).upper()).isCloseTo(1.7143531842325368, within(1e-13));
  }

  /** Subgroups of one to five; I. W. Burr (1976), computed apart from this project. */
  @Test
  void sigmaOfUnequalSubgroupsIsTheBestCombination() {
    DeviationBaseline baseline =
        of(
            new double[][] {
              {10.1, 9.8, 10.3},
              {10.0, 10.2, 9.9, 10.4, 10.1},
              {9.7, 10.0},
              {10.2, 10.1, 10.0, 9.9},
              {10.5, 10.3, 10.6, 10.2, 10.4},
              {9.9}
            });

    assertThat(baseline.subgroups()).isEqualTo(6);
    assertThat(baseline.centre()).isCloseTo(10.13, within(1e-14));
    assertThat(baseline.sigmaWithin(AVERAGE).orElseThrow())
        .isCloseTo(0.19543677735199405, within(1e-14));
    assertThat(baseline.pooledDeviation().orElseThrow())
        .isCloseTo(0.18316009130708313, within(1e-14));
  }

  @Test
  void aDeviationIsPlottedInItsOwnStandardDeviations() {
    MeanDeviationLimits limits = new MeanDeviationLimits(10, 2);
    Subgroup fiveOf = Subgroup.of(new double[] {6, 8, 10, 12, 14}, 5);
    double deviation = Math.sqrt(40 / 4.0);
    double c4 = ChartConstants.c4(5);
    ChartPoint point = limits.plot(fiveOf);

    assertThat(point.zMean()).isZero();
    assertThat(point.zRange().orElseThrow())
        .isCloseTo((deviation / 2 - c4) / Math.sqrt(1 - c4 * c4), within(1e-14));
  }

  @Test
  void onTheLimitTheDistanceIsThree() {
    MeanDeviationLimits limits = new MeanDeviationLimits(10, 2);

    assertThat(limits.zDeviation(12, limits.deviation(12).upper())).isCloseTo(3, within(1e-13));
    assertThat(limits.zDeviation(12, limits.deviation(12).lower())).isCloseTo(-3, within(1e-13));
  }

  @Test
  void aSubgroupOfOneHasNoDeviation() {
    ChartPoint point = new MeanDeviationLimits(10, 2).plot(Subgroup.of(new double[] {12}, 1));

    assertThat(point.zMean()).isEqualTo(1);
    assertThat(point.hasRange()).isFalse();
  }

  @Test
  void equalReadingsLieOnTheCentreLine() {
    MeanDeviationLimits limits = new MeanDeviationLimits(5, 0);

    assertThat(limits.zDeviation(3, 0)).isZero();
    assertThat(limits.zDeviation(3, 1)).isEqualTo(Double.POSITIVE_INFINITY);
  }

  @Test
  void withoutASubgroupOfTwoThereAreNoLimits() {
    DeviationBaseline baseline = of(new double[][] {{4}, {5}});

    assertThat(baseline.limits(AVERAGE)).isEmpty();
    assertThat(baseline.limits(POOLED)).isEmpty();
    assertThat(baseline.averageDeviation()).isEmpty();
    assertThat(baseline.pooledDeviation()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, Double.NaN, Double.POSITIVE_INFINITY})
  void whatIsNoSumOfSquaresIsRefused(double squares) {
    assertThatThrownBy(() -> new DeviationBaseline().add(5, 10, squares))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void howeverItIsSplitTheLimitsAreTheSame(long seed) {
    Random random = new Random(seed);
    DeviationBaseline whole = new DeviationBaseline();
    DeviationBaseline merged = new DeviationBaseline();
    DeviationBaseline piece = new DeviationBaseline();
    for (int i = 0; i < 200; i++) {
      int size = 1 + random.nextInt(100);
      double mean = 12 + random.nextGaussian();
      double squares = random.nextDouble();
      whole.add(size, mean, squares);
      piece.add(size, mean, squares);
      if (random.nextInt(10) == 0) {
        merged.merge(Restored.from(piece));
        piece = new DeviationBaseline();
      }
    }
    merged.merge(piece);

    for (DeviationBaseline.Estimate estimate : DeviationBaseline.Estimate.values()) {
      MeanDeviationLimits expected = whole.limits(estimate).orElseThrow();
      MeanDeviationLimits limits = merged.limits(estimate).orElseThrow();
      assertThat(limits.centre()).isCloseTo(expected.centre(), within(1e-14));
      assertThat(limits.sigmaWithin()).isCloseTo(expected.sigmaWithin(), within(1e-15));
    }
    assertThat(merged.subgroups()).isEqualTo(200);
  }

  private static DeviationBaseline of(double[][] subgroups) {
    DeviationBaseline baseline = new DeviationBaseline();
    for (double[] readings : subgroups) {
      baseline.add(Subgroup.of(readings, readings.length));
    }
    return baseline;
  }
}
