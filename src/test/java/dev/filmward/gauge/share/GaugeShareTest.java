package dev.filmward.gauge.share;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.subgroup.Subgroup;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GaugeShareTest {

  /** Between 0.04, within 0.05, five readings: 0.09 for readings, 0.05 for means; gauge 0.02. */
  @Test
  void countsWholeInReadingsAndDividedInMeans() {
    GaugeShare share = GaugeShare.of(0.02, new ChartedVariation(0.04, 0.05, 5));
    assertThat(share.ofReadings().orElseThrow()).isCloseTo(0.02 / 0.09, within(1e-12));
    assertThat(share.ofMeans().orElseThrow()).isCloseTo(0.004 / 0.05, within(1e-12));
    assertThat(share.plausibility()).isEqualTo(GaugeShare.Plausibility.FITS);
  }

  @Test
  void aGaugeThatVariesMoreThanItsReadingsIsToldAsImpossible() {
    GaugeShare share = GaugeShare.of(0.5, new ChartedVariation(0, 0.05, 5));
    assertThat(share.plausibility()).isEqualTo(GaugeShare.Plausibility.GAUGE_EXCEEDS_CHART);
    assertThat(share.ofReadings()).hasValue(1);
  }

  @Test
  void whereNothingVariesThereIsNoShare() {
    assertThat(GaugeShare.of(0, new ChartedVariation(0, 0, 1)).ofMeans()).isEmpty();
  }

  /**
   * Samples {1, 3}, {5, 7}, {3, 5}: within 2, means 2, 6, 4 with variance 4, so 4 - 2 / 2 between.
   */
  @Test
  void componentsComeFromTheSamplesAsCharted() {
    ChartedVariation charted =
        ChartedVariation.of(List.of(pair(1, 3), pair(5, 7), pair(3, 5))).orElseThrow();
    assertThat(charted.within()).isCloseTo(2, within(1e-12));
    assertThat(charted.between()).isCloseTo(3, within(1e-12));
    assertThat(charted.ofMeans()).isCloseTo(4, within(1e-12));
    assertThat(charted.readings()).isEqualTo(2);
    assertThat(ChartedVariation.of(List.of(pair(1, 3)))).isEmpty();
  }

  @Test
  void whatComesOutBelowZeroCountsAsZero() {
    ChartedVariation charted = ChartedVariation.of(List.of(pair(1, 3), pair(1, 3))).orElseThrow();
    assertThat(charted.between()).isZero();
  }

  private static Subgroup pair(double a, double b) {
    return Subgroup.of(new double[] {a, b}, 2);
  }

  /** 1 / sqrt(1 / 1.33^2 + 0.3^2) = 1.24 and with 0.5 it is 1.11, by hand calculator. */
  @ParameterizedTest
  @CsvSource({"1.33, 0.3, 1.24", "1.33, 0.5, 1.11", "1.33, 0, 1.33"})
  void aProcessShowsLessThroughAGauge(double trueCp, double ofTolerance, double observed) {
    assertThat(GaugeShare.observedCp(trueCp, ofTolerance)).isCloseTo(observed, within(0.005));
    assertThat(
            GaugeShare.trueCp(GaugeShare.observedCp(trueCp, ofTolerance), ofTolerance)
                .orElseThrow())
        .isCloseTo(trueCp, within(1e-12));
  }

  @Test
  void aGaugeThatMakesAllOfItLeavesNoTrueFigure() {
    assertThat(GaugeShare.trueCp(2, 0.5)).isEmpty();
    assertThatIllegalArgumentException().isThrownBy(() -> GaugeShare.trueCp(Double.NaN, 0.1));
  }
}
