package dev.filmward.drift;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ForecastTest {
  private static final Duration LONG = Duration.ofDays(400);
  private static final Duration DAY = Duration.ofDays(1);

  /** From sample 40 on by 0.1 sigma a sample: 8 sigma at sample 120. */
  private static final MeanSeries CLEAN =
      Simulated.series(new double[100], i -> Math.max(0, i - 40) * 0.1);

  @Test
  void aLineWithoutNoiseMeetsTheLimitWhenItDoes() {
    Forecast forecast = Forecast.of(CLEAN, Simulated.um(8), DAY);

    assertThat(forecast.verdict()).isEqualTo(Forecast.Verdict.MEETS);
    Instant expected = forecast.expected().orElseThrow();
    assertThat(Duration.between(Simulated.at(120), expected).abs())
        .isLessThan(Duration.ofSeconds(1));
    assertThat(forecast.notBefore().orElseThrow()).isBeforeOrEqualTo(expected);
    assertThat(forecast.notAfter().orElseThrow()).isAfterOrEqualTo(expected);
  }

  @Test
  void aLimitBeyondTheHorizonIsNotMetWithinIt() {
    Forecast forecast = Forecast.of(CLEAN, Simulated.um(80), DAY);

    assertThat(forecast.verdict()).isEqualTo(Forecast.Verdict.NOT_WITHIN_HORIZON);
    assertThat(forecast.expected()).isEmpty();
  }

  @Test
  void aLimitOnTheOtherSideIsNeverMet() {
    assertThat(Forecast.of(CLEAN, Simulated.um(-3), LONG).verdict())
        .isEqualTo(Forecast.Verdict.NOT_WITHIN_HORIZON);
  }

  @Test
  void aLimitThatIsPassedIsNotForecast() {
    assertThat(Forecast.of(CLEAN, Simulated.um(5), LONG).verdict())
        .isEqualTo(Forecast.Verdict.ALREADY_THERE);
  }

  @Test
  void aLevelThatJumpedOrStaysIsNotCarriedOn() {
    MeanSeries jumped = Simulated.series(new double[100], i -> i < 40 ? 0 : 3);

    assertThat(Forecast.of(jumped, Simulated.um(8), LONG).verdict())
        .isEqualTo(Forecast.Verdict.NOT_DRIFTING);
    assertThat(Forecast.of(Simulated.inControl(new double[100]), Simulated.um(8), LONG).verdict())
        .isEqualTo(Forecast.Verdict.NOT_DRIFTING);
  }

  /**
   * 2000 series of 150 samples with seed 41: a ramp of 5 sigma in all, carried on to 8 sigma; what
   * is not called a ramp, or is there already, is not counted.
   */
  @ParameterizedTest
  @CsvSource({"0", "0.5"})
  void theIntervalHoldsTheTimeOfTheLimitIn95OfHundred(double phi) {
    Random random = new Random(41);
    int forecasts = 0;
    int covered = 0;
    for (int i = 0; i < 2000; i++) {
      double begin = 150 * (0.2 + 0.4 * random.nextDouble());
      double rate = 5 / (150 - begin);
      MeanSeries series =
          Simulated.series(Simulated.noise(random, 150, phi), k -> Math.max(0, k - begin) * rate);
      Forecast forecast = Forecast.of(series, Simulated.um(8), LONG);
      if (forecast.expected().isPresent()) {
        forecasts++;
        covered += holds(forecast, Simulated.at(begin + 8 / rate)) ? 1 : 0;
      }
    }

    System.out.printf(
        "time of a limit, phi %.1f, seed 41: %.2f %% covered of %d%n",
        phi, 100.0 * covered / forecasts, forecasts);
    assertThat(forecasts).isGreaterThan(1800);
    assertThat(covered / (double) forecasts).isBetween(0.93, 0.97);
  }

  private static boolean holds(Forecast forecast, Instant time) {
    return !forecast.notBefore().orElseThrow().isAfter(time)
        && forecast.notAfter().map(latest -> !latest.isBefore(time)).orElse(true);
  }
}
