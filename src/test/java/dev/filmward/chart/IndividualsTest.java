package dev.filmward.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Figures;
import dev.filmward.stats.Restored;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class IndividualsTest {
  private static final double[] FLOW_RATES = {
    49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1
  };

  /**
   * Montgomery and Runger, table 16-3: mean 99.095, average moving range 2.59, limits 105.98 and
   * 92.21, moving range 8.46; the digits beyond computed apart from this project.
   */
  @Test
  void limitsOfTheConcentrationsAreMet() {
    IndividualsBaseline baseline = of(concentrations());
    IndividualsLimits limits = baseline.limits().orElseThrow();

    assertThat(baseline.centre()).isCloseTo(99.095, within(1e-13));
    assertThat(baseline.movingRangeBar()).isCloseTo(2.589473684210526, within(1e-13));
    assertThat(limits.value().upper()).isCloseTo(105.9795839050963, within(1e-11));
    assertThat(limits.value().lower()).isCloseTo(92.21041609490369, within(1e-11));
    assertThat(limits.movingRange().upper()).isCloseTo(8.4585984436315353, within(1e-11));
    assertThat(limits.movingRange().lower()).isZero();
  }

  /** NIST/SEMATECH e-Handbook 6.3.2.2, whose 1.128 is d2 rounded. */
  @Test
  void limitsOfTheFlowRatesAreMet() {
    IndividualsBaseline baseline = of(FLOW_RATES);
    IndividualsLimits limits = baseline.limits().orElseThrow();

    assertThat(limits.centre()).isCloseTo(50.81, within(1e-13));
    assertThat(baseline.movingRangeBar()).isCloseTo(1.8778, within(5e-5));
    assertThat(limits.value().upper()).isCloseTo(55.8041, within(0.002));
    assertThat(limits.value().lower()).isCloseTo(45.8159, within(0.002));
    assertThat(limits.value().upper()).isCloseTo(55.80241168005064, within(1e-12));
    assertThat(limits.movingRange().upper()).isCloseTo(6.133821048441928, within(1e-11));
  }

  /** 3 / d2(2) = 2.6587 and 1 + 3 d3(2) / d2(2) = 3.2665. */
  @Test
  void limitsAreTheKnownMultiplesOfTheAverageMovingRange() {
    IndividualsBaseline baseline = of(0, 1, 0, 1, 0);
    IndividualsLimits limits = baseline.limits().orElseThrow();

    assertThat(limits.value().upper() - limits.centre()).isCloseTo(2.6587, within(5e-5));
    assertThat(limits.movingRange().upper()).isCloseTo(3.2665, within(5e-5));
    assertThat(limits.movingRange().centre()).isCloseTo(1, within(1e-12));
  }

  @Test
  void theFirstValueHasNoMovingRange() {
    IndividualsChart chart = new IndividualsChart(new IndividualsLimits(10, 2));

    assertThat(chart.next(12)).isEqualTo(new ChartPoint(1, OptionalDouble.empty()));
    assertThat(chart.next(8).zMean()).isEqualTo(-1);
  }

  @Test
  void aMovingRangeOnItsLimitIsThreeOff() {
    IndividualsLimits limits = new IndividualsLimits(10, 2);
    IndividualsChart chart = new IndividualsChart(limits);
    chart.next(10);

    assertThat(chart.next(10 + limits.movingRange().upper()).zRange().orElseThrow())
        .isCloseTo(3, within(1e-13));
  }

  @Test
  void oneValueGivesNoLimits() {
    assertThat(of(4).limits()).isEmpty();
    assertThatThrownBy(() -> of(4).movingRangeBar()).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> of().centre()).isInstanceOf(IllegalStateException.class);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void howeverTheyAreSplitTheLimitsAndPointsAreTheSame(long seed) {
    Random random = new Random(seed);
    double[] values = random.doubles(300).toArray();
    IndividualsLimits limits = of(values).limits().orElseThrow();
    IndividualsBaseline merged = new IndividualsBaseline();
    IndividualsBaseline piece = new IndividualsBaseline();
    IndividualsChart whole = new IndividualsChart(limits);
    IndividualsChart cut = new IndividualsChart(limits);
    for (double value : values) {
      piece.add(value);
      if (random.nextInt(20) == 0) {
        merged.merge(Restored.from(piece));
        merged.merge(new IndividualsBaseline());
        piece = new IndividualsBaseline();
        cut = Restored.from(cut);
      }
      assertThat(cut.next(value)).isEqualTo(whole.next(value));
    }
    merged.merge(piece);

    assertThat(merged.count()).isEqualTo(300);
    assertThat(merged.limits().orElseThrow().centre()).isCloseTo(limits.centre(), within(1e-15));
    assertThat(merged.limits().orElseThrow().sigma()).isCloseTo(limits.sigma(), within(1e-15));
  }

  static double[] concentrations() {
    return Figures.table(IndividualsTest.class, "concentrations.csv").stream()
        .mapToDouble(row -> Double.parseDouble(row.get("x")))
        .toArray();
  }

  private static IndividualsBaseline of(double... values) {
    IndividualsBaseline baseline = new IndividualsBaseline();
    Arrays.stream(values).forEach(baseline::add);
    return baseline;
  }
}
