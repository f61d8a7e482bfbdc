package dev.filmward.capability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class EffectiveSizeTest {

  /** (1 - r)/(1 + r) and (1 - r^2)/(1 + r^2), printed to two digits. */
  @ParameterizedTest
  @CsvSource({"0.3, 0.54, 0.84", "0.5, 0.33, 0.60", "0.7, 0.18, 0.34", "0.9, 0.05, 0.11"})
  void shareOfReadingsThatCount(double lag1, double forMean, double forVariance) {
    EffectiveSize size = EffectiveSize.of(1000, lag1);

    assertThat(size.forMean() / 1000).isCloseTo(forMean, within(0.005));
    assertThat(size.forVariance() / 1000).isCloseTo(forVariance, within(0.0055));
  }

  @Test
  void withoutAutocorrelationAllCount() {
    assertThat(EffectiveSize.of(125, 0)).isEqualTo(EffectiveSize.independent(125));
  }

  @Test
  void anAlternatingSeriesIsNotMadeOutToBeMore() {
    EffectiveSize size = EffectiveSize.of(100, -0.5);

    assertThat(size.forMean()).isEqualTo(100);
    assertThat(size.forVariance()).isCloseTo(100 * 0.75 / 1.25, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, 1, 1.5, Double.NaN})
  void whatIsNoAutocorrelationIsRefused(double lag1) {
    assertThatThrownBy(() -> EffectiveSize.of(100, lag1)).hasMessageContaining("autocorrelation");
  }
}
