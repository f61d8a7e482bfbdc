package dev.filmward.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Moments;
import dev.filmward.stats.Restored;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ResidualChartTest {

  /** (12 - 10 - 0.5 x (11 - 10)) / (2 sqrt(1 - 0.25)). */
  @Test
  void aResidualIsWhatTheLastMeanDidNotLetExpect() {
    ResidualChart chart = new ResidualChart(10, 0.5, 2);

    assertThat(chart.add(11)).isEmpty();
    assertThat(chart.add(12).orElseThrow()).isCloseTo(1.5 / Math.sqrt(3), within(1e-15));
  }

  /** Seed 6, a million means: 2.7 of 1000 beyond 3, where plain limits would let 58 out. */
  @Test
  void limitsAtThreeHoldTheirPromiseForMeansThatAreAlike() {
    ResidualChart chart = new ResidualChart(0, 0.6, 1);
    Moments residuals = new Moments();
    int beyond = 0;
    for (double mean : Simulated.noise(new Random(6), 1_000_000, 0.6)) {
      double residual = chart.add(mean).orElse(0);
      residuals.add(residual);
      beyond += Math.abs(residual) > 3 ? 1 : 0;
    }

    assertThat(beyond / 1000.0).isCloseTo(2.7, within(0.2));
    assertThat(residuals.standardDeviation().orElseThrow()).isCloseTo(1, within(0.003));
  }

  @Test
  void afterAnInterruptionItStartsAnew() {
    ResidualChart chart = new ResidualChart(10, 0.5, 2);
    chart.add(11);
    chart.interrupt();

    assertThat(chart.add(12)).isEmpty();
    assertThat(chart.add(10)).isPresent();
  }

  @Test
  void aRestartChangesNothing() {
    double[] means = Simulated.noise(new Random(8), 100, 0.4);
    ResidualChart steady = new ResidualChart(0, 0.4, 1);
    ResidualChart restarted = new ResidualChart(0, 0.4, 1);
    for (double mean : means) {
      restarted = Restored.from(restarted);
      assertThat(restarted.add(mean)).isEqualTo(steady.add(mean));
    }
  }

  @Test
  void figuresThatNoProcessHasAreRefused() {
    assertThatThrownBy(() -> new ResidualChart(10, 1, 2))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new ResidualChart(10, 0.5, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
