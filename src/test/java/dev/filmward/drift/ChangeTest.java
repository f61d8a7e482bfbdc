package dev.filmward.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Figures;
import dev.filmward.stats.Moments;
import dev.filmward.stats.Restored;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChangeTest {
  private static final int SERIES = 2000;

  /** Seven days of 48 samples. */
  private static final int WEEK = 336;

  /**
   * G. W. Cobb, The problem of the Nile, Biometrika 65 (1978) 243: the flow fell after 1898, from a
   * mean of 1097.75 over 28 years to 849.97 over 72.
   */
  @Test
  void theNileFellAfter1898() {
    double[][] flows = Figures.rows(Moments.class, "sample-nile.csv");
    MeanSeries nile = new MeanSeries(flows.length);
    for (int i = 0; i < flows.length; i++) {
      nile.add(year(1871 + i), flows[i][0]);
    }
    Change change = Change.in(nile).orElseThrow();

    assertThat(change.kind()).isEqualTo(Change.Kind.STEP);
    assertThat(change.at()).isEqualTo(year(1899));
    assertThat(change.notBefore().orElseThrow()).isBetween(year(1890), year(1898));
    assertThat(change.notAfter()).isBetween(year(1899), year(1905));
    assertThat(change.size().value()).isCloseTo(849.97 - 1097.75, within(3.0));
  }

  private static Instant year(int year) {
    return LocalDate.of(year, 7, 1).atStartOfDay(ZoneOffset.UTC).toInstant();
  }

  @Test
  void aStepWithoutNoiseIsFoundExactly() {
    Change change = Change.in(Simulated.series(new double[60], i -> i < 25 ? 0 : 2)).orElseThrow();

    assertThat(change.kind()).isEqualTo(Change.Kind.STEP);
    assertThat(change.at()).isEqualTo(Simulated.at(25));
    assertThat(change.notBefore()).contains(Simulated.at(24));
    assertThat(change.notAfter()).isEqualTo(Simulated.at(25));
    assertThat(change.size().value()).isCloseTo(2 * Simulated.SIGMA_UM, within(1e-9));
  }

  @Test
  void aRampWithoutNoiseIsFoundExactly() {
    Change change =
        Change.in(Simulated.series(new double[60], i -> Math.max(0, i - 25) * 0.1)).orElseThrow();

    assertThat(change.kind()).isEqualTo(Change.Kind.RAMP);
    assertThat(change.at()).isEqualTo(Simulated.at(25));
    assertThat(change.size().value()).isCloseTo(Simulated.umPerHour(0.1), within(1e-9));
  }

  /** 2000 series of 150 samples with seed 31, a step of 1.5 and 2 sigma somewhere in the middle. */
  @ParameterizedTest
  @CsvSource({"0, 1.5", "0.5, 2"})
  void theIntervalHoldsTheTimeOfAStepIn95OfHundred(double phi, double sigmas) {
    Random random = new Random(31);
    int covered = 0;
    int announced = 0;
    int coveredOfAnnounced = 0;
    for (int i = 0; i < SERIES; i++) {
      int first = 38 + random.nextInt(74);
      MeanSeries series =
          Simulated.series(Simulated.noise(random, 150, phi), k -> k < first ? 0 : sigmas);
      boolean holds =
          holds(
              StepFit.change(new Profile(new Window(series), Shape.STEP), 0),
              Simulated.at(first - 0.5));
      boolean isAnnounced = Change.in(series).isPresent();
      covered += holds ? 1 : 0;
      announced += isAnnounced ? 1 : 0;
      coveredOfAnnounced += holds && isAnnounced ? 1 : 0;
    }

    System.out.printf(
        "time of a step of %.1f sigma, phi %.1f, seed 31: %.2f %% covered, of %.1f %% announced"
            + " %.2f %%%n",
        sigmas, phi, covered / 20.0, announced / 20.0, 100.0 * coveredOfAnnounced / announced);
    assertThat(covered / (double) SERIES).isBetween(0.93, 0.97);
    assertThat(coveredOfAnnounced / (double) announced).isBetween(0.93, 0.97);
    assertThat(announced / (double) SERIES).isGreaterThan(0.8);
  }

  /** 2000 series of 150 samples with seed 32: begin, rate and size of a ramp of 4 sigma in all. */
  @ParameterizedTest
  @CsvSource({"0", "0.5"})
  void theIntervalsHoldBeginAndRateOfARampIn95OfHundred(double phi) {
    Random random = new Random(32);
    int begins = 0;
    int rates = 0;
    for (int i = 0; i < SERIES; i++) {
      double begin = 150 * (0.2 + 0.4 * random.nextDouble());
      double rate = 4 / (150 - begin);
      MeanSeries series =
          Simulated.series(Simulated.noise(random, 150, phi), k -> Math.max(0, k - begin) * rate);
      Change change = RampFit.change(new Profile(new Window(series), Shape.RAMP), 0);
      double perHour = Simulated.umPerHour(rate);
      begins += holds(change, Simulated.at(begin)) ? 1 : 0;
      rates += change.size().lower() <= perHour && perHour <= change.size().upper() ? 1 : 0;
    }

    System.out.printf(
        "ramp, phi %.1f, seed 32: begin %.2f %%, rate %.2f %% covered%n",
        phi, begins / 20.0, rates / 20.0);
    assertThat(begins / (double) SERIES).isBetween(0.93, 0.97);
    assertThat(rates / (double) SERIES).isBetween(0.93, 0.97);
  }

  private static boolean holds(Change change, Instant time) {
    return change.notBefore().map(earliest -> !earliest.isAfter(time)).orElse(true)
        && !change.notAfter().isBefore(time);
  }

  /** 2000 weeks in control, seed 33. */
  @ParameterizedTest
  @CsvSource({"0", "0.5"})
  void noChangeIsAnnouncedInMoreThanOneOfHundredWeeksInControl(double phi) {
    Random random = new Random(33);
    int announced = 0;
    for (int week = 0; week < SERIES; week++) {
      MeanSeries series = Simulated.inControl(Simulated.noise(random, WEEK, phi));
      announced += Change.in(series).isPresent() ? 1 : 0;
    }

    System.out.printf(
        "weeks in control, phi %.1f, seed 33: %.2f %% announced%n", phi, announced / 20.0);
    assertThat(announced / (double) SERIES).isLessThan(0.01);
  }

  @Test
  void nothingIsLookedForInTooFewOrEqualMeans() {
    assertThat(Change.in(Simulated.series(new double[39], i -> i))).isEmpty();
    assertThat(Change.in(Simulated.inControl(new double[100]))).isEmpty();
  }

  @Test
  void aRestartInTheMiddleChangesNothing() {
    double[] noise = Simulated.noise(new Random(2), 120, 0.3);
    MeanSeries steady = Simulated.series(noise, i -> i < 70 ? 0 : 2);
    MeanSeries restarted = new MeanSeries(120);
    for (int i = 0; i < 120; i++) {
      restarted.add(steady.at(i), steady.mean(i));
      restarted = Restored.from(restarted);
    }

    Optional<Change> change = Change.in(steady);
    assertThat(change).isPresent();
    assertThat(Change.in(restarted)).isEqualTo(change);
  }
}
