package dev.filmward.capability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.chart.Baseline;
import dev.filmward.film.SpecLimits;
import dev.filmward.stats.Figures;
import dev.filmward.stats.Moments;
import dev.filmward.subgroup.Subgroup;
import java.util.Arrays;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CapabilityTest {
  private static final OptionalDouble NOTHING = OptionalDouble.empty();

  /** NIST/SEMATECH e-Handbook of Statistical Methods, 6.1.6: Cp 1.0, Cpk 0.6667. */
  @Test
  void theExampleOfTheHandbookIsMet() {
    Capability capability = withSigma(16, 2, SpecLimits.of(8, 14, 20));

    assertThat(capability.cp()).hasValue(1);
    assertThat(capability.cpk().orElseThrow()).isCloseTo(0.6667, within(0.0001));
  }

  /** (20 - 21) / (3 x 2). */
  @Test
  void aMeanOutsideTheLimitsGivesANegativeCpk() {
    Capability capability = withSigma(21, 2, SpecLimits.of(8, 14, 20));

    assertThat(capability.cp()).hasValue(1);
    assertThat(capability.cpk().orElseThrow()).isCloseTo(-1 / 6.0, within(1e-15));
  }

  /** D. C. Montgomery, Statistical Quality Control, bursting strength of bottles: 0.67. */
  @Test
  void aLowerLimitAloneGivesCpkOnly() {
    OptionalDouble lower = OptionalDouble.of(200);
    Capability capability = withSigma(264, 32, new SpecLimits(lower, NOTHING, NOTHING));

    assertThat(capability.cp()).isEmpty();
    assertThat(capability.cpk().orElseThrow()).isCloseTo(64 / 96.0, within(1e-15));
  }

  @Test
  void anUpperLimitAloneGivesCpkOnly() {
    OptionalDouble upper = OptionalDouble.of(13);
    Capability capability = withSigma(12.1, 0.2, new SpecLimits(NOTHING, NOTHING, upper));

    assertThat(capability.cp()).isEmpty();
    assertThat(capability.cpk().orElseThrow()).isCloseTo(0.9 / 0.6, within(1e-14));
  }

  /** A film layer of 12.5 um with 1 um either way: 2 / 1.62 and 0.89 / 0.81. */
  @Test
  void theNearerLimitDecides() {
    Capability capability = withSigma(12.61, 0.27, SpecLimits.of(11.5, 12.5, 13.5));

    assertThat(capability.cp().orElseThrow()).isCloseTo(2 / 1.62, within(1e-14));
    assertThat(capability.cpk().orElseThrow()).isCloseTo(0.89 / 0.81, within(1e-14));
  }

  /**
   * Flow width (D. C. Montgomery, Introduction to Statistical Quality Control, Example 6.1, limits
   * 1.00 and 2.00): the book has Cp 1.192; full digits were computed apart from this project.
   */
  @Test
  void capabilityFromReadingsIsThatOfTheBook() {
    Baseline baseline = new Baseline();
    Moments readings = new Moments();
    for (double[] sample : Figures.rows(Baseline.class, "flow-width-phase1.csv")) {
      baseline.add(Subgroup.of(sample, sample.length));
      Arrays.stream(sample).forEach(readings::add);
    }
    Capability capability =
        Capability.of(
            readings.mean(),
            baseline.sigmaWithin(),
            readings.standardDeviation(),
            SpecLimits.of(1, 1.5, 2));

    assertThat(capability.cp().orElseThrow()).isCloseTo(1.192, within(0.001));
    assertThat(capability.cp().orElseThrow()).isCloseTo(1.192021181972252, within(1e-10));
    assertThat(capability.cpk().orElseThrow()).isCloseTo(1.1786457506935772, within(1e-10));
    assertThat(capability.pp().orElseThrow()).isCloseTo(1.2509362944907145, within(1e-13));
    assertThat(capability.ppk().orElseThrow()).isCloseTo(1.2368997885174928, within(1e-13));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, Double.MIN_VALUE, Double.NaN})
  void withoutAUsableSpreadThereIsNoIndex(double sigma) {
    Capability capability = withSigma(10, sigma, SpecLimits.of(9, 10, 11));

    assertThat(capability.isEmpty()).isTrue();
  }

  @Test
  void aMeanOnTheLimitWithoutSpreadHasNoIndexEither() {
    assertThat(withSigma(11, 0, SpecLimits.of(9, 10, 11))).isEqualTo(Capability.NONE);
  }

  @Test
  void aTargetAloneIsNoLimit() {
    SpecLimits target = new SpecLimits(NOTHING, OptionalDouble.of(10), NOTHING);

    assertThat(withSigma(10, 1, target)).isEqualTo(Capability.NONE);
    assertThat(withSigma(10, 1, SpecLimits.NONE)).isEqualTo(Capability.NONE);
  }

  @Test
  void eachSpreadGivesItsOwnIndices() {
    SpecLimits spec = SpecLimits.of(4, 10, 16);
    Capability overallOnly = Capability.of(10, NOTHING, OptionalDouble.of(2), spec);

    assertThat(overallOnly.cp()).isEmpty();
    assertThat(overallOnly.cpk()).isEmpty();
    assertThat(overallOnly.pp()).hasValue(1);
    assertThat(overallOnly.ppk()).hasValue(1);
    assertThat(withSigma(10, 2, spec).pp()).isEmpty();
  }

  private static Capability withSigma(double mean, double sigma, SpecLimits spec) {
    return Capability.of(mean, OptionalDouble.of(sigma), NOTHING, spec);
  }
}
