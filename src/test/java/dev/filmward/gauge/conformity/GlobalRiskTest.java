package dev.filmward.gauge.conformity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.SpecLimits;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class GlobalRiskTest {

  @ParameterizedTest
  @CsvFileSource(resources = "risks.csv", delimiter = '|', numLinesToSkip = 4)
  void isThatOfAGeneralPurposeLibrary(
      double mean,
      double sigma,
      double u,
      Double lower,
      Double upper,
      double guard,
      double consumer,
      double producer) {
    GlobalRisk risk =
        GlobalRisk.of(
            new GlobalRisk.MeasuredProcess(mean, sigma, u),
            new GuardedLimits(spec(lower, upper), guard));
    assertThat(risk.consumer()).isCloseTo(consumer, within(1e-9 * consumer + 1e-16));
    assertThat(risk.producer()).isCloseTo(producer, within(1e-9 * producer + 1e-16));
  }

  private static SpecLimits spec(Double lower, Double upper) {
    return new SpecLimits(optional(lower), OptionalDouble.empty(), optional(upper));
  }

  private static OptionalDouble optional(Double value) {
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  /**
   * Parts in a million of a centred process, U a fifth of half the tolerance, by a simulation of a
   * million parts that somebody else made; four standard deviations of counting are allowed, and
   * the rounding of its figures.
   */
  @ParameterizedTest
  @CsvSource({
    "1.0, SIMPLE, 649, 2031, 1", "1.0, GUARD_95, 44, 13600, 50",
        "1.0, GUARD_EXPANDED, 17, 18700, 50",
    "1.33, SIMPLE, 16, 167, 1", "1.33, GUARD_95, 1, 1900, 50", "1.33, GUARD_EXPANDED, 1, 3000, 50"
  })
  void isThatOfASimulation(
      double cp, DecisionRule rule, double accepted, double refused, double rounding) {
    double u = 0.1;
    GuardedLimits limits = new GuardedLimits(spec(-1.0, 1.0), rule.guard(u, 2 * u));
    GlobalRisk risk = GlobalRisk.of(new GlobalRisk.MeasuredProcess(0, 1 / (3 * cp), u), limits);
    assertThat(risk.consumer() * 1e6)
        .isCloseTo(accepted, within(4 * Math.sqrt(Math.max(accepted, 1))));
    assertThat(risk.producer() * 1e6).isCloseTo(refused, within(4 * Math.sqrt(refused) + rounding));
  }

  /** A million parts of our own, off centre; four standard deviations of counting are allowed. */
  @Test
  void isWhatPartsAndReadingsDrawnAtRandomGive() {
    long seed = 20261126;
    Random random = new Random(seed);
    GuardedLimits limits = new GuardedLimits(spec(-1.0, 1.0), 0.15);
    int accepted = 0;
    int refused = 0;
    int parts = 1_000_000;
    for (int i = 0; i < parts; i++) {
      double truth = 0.4 + 0.4 * random.nextGaussian();
      double reading = truth + 0.15 * random.nextGaussian();
      boolean isAccepted = limits.zone(reading) == Zone.PASS;
      boolean isGood = truth >= -1 && truth <= 1;
      accepted += isAccepted && !isGood ? 1 : 0;
      refused += !isAccepted && isGood ? 1 : 0;
    }
    GlobalRisk risk = GlobalRisk.of(new GlobalRisk.MeasuredProcess(0.4, 0.4, 0.15), limits);
    assertThat(risk.consumer() * parts)
        .as("seed %s", seed)
        .isCloseTo(accepted, within(4 * Math.sqrt(accepted)));
    assertThat(risk.producer() * parts)
        .as("seed %s", seed)
        .isCloseTo(refused, within(4 * Math.sqrt(refused)));
  }

  @Test
  void whereGuardBandsLeaveNoRoomAllThatIsGoodIsRefused() {
    GlobalRisk risk =
        GlobalRisk.of(
            new GlobalRisk.MeasuredProcess(0, 0.1, 0.1), new GuardedLimits(spec(-1.0, 1.0), 1.1));
    assertThat(risk.consumer()).isZero();
    assertThat(risk.producer()).isCloseTo(1, within(1e-10));
  }

  @Test
  void aProcessWithoutSpreadIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new GlobalRisk.MeasuredProcess(0, Double.NaN, 0.1));
  }
}
