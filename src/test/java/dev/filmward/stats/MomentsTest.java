package dev.filmward.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class MomentsTest {

  @Test
  void aLargeCommonPartDoesNotHideTheSpread() {
    Moments moments = of(1e9 + 4, 1e9 + 7, 1e9 + 13, 1e9 + 16);

    assertThat(moments.mean()).isEqualTo(1e9 + 10);
    assertThat(moments.sumOfSquares()).isEqualTo(6 * 6 + 3 * 3 + 3 * 3 + 6 * 6);
    assertThat(moments.standardDeviation()).hasValue(Math.sqrt(90 / 3.0));
  }

  @Test
  void anOutlierInFrontDoesNotSpoilTheRest() {
    Moments moments = new Moments();
    moments.add(1e12);
    for (int i = 0; i < 1000; i++) {
      moments.add(i % 2);
    }

    // exactly: n = 1001, sum = 1e12 + 500, sum of squares = 1e24 + 500
    double squares = 1e24 + 500 - (1e12 + 500) * (1e12 + 500) / 1001;
    assertThat(moments.mean()).isEqualTo((1e12 + 500) / 1001);
    assertThat(moments.sumOfSquares()).isCloseTo(squares, within(2e-15 * squares));
  }

  @Test
  void equalNumbersHaveNoSpreadAtAll() {
    Moments moments = new Moments();
    for (int i = 0; i < 1000; i++) {
      moments.add(0.1);
    }

    assertThat(moments.mean()).isEqualTo(0.1);
    assertThat(moments.standardDeviation()).hasValue(0);
  }

  @Test
  void twoNumbersHaveHalfTheirSquaredDifferenceAsVariance() {
    assertThat(of(1, 2).standardDeviation()).hasValue(Math.sqrt(0.5));
  }

  @Test
  void oneNumberHasAMeanAndNoStandardDeviation() {
    assertThat(of(3.2).mean()).isEqualTo(3.2);
    assertThat(of(3.2).standardDeviation()).isEmpty();
    assertThat(of(3.2).sumOfSquares()).isZero();
  }

  @Test
  void noNumbersHaveNoMean() {
    assertThat(new Moments().count()).isZero();
    assertThat(new Moments().sumOfSquares()).isZero();
    assertThat(new Moments().standardDeviation()).isEmpty();
    assertThatThrownBy(() -> new Moments().mean()).isInstanceOf(IllegalStateException.class);
  }

  @Test
  void squaresOfTinyAndHugeNumbersStayInRange() {
    assertThat(of(1e-300, 2e-300, 3e-300).mean()).isCloseTo(2e-300, within(1e-315));
    assertThat(of(1e-300, 2e-300, 3e-300).standardDeviation().orElseThrow())
        .isCloseTo(1e-300, within(1e-315));
    assertThat(of(-1e300, 0, 1e300).mean()).isZero();
    assertThat(of(-1e300, 0, 1e300).standardDeviation().orElseThrow())
        .isCloseTo(1e300, within(1e285));
  }

  @Test
  void tinyOrdinaryAndHugeNumbersMayBeMixed() {
    Moments moments = of(1e-300, 5, 1e300, 3e300);

    assertThat(moments.mean()).isCloseTo(1e300, within(1e285));
    // deviations in units of 1e300: -1, -1, 0, 2
    assertThat(moments.standardDeviation().orElseThrow())
        .isCloseTo(Math.sqrt(2) * 1e300, within(1e285));
  }

  @Test
  void summariesOfGroupsGiveWhatTheirNumbersGive() {
    Moments moments = new Moments();
    moments.addSummary(3, 2, 2); // 1, 2, 3
    moments.addSummary(0, 99, 0);
    moments.addSummary(2, 7, 18); // 4, 10
    moments.add(4);

    assertThat(moments.count()).isEqualTo(6);
    assertThat(moments.mean()).isEqualTo(24 / 6.0);
    assertThat(moments.sumOfSquares()).isEqualTo(9 + 4 + 1 + 0 + 36 + 0);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void whatIsNotFiniteIsRefused(double value) {
    Moments moments = of(1, 2);

    assertThatThrownBy(() -> moments.add(value)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> moments.addSummary(2, value, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> moments.addSummary(2, 0, value))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(moments.count()).isEqualTo(2);
    assertThat(moments.mean()).isEqualTo(1.5);
  }

  @Test
  void anImpossibleSummaryIsRefused() {
    assertThatThrownBy(() -> new Moments().addSummary(-1, 0, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Moments().addSummary(2, 0, -1e-9))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void mergingWithItselfCountsEverythingTwice() {
    Moments moments = of(1, 2, 3);
    moments.merge(moments);

    assertThat(moments.count()).isEqualTo(6);
    assertThat(moments.mean()).isEqualTo(2);
    assertThat(moments.sumOfSquares()).isEqualTo(4);
  }

  static LongStream seeds() {
    return LongStream.range(0, 200);
  }

  /** Levels, spreads and sizes over many powers of ten; pieces may be empty and are restored. */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void howeverTheNumbersAreSplitTheResultIsTheSame(long seed) {
    Random random = new Random(seed);
    double[] values = values(random);
    Moments whole = of(values);
    Moments pieces = new Moments();
    for (int from = 0; from < values.length; ) {
      int to = Math.min(values.length, from + random.nextInt(values.length / 2 + 2));
      pieces.merge(Restored.from(of(Arrays.copyOfRange(values, from, to))));
      from = to;
    }

    assertThat(pieces.count()).isEqualTo(whole.count());
    assertThat(pieces.mean()).isCloseTo(whole.mean(), within(4e-16 * Math.abs(whole.mean())));
    OptionalDouble deviation = whole.standardDeviation();
    assertThat(pieces.standardDeviation().isPresent()).isEqualTo(deviation.isPresent());
    deviation.ifPresent(
        d -> assertThat(pieces.standardDeviation().getAsDouble()).isCloseTo(d, within(1e-14 * d)));
  }

  private static double[] values(Random random) {
    double level = Math.pow(10, random.nextInt(600) - 300) * random.nextGaussian();
    double spread = Math.abs(level) * Math.pow(10, -random.nextInt(10));
    return random
        .doubles(1 + random.nextInt(300))
        .map(uniform -> level + spread * (uniform - 0.5))
        .toArray();
  }

  private static Moments of(double... values) {
    Moments moments = new Moments();
    Arrays.stream(values).forEach(moments::add);
    return moments;
  }
}
