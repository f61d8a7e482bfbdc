package dev.filmward.capability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.filmward.film.SpecLimits;
import dev.filmward.stats.Figures;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class IndicesTest {
  private static final OptionalDouble NOTHING = OptionalDouble.empty();
  private static final Percentage TEN_DIGITS = withinPercentage(1e-8);

  /** NIST/SEMATECH e-Handbook, 6.1.6: Cp 1.0, Cpu 0.6667, Cpl 1.3333, k 0.3333, Cpm 0.7071. */
  @Test
  void theExampleOfTheHandbookIsMet() {
    Indices indices = Indices.of(16, 2, SpecLimits.of(8, 14, 20));

    assertThat(indices.cp()).hasValue(12 / 12.0);
    assertThat(indices.cpu()).hasValue(4 / 6.0);
    assertThat(indices.cpl()).hasValue(8 / 6.0);
    assertThat(indices.cpk()).hasValue(4 / 6.0);
    assertThat(indices.k()).hasValue(2 / 6.0);
    assertThat(indices.cpm().getAsDouble()).isCloseTo(12 / (6 * Math.sqrt(4 + 4)), within(1e-15));
    assertThat(indices.cpmk().getAsDouble()).isCloseTo(4 / (3 * Math.sqrt(8)), within(1e-15));
  }

  /**
   * Two and four sigma from the limits, tails of the normal distribution by 40-digit arithmetic.
   */
  @Test
  void partsPerMillionAreTheTailsOfTheNormalDistribution() {
    Indices indices = Indices.of(16, 2, SpecLimits.of(8, 14, 20));

    assertThat(indices.ppmAbove().getAsDouble()).isCloseTo(22750.1319481792, TEN_DIGITS);
    assertThat(indices.ppmBelow().getAsDouble()).isCloseTo(31.6712418331199, TEN_DIGITS);
    assertThat(indices.ppmTotal().getAsDouble()).isCloseTo(22781.8031900123, TEN_DIGITS);
  }

  @ParameterizedTest
  @MethodSource
  void partsPerMillionOfACpk(Map<String, String> row) {
    double cpk = Double.parseDouble(row.get("cpk"));
    OptionalDouble upper = OptionalDouble.of(3 * cpk);
    Indices indices = Indices.of(0, 1, new SpecLimits(NOTHING, NOTHING, upper));

    assertThat(indices.ppmTotal().getAsDouble())
        .isCloseTo(Double.parseDouble(row.get("oneSided")), TEN_DIGITS);
  }

  static Stream<Map<String, String>> partsPerMillionOfACpk() {
    return Figures.table(IndicesTest.class, "ppm.csv").stream();
  }

  /** Mean 21 between 8 and 20: 1 above the upper limit, 13 above the lower, 7 off the middle. */
  @Test
  void aMeanOutsideTheLimitsIsNegativeAndNotZero() {
    Indices indices = Indices.of(21, 2, SpecLimits.of(8, 14, 20));

    assertThat(indices.cpk()).hasValue(-1 / 6.0);
    assertThat(indices.cpl()).hasValue(13 / 6.0);
    assertThat(indices.cpmk().getAsDouble()).isCloseTo(-1 / (3 * Math.sqrt(53)), within(1e-15));
    assertThat(indices.k()).hasValue(7 / 6.0);
    assertThat(indices.ppmAbove().getAsDouble()).isCloseTo(691462.461274013, TEN_DIGITS);
  }

  /** Bursting strength of bottles, D. C. Montgomery: Cpl 0.67. */
  @Test
  void aLowerLimitAloneHasTheIndexOfItsSideAndNoWidth() {
    OptionalDouble lower = OptionalDouble.of(200);
    OptionalDouble target = OptionalDouble.of(280);
    Indices indices = Indices.of(264, 32, new SpecLimits(lower, target, NOTHING));

    assertThat(indices.cpl()).hasValue(64 / 96.0);
    assertThat(indices.cpk()).hasValue(64 / 96.0);
    assertThat(Stream.of(indices.cp(), indices.cpu(), indices.cpm(), indices.cpmk(), indices.k()))
        .allMatch(OptionalDouble::isEmpty);
    assertThat(indices.ppmAbove()).isEmpty();
    assertThat(indices.ppmTotal()).isEqualTo(indices.ppmBelow());
  }

  /**
   * Flow width, 1.00 to 2.00 (D. C. Montgomery, Introduction to Statistical Quality Control,
   * Example 6.1): Cp 1.192 and 0.00035 outside; full digits were computed apart from this project.
   */
  @Test
  void theExampleOfTheBookIsMet() {
    double sigma = 1 / (6 * 1.192021181972252);
    double mean = 1.5 + 0.0056104;
    Indices indices = Indices.of(mean, sigma, SpecLimits.of(1, 1.5, 2));

    assertThat(indices.cpk().getAsDouble()).isCloseTo(1.1786457506935772, TEN_DIGITS);
    assertThat(indices.cpm().getAsDouble()).isCloseTo(1.191062691031623, TEN_DIGITS);
    assertThat(indices.cpmk().getAsDouble()).isCloseTo(1.177698014788095, TEN_DIGITS);
    assertThat(indices.k().getAsDouble()).isCloseTo(0.0112208, TEN_DIGITS);
    assertThat(indices.ppmTotal().getAsDouble()).isCloseTo(352.65117461550767, TEN_DIGITS);
    assertThat(indices.ppmTotal().getAsDouble() / 1e6).isCloseTo(0.00035, within(5e-6));
  }

  @Test
  void withoutATargetThereIsNoCpm() {
    SpecLimits spec = new SpecLimits(OptionalDouble.of(8), NOTHING, OptionalDouble.of(20));

    assertThat(Indices.of(16, 2, spec).cpm()).isEmpty();
    assertThat(Indices.of(16, 2, spec).cpmk()).isEmpty();
    assertThat(Indices.of(16, 2, spec).cpk()).isPresent();
  }

  @Test
  void withoutSpreadOrLimitsThereIsNoIndex() {
    Indices flat = Indices.of(15, 0, SpecLimits.of(8, 14, 20));
    Indices free = Indices.of(15, 1, SpecLimits.NONE);

    assertThat(Stream.of(flat.cp(), flat.cpk(), flat.cpm(), flat.cpmk(), flat.ppmTotal()))
        .allMatch(OptionalDouble::isEmpty);
    assertThat(Stream.of(free.cp(), free.cpk(), free.cpm(), free.k(), free.ppmTotal()))
        .allMatch(OptionalDouble::isEmpty);
  }

  @Test
  void aSpreadBelowZeroIsRefused() {
    assertThatThrownBy(() -> Indices.of(1, -1, SpecLimits.NONE)).hasMessageContaining("-1.0");
    assertThatThrownBy(() -> Indices.of(Double.NaN, 1, SpecLimits.NONE))
        .hasMessageContaining("NaN");
  }
}
