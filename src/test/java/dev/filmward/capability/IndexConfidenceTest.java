package dev.filmward.capability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.filmward.film.SpecLimits;
import dev.filmward.stats.Figures;
import dev.filmward.stats.Normal;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class IndexConfidenceTest {
  private static final OptionalDouble NOTHING = OptionalDouble.empty();
  private static final Percentage ELEVEN_DIGITS = withinPercentage(1e-9);
  private static final List<String> CONFIDENCES = List.of("90", "95", "99");

  @ParameterizedTest
  @MethodSource("estimates")
  void exactLimitsAreThoseOfTheNoncentralT(Map<String, String> row) {
    Indices below = oneSided(number(row, "index"));
    Indices above = Indices.of(-below.mean(), 1, new SpecLimits(NOTHING, NOTHING, at(0)));
    for (String percent : CONFIDENCES) {
      IndexLimits limits = confidence(row, percent).cpk(below).orElseThrow();
      assertThat(limits.atLeast()).isCloseTo(number(row, "exact" + percent), ELEVEN_DIGITS);
      assertThat(confidence(row, percent).cpl(below)).hasValue(limits);
      assertThat(confidence(row, percent).cpu(above)).hasValue(limits);
    }
    IndexLimits limits = confidence(row, "95").cpl(below).orElseThrow();
    assertThat(limits.from()).isCloseTo(number(row, "exactFrom95"), ELEVEN_DIGITS);
    assertThat(limits.to()).isCloseTo(number(row, "exactTo95"), ELEVEN_DIGITS);
  }

  @ParameterizedTest
  @MethodSource("estimates")
  void approximateLimitsAreThoseOfBissell(Map<String, String> row) {
    double cpk = number(row, "index");
    Indices indices = Indices.of(3 * cpk, 1, new SpecLimits(at(0), NOTHING, at(100)));
    CpkMethod method = CpkMethod.NORMAL_APPROXIMATION;
    for (String percent : CONFIDENCES) {
      IndexLimits limits = confidence(row, percent).cpk(indices, method).orElseThrow();
      assertThat(limits.atLeast()).isCloseTo(number(row, "bissell" + percent), ELEVEN_DIGITS);
    }
    IndexLimits limits = confidence(row, "95").cpk(indices, method).orElseThrow();
    assertThat(limits.from()).isCloseTo(number(row, "bissellFrom95"), ELEVEN_DIGITS);
    assertThat(limits.to()).isCloseTo(number(row, "bissellTo95"), ELEVEN_DIGITS);
  }

  @ParameterizedTest
  @MethodSource("estimates")
  void limitsOfCpAreThoseOfChiSquare(Map<String, String> row) {
    double half = 3 * number(row, "index");
    Indices indices = Indices.of(0, 1, SpecLimits.of(-half, 0, half));
    IndexLimits limits = confidence(row, "95").cp(indices).orElseThrow();

    assertThat(limits.from()).isCloseTo(number(row, "cpFrom95"), ELEVEN_DIGITS);
    assertThat(limits.to()).isCloseTo(number(row, "cpTo95"), ELEVEN_DIGITS);
  }

  static Stream<Map<String, String>> estimates() {
    return Figures.table(IndexConfidenceTest.class, "cpk-limits.csv").stream();
  }

  /** Quality Digest, May 2000: Cpk 1.15 of 45 readings is 0.89 to 1.41. */
  @Test
  void thePublishedIntervalOfACpkIsMet() {
    Indices indices = Indices.of(3 * 1.15, 1, new SpecLimits(at(0), NOTHING, at(10)));
    IndexLimits limits =
        IndexConfidence.of(0.95, 45).cpk(indices, CpkMethod.NORMAL_APPROXIMATION).orElseThrow();

    assertThat(limits.from()).isCloseTo(0.89, within(0.005));
    assertThat(limits.to()).isCloseTo(1.41, within(0.005));
  }

  /** D. C. Montgomery, Introduction to Statistical Quality Control: 2.29, from 1.57 to 3.01. */
  @Test
  void thePublishedIntervalOfACpIsMet() {
    Indices indices = Indices.of(50, 1.75, SpecLimits.of(38, 50, 62));
    IndexLimits limits = IndexConfidence.of(0.95, 20).cp(indices).orElseThrow();

    assertThat(indices.cp().getAsDouble()).isCloseTo(2.29, within(0.005));
    assertThat(limits.from()).isCloseTo(1.57, within(0.01));
    assertThat(limits.to()).isCloseTo(3.01, within(0.005));
    assertThat(limits.from()).isCloseTo(1.5649450045377398, ELEVEN_DIGITS);
    assertThat(limits.to()).isCloseTo(3.0055794297420433, ELEVEN_DIGITS);
  }

  /** By the formula of Boyles (1991) with quantiles of a general-purpose library. */
  @ParameterizedTest
  @CsvSource({
    "12.61, 30, 0.8582484794767156, 1.4278469934020042, 0.9001695996854318",
    "12.5, 100, 1.063606775640744, 1.4052463221146476, 1.0898477425265507"
  })
  void limitsOfCpmAreThoseOfBoyles(double mean, long n, double from, double to, double atLeast) {
    Indices indices = Indices.of(mean, 0.27, SpecLimits.of(11.5, 12.5, 13.5));
    IndexLimits limits = IndexConfidence.of(0.95, n).cpm(indices).orElseThrow();

    assertThat(limits.from()).isCloseTo(from, ELEVEN_DIGITS);
    assertThat(limits.to()).isCloseTo(to, ELEVEN_DIGITS);
    assertThat(limits.atLeast()).isCloseTo(atLeast, ELEVEN_DIGITS);
  }

  /**
   * A tolerance factor says the same the other way round: a mean k standard deviations inside the
   * limit shows, with its confidence, that its share lies inside, which is a Cpk of z/3.
   */
  @ParameterizedTest
  @MethodSource
  void exactLimitsAgreeWithToleranceFactors(Map<String, String> row) {
    IndexConfidence confidence =
        IndexConfidence.of(number(row, "confidence"), (long) number(row, "n"));
    double share = Normal.STANDARD.quantile(number(row, "share"));

    assertThat(confidence.cpk(oneSided(number(row, "factor") / 3)).orElseThrow().atLeast())
        .isCloseTo(share / 3, ELEVEN_DIGITS);
  }

  static Stream<Map<String, String>> exactLimitsAgreeWithToleranceFactors() {
    return Figures.table(IndexConfidenceTest.class, "one-sided-tolerance.csv").stream();
  }

  @Test
  void twoLimitsAreJudgedByTheNearerOne() {
    Indices two = Indices.of(3, 1, SpecLimits.of(0, 4, 8));
    IndexConfidence confidence = IndexConfidence.of(0.95, 50);

    assertThat(confidence.cpk(two, CpkMethod.NEARER_LIMIT_EXACT)).isEqualTo(confidence.cpl(two));
    assertThat(confidence.cpk(two).orElseThrow().atLeast())
        .as("the mean is seven standard errors off the middle")
        .isCloseTo(confidence.cpl(two).orElseThrow().atLeast(), within(1e-9));
    assertThat(confidence.cpk(two).orElseThrow().atLeast())
        .isLessThan(confidence.cpu(two).orElseThrow().atLeast());
  }

  /** Far from the middle only one limit binds, and the exact limits are those of one. */
  @ParameterizedTest
  @MethodSource("estimates")
  void farFromTheMiddleAllowingForItChangesNothing(Map<String, String> row) {
    double room = 3 * number(row, "index");
    Indices indices = Indices.of(0, 1, SpecLimits.of(-room, 0, 100));
    IndexLimits limits =
        confidence(row, "95").cpk(indices, CpkMethod.CENTRING_ESTIMATED).orElseThrow();

    assertThat(limits.atLeast()).isCloseTo(number(row, "exact95"), ELEVEN_DIGITS);
    assertThat(limits.to()).isCloseTo(number(row, "exactTo95"), ELEVEN_DIGITS);
  }

  @Test
  void inTheMiddleAllowingForItTrustsMore() {
    Indices middle = Indices.of(0, 1, SpecLimits.of(-4, 0, 4));
    IndexConfidence confidence = IndexConfidence.of(0.95, 100);

    assertThat(confidence.cpk(middle, CpkMethod.CENTRING_ESTIMATED).orElseThrow().atLeast())
        .isEqualTo(confidence.cpk(middle).orElseThrow().atLeast())
        .isGreaterThan(
            confidence.cpk(middle, CpkMethod.NEARER_LIMIT_EXACT).orElseThrow().atLeast());
  }

  /** t is about normal with so many readings: the half-width is 1.645 / (3 sqrt(n)). */
  @Test
  void aMeanOnOrOutsideTheLimitHasLimitsToo() {
    IndexConfidence confidence = IndexConfidence.of(0.95, 10_000);

    assertThat(confidence.cpk(oneSided(0)).orElseThrow().atLeast())
        .isCloseTo(-1.644854 / 300, within(1e-5));
    assertThat(confidence.cpk(oneSided(-0.5)).orElseThrow().atLeast()).isBetween(-0.52, -0.5);
  }

  @Test
  void autocorrelationWidensTheLimits() {
    Indices indices = oneSided(1.5);
    IndexConfidence dependent = new IndexConfidence(0.95, EffectiveSize.of(200, 0.6));
    IndexConfidence worth =
        new IndexConfidence(0.95, new EffectiveSize(200, 50, 200 * 0.64 / 1.36));

    assertThat(dependent.cpk(indices).orElseThrow().atLeast())
        .isCloseTo(worth.cpk(indices).orElseThrow().atLeast(), within(1e-12))
        .isLessThan(IndexConfidence.of(0.95, 200).cpk(indices).orElseThrow().atLeast());
  }

  @Test
  void withoutAnIndexOrReadingsThereAreNoLimits() {
    assertThat(IndexConfidence.of(0.95, 1).cpk(oneSided(1))).isEmpty();
    assertThat(IndexConfidence.of(0.95, 50).cp(oneSided(1))).isEmpty();
    assertThatThrownBy(() -> IndexConfidence.of(95, 50)).hasMessageContaining("confidence");
  }

  private static Indices oneSided(double index) {
    return Indices.of(3 * index, 1, new SpecLimits(at(0), NOTHING, NOTHING));
  }

  private static IndexConfidence confidence(Map<String, String> row, String percent) {
    return IndexConfidence.of(Integer.parseInt(percent) / 100.0, (long) number(row, "n"));
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  private static OptionalDouble at(double value) {
    return OptionalDouble.of(value);
  }
}
