package dev.filmward.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Both tails against a multiple-precision library; quantiles against the tails. */
class DistributionsTest {
  private static final double RELATIVE = 4e-12;

  record Tails(String name, Distribution distribution, double x, double below, double above) {

    static Tails of(Map<String, String> row) {
      return new Tails(
          row.get("kind") + row.get("first") + "," + row.get("second") + " at " + row.get("x"),
          named(row.get("kind"), number(row, "first"), number(row, "second")),
          number(row, "x"),
          number(row, "below"),
          number(row, "above"));
    }

    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Tails> tails() {
    return Figures.table(DistributionsTest.class, "distributions.csv").stream().map(Tails::of);
  }

  private static double number(Map<String, String> row, String heading) {
    return Double.parseDouble(row.get(heading));
  }

  private static Distribution named(String kind, double first, double second) {
    return switch (kind) {
      case "chi-square" -> new ChiSquare(first);
      case "f" -> new FisherF(first, second);
      case "beta" -> new BetaNumbers(first, second);
      case "t" -> new StudentT(first);
      case "non-central t" -> new NoncentralT(first, second);
      default -> throw new IllegalArgumentException(kind);
    };
  }

  @ParameterizedTest
  @MethodSource("tails")
  void bothTailsAgreeWithAnotherComputation(Tails tails) {
    assertThat(tails.distribution.below(tails.x))
        .as("below")
        .isCloseTo(tails.below, within(RELATIVE * tails.below));
    assertThat(tails.distribution.above(tails.x))
        .as("above")
        .isCloseTo(tails.above, within(RELATIVE * tails.above));
  }

  /** The nearer tail, so that nothing is asked of a probability that rounds to 1. */
  @ParameterizedTest
  @MethodSource("tails")
  void quantilesLeadBack(Tails tails) {
    double x =
        tails.below < 0.5
            ? tails.distribution.quantile(tails.below)
            : tails.distribution.upperQuantile(tails.above);

    assertThat(x).isCloseTo(tails.x, within(1e-11 * Math.abs(tails.x) + roundingAtZero(tails)));
  }

  /** Where the density is about 1/2, a probability of 1/2 rounded to a double moves x by 1e-16. */
  private static double roundingAtZero(Tails tails) {
    return tails.distribution instanceof StudentT || tails.x == 0 ? 1e-14 : 0;
  }

  @ParameterizedTest
  @MethodSource("tails")
  void oneQuantileIsTheOtherOfTheRest(Tails tails) {
    assertThat(tails.distribution.quantile(0.25)).isEqualTo(tails.distribution.upperQuantile(0.75));
    assertThat(tails.distribution.quantile(0.75)).isEqualTo(tails.distribution.upperQuantile(0.25));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 1, -0.1, 1.1, Double.NaN})
  void whatIsNoProbabilityIsRefused(double p) {
    tails()
        .map(Tails::distribution)
        .forEach(
            distribution -> {
              assertThatThrownBy(() -> distribution.quantile(p))
                  .isInstanceOf(IllegalArgumentException.class);
              assertThatThrownBy(() -> distribution.upperQuantile(p))
                  .isInstanceOf(IllegalArgumentException.class);
            });
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void whatAreNoDegreesOfFreedomIsRefused(double degrees) {
    for (String kind : new String[] {"chi-square", "f", "beta", "t", "non-central t"}) {
      assertThatThrownBy(() -> named(kind, degrees, 1))
          .as(kind)
          .isInstanceOf(IllegalArgumentException.class);
    }
    assertThatThrownBy(() -> new FisherF(1, degrees)).isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -3, Double.NEGATIVE_INFINITY})
  void nothingLiesBelowTheLowEnd(double x) {
    for (Distribution d : new Distribution[] {new ChiSquare(3), new FisherF(2, 5)}) {
      assertThat(d.below(x)).isZero();
      assertThat(d.above(x)).isEqualTo(1);
    }
    assertThat(new BetaNumbers(2, 3).below(x)).isZero();
    assertThat(new BetaNumbers(2, 3).above(x)).isEqualTo(1);
    assertThat(new BetaNumbers(2, 3).below(1 - x)).isEqualTo(1);
    assertThat(new BetaNumbers(2, 3).above(1 - x)).isZero();
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 5, 300})
  void everythingLiesBelowInfinity(double degrees) {
    assertThat(new StudentT(degrees).above(Double.POSITIVE_INFINITY)).isZero();
    assertThat(new StudentT(degrees).below(Double.NEGATIVE_INFINITY)).isZero();
    assertThat(new FisherF(degrees, degrees).above(Double.POSITIVE_INFINITY)).isZero();
    assertThat(new FisherF(degrees, degrees).below(Double.POSITIVE_INFINITY)).isEqualTo(1);
  }
}
