package dev.filmward.gauge.conformity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.SpecLimits;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GuardedLimitsTest {
  private static final SpecLimits SPEC = SpecLimits.of(3.5, 4, 4.5);
  private static final SpecLimits AT_LEAST =
      new SpecLimits(OptionalDouble.of(3.5), OptionalDouble.empty(), OptionalDouble.empty());

  @ParameterizedTest
  @CsvSource({"SIMPLE, 0", "GUARD_95, 0.165", "GUARD_EXPANDED, 0.2"})
  void theRuleSaysHowWideTheBandIs(DecisionRule rule, double guard) {
    assertThat(rule.guard(0.1, 0.2)).isCloseTo(guard, within(1e-15));
  }

  @ParameterizedTest
  @CsvSource({
    "3.29, FAIL", "3.3, CONDITIONAL_FAIL", "3.49, CONDITIONAL_FAIL", "3.5, CONDITIONAL_PASS",
    "3.69, CONDITIONAL_PASS", "3.7, PASS", "4.3, PASS", "4.31, CONDITIONAL_PASS",
    "4.5, CONDITIONAL_PASS", "4.51, CONDITIONAL_FAIL", "4.71, FAIL"
  })
  void fourZonesLieAroundTheLimits(double value, Zone expected) {
    assertThat(new GuardedLimits(SPEC, 0.2).zone(value)).isEqualTo(expected);
  }

  @Test
  void aSingleLimitHasABandOnItsSideOnly() {
    GuardedLimits limits = new GuardedLimits(AT_LEAST, 0.2);
    assertThat(limits.acceptFrom()).hasValue(3.7);
    assertThat(limits.acceptUpTo()).isEmpty();
    assertThat(limits.zone(1000)).isEqualTo(Zone.PASS);
    assertThat(limits.zone(3.4)).isEqualTo(Zone.CONDITIONAL_FAIL);
  }

  @Test
  void withoutAGuardBandThereAreTwoZones() {
    GuardedLimits simple = new GuardedLimits(SPEC, 0);
    assertThat(simple.zone(3.5)).isEqualTo(Zone.PASS);
    assertThat(simple.zone(3.4999)).isEqualTo(Zone.FAIL);
  }

  @Test
  void bandsFromBothSidesMayLeaveNothing() {
    assertThat(new GuardedLimits(SPEC, 0.5).leavesRoom()).isTrue();
    assertThat(new GuardedLimits(SPEC, 0.51).leavesRoom()).isFalse();
    assertThat(new GuardedLimits(SPEC, 0.51).zone(4)).isEqualTo(Zone.CONDITIONAL_PASS);
  }

  /** Phi(-1.65) = 0.0495, Phi(-2) = 0.0228 (printed tables of the normal distribution). */
  @Test
  void atTheEdgeOfTheBandAFilmConformsAsOftenAsTheRuleSays() {
    GuardedLimits limits = new GuardedLimits(AT_LEAST, 0);
    assertThat(limits.probability(3.5, 0.1)).isCloseTo(0.5, within(1e-12));
    assertThat(limits.probability(3.5 + 0.165, 0.1)).isCloseTo(0.9505, within(0.0001));
    assertThat(limits.probability(3.5 + 0.2, 0.1)).isCloseTo(0.9772, within(0.0001));
    assertThat(new GuardedLimits(SPEC, 0).probability(4, 0.25)).isCloseTo(0.9545, within(0.0001));
  }

  @Test
  void withoutALimitThereIsNothingToConformTo() {
    assertThatIllegalArgumentException().isThrownBy(() -> new GuardedLimits(SpecLimits.NONE, 0.1));
    assertThatIllegalArgumentException().isThrownBy(() -> new GuardedLimits(SPEC, Double.NaN));
  }
}
