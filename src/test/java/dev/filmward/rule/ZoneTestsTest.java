package dev.filmward.rule;

import static dev.filmward.chart.ChartKind.XBAR;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ZoneTestsTest {

  @Test
  void aPointInfinitelyFarOffIsBeyondEveryZone() {
    ZoneTests tests = new ZoneTests();

    assertThat(Signal.decode(tests.next(Double.NEGATIVE_INFINITY)))
        .containsExactly(new Signal(XBAR, SignalTest.BEYOND_LIMIT, Side.LOW));
    assertThat(Signal.decode(tests.next(Double.NEGATIVE_INFINITY)))
        .containsExactly(
            new Signal(XBAR, SignalTest.BEYOND_LIMIT, Side.LOW),
            new Signal(XBAR, SignalTest.TWO_OF_THREE, Side.LOW));
  }

  @Test
  void aPointWithoutAPlaceIsRefused() {
    assertThatThrownBy(() -> new ZoneTests().next(Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }

  static LongStream seeds() {
    return LongStream.range(0, 200);
  }

  /** The definition read word by word over the whole history, on values that hit every line. */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void signalsAreThoseOfTheDefinition(long seed) {
    Random random = new Random(seed);
    double shift = random.nextInt(5) - 2;
    double[] distances = new double[200];
    ZoneTests tests = new ZoneTests();
    for (int i = 0; i < distances.length; i++) {
      distances[i] = Math.rint(2 * (random.nextGaussian() + shift)) / 2;

      assertThat(tests.next(distances[i])).isEqualTo(defined(distances, i));
    }
  }

  private static int defined(double[] distances, int at) {
    int set = 0;
    for (Side side : Side.values()) {
      double sign = side == Side.HIGH ? 1 : -1;
      set |=
          defined(distances, at, sign * 3, 1, 1, new Signal(XBAR, SignalTest.BEYOND_LIMIT, side));
      set |=
          defined(distances, at, sign * 2, 2, 3, new Signal(XBAR, SignalTest.TWO_OF_THREE, side));
      set |= defined(distances, at, sign, 4, 5, new Signal(XBAR, SignalTest.FOUR_OF_FIVE, side));
      double justBeyondTheCentre = sign * 1e-9;
      set |=
          defined(
              distances,
              at,
              justBeyondTheCentre,
              8,
              8,
              new Signal(XBAR, SignalTest.EIGHT_IN_A_ROW, side));
    }
    return set;
  }

  private static int defined(
      double[] distances, int at, double line, int atLeast, int ofLast, Signal signal) {
    int beyond = 0;
    for (int i = Math.max(0, at - ofLast + 1); i <= at; i++) {
      beyond += isBeyond(distances[i], line) ? 1 : 0;
    }
    return isBeyond(distances[at], line) && beyond >= atLeast ? signal.bit() : 0;
  }

  private static boolean isBeyond(double distance, double line) {
    return line > 0 ? distance > line : distance < line;
  }
}
