package dev.filmward.stats;

import static dev.filmward.stats.QuantileRule.BETWEEN_ENDS;
import static dev.filmward.stats.QuantileRule.MEAN_RANK;
import static dev.filmward.stats.QuantileRule.MEDIAN_RANK;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SampleQuantilesTest {

  private static SampleQuantiles of(double... values) {
    SampleQuantiles quantiles = new SampleQuantiles();
    Arrays.stream(values).forEach(quantiles::add);
    return quantiles;
  }

  /**
   * NIST/SEMATECH e-Handbook 7.2.6.2: twelve readings, 90th percentile at place 11.7, so 95.1937 +
   * 0.7 (95.1990 - 95.1937) by the rule of the mean rank.
   */
  @Test
  void thePercentileInTheHandbookIsMet() {
    SampleQuantiles quantiles =
        of(
            95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.0610, 95.1591, 95.1195, 95.1065,
            95.0925, 95.1990, 95.1682);

    assertThat(quantiles.at(0.9, MEAN_RANK)).isCloseTo(95.19807, within(1e-9));
  }

  /** Five numbers, share 0.3: places 1.8, 2.2 and 29/15 by arithmetic. */
  @Test
  void eachRuleHasItsPlace() {
    SampleQuantiles quantiles = of(50, 10, 40, 20, 30);

    assertThat(quantiles.at(0.3, MEAN_RANK)).isCloseTo(18, within(1e-13));
    assertThat(quantiles.at(0.3, BETWEEN_ENDS)).isCloseTo(22, within(1e-13));
    assertThat(quantiles.at(0.3, MEDIAN_RANK)).isCloseTo(290 / 15.0, within(1e-13));
    assertThat(quantiles.at(0.5, MEAN_RANK)).isEqualTo(30);
    assertThat(quantiles.at(0.5, BETWEEN_ENDS)).isEqualTo(30);
    assertThat(quantiles.at(0.5, MEDIAN_RANK)).isCloseTo(30, within(1e-13));
  }

  @Test
  void farOutTheAnswerIsTheExtremeAndItIsSaid() {
    SampleQuantiles quantiles = of(2, 1, 3);

    assertThat(quantiles.at(0.00135, MEAN_RANK)).isEqualTo(1);
    assertThat(quantiles.at(0.99865, MEAN_RANK)).isEqualTo(3);
    assertThat(quantiles.reaches(0.00135, MEAN_RANK)).isFalse();
    assertThat(quantiles.reaches(0.25, MEAN_RANK)).isTrue();
    assertThat(quantiles.reaches(0, BETWEEN_ENDS)).isTrue();
  }

  @Test
  void oneNumberIsEveryQuantile() {
    assertThat(of(7).at(0.2, MEDIAN_RANK)).isEqualTo(7);
    assertThat(of(7).at(1, BETWEEN_ENDS)).isEqualTo(7);
  }

  @Test
  void withoutNumbersThereIsNoQuantile() {
    assertThatThrownBy(() -> new SampleQuantiles().at(0.5, MEAN_RANK))
        .isInstanceOf(IllegalStateException.class);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.01, 1.01, Double.NaN})
  void whatIsNoShareIsRefused(double p) {
    assertThatThrownBy(() -> of(1).at(p, MEAN_RANK)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> of(1).reaches(p, MEAN_RANK))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aNumberThatIsNotFiniteIsRefused() {
    assertThatThrownBy(() -> of(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void howeverTheyAreSplitTheOrderIsTheSame(long seed) {
    Random random = new Random(seed);
    double[] values = random.doubles(500).toArray();
    SampleQuantiles merged = new SampleQuantiles();
    SampleQuantiles piece = new SampleQuantiles();
    for (double value : values) {
      piece.add(value);
      if (random.nextInt(40) == 0) {
        piece.at(0.5, MEAN_RANK);
        merged.merge(Restored.from(piece));
        piece = new SampleQuantiles();
      }
    }
    merged.merge(piece);
    Arrays.sort(values);

    assertThat(merged.count()).isEqualTo(500);
    assertThat(merged.ordered()).isEqualTo(values);
    assertThat(merged.at(0.25, BETWEEN_ENDS)).isEqualTo(of(values).at(0.25, BETWEEN_ENDS));
  }

  @Test
  void anAccumulatorCanBeMergedWithItself() {
    SampleQuantiles quantiles = of(1, 2);
    quantiles.merge(quantiles);

    assertThat(quantiles.ordered()).containsExactly(1, 1, 2, 2);
  }
}
