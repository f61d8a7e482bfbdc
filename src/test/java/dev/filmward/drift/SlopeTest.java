package dev.filmward.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Restored;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SlopeTest {

  /** 0.01 sigma a sample is 0.02 sigma, 0.002 um, an hour. */
  @Test
  void aStraightLineIsFoundAsItIs() {
    Slope slope = Slope.of(Simulated.series(new double[48], i -> 0.01 * i)).orElseThrow();

    assertThat(slope.perHour().value()).isCloseTo(0.002, within(1e-12));
    assertThat(slope.perHour().isNotZero()).isTrue();
  }

  @Test
  void equalMeansDoNotMove() {
    Slope slope = Slope.of(Simulated.inControl(new double[48])).orElseThrow();

    assertThat(slope.perHour()).isEqualTo(new Estimate(0, 0, 0));
  }

  /** 2000 series of 100 samples with seed 21. */
  @ParameterizedTest
  @CsvSource({"0", "0.5"})
  void theIntervalHoldsTheSlopeIn95OfHundred(double phi) {
    Random random = new Random(21);
    double rate = Simulated.umPerHour(0.01);
    int covered = 0;
    for (int i = 0; i < 2000; i++) {
      MeanSeries series = Simulated.series(Simulated.noise(random, 100, phi), k -> 0.01 * k);
      Estimate slope = Slope.of(series).orElseThrow().perHour();
      covered += slope.lower() <= rate && rate <= slope.upper() ? 1 : 0;
    }

    System.out.printf("slope, phi %.1f, seed 21: %.2f %% covered%n", phi, covered / 20.0);
    assertThat(covered / 2000.0).isBetween(0.93, 0.97);
  }

  @Test
  void tooFewSamplesOrNoTimeBetweenThemGiveNone() {
    MeanSeries atOnce = new MeanSeries(40);
    for (int i = 0; i < 40; i++) {
      atOnce.add(Simulated.START, i);
    }

    assertThat(Slope.of(Simulated.inControl(new double[29]))).isEmpty();
    assertThat(Slope.of(atOnce)).isEmpty();
  }

  @Test
  void aRestartChangesNothing() {
    MeanSeries series = Simulated.inControl(Simulated.noise(new Random(5), 60, 0.5));

    assertThat(Slope.of(Restored.from(series))).isEqualTo(Slope.of(series));
  }
}
