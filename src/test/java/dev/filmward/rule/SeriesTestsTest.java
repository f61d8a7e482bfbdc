package dev.filmward.rule;

import static dev.filmward.chart.ChartKind.RANGE;
import static dev.filmward.chart.ChartKind.XBAR;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.chart.ChartPoint;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.stats.Restored;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SeriesTestsTest {
  private final SeriesTests tests = new SeriesTests();

  @Test
  void aRangeBeyondItsLimitIsSignalledOnItsSide() {
    assertThat(tests.next(point(0, 3.01)))
        .containsExactly(new Signal(RANGE, SignalTest.BEYOND_LIMIT, Side.HIGH));
    assertThat(tests.next(point(0, -3.01)))
        .containsExactly(new Signal(RANGE, SignalTest.BEYOND_LIMIT, Side.LOW));
  }

  @Test
  void aRangeOnItsLimitIsNotBeyondIt() {
    assertThat(tests.next(point(0, 3))).isEmpty();
    assertThat(tests.next(point(0, -3))).isEmpty();
  }

  @Test
  void theRangeChartHasNoZoneTests() {
    for (int i = 0; i < 20; i++) {
      assertThat(tests.next(point(0, 2.9))).isEmpty();
    }
  }

  @Test
  void signalsOfBothChartsComeInTheOrderOfChartTestSide() {
    tests.next(point(-2.5, 0));

    assertThat(tests.next(point(-4, 5)))
        .containsExactly(
            new Signal(XBAR, SignalTest.BEYOND_LIMIT, Side.LOW),
            new Signal(XBAR, SignalTest.TWO_OF_THREE, Side.LOW),
            new Signal(RANGE, SignalTest.BEYOND_LIMIT, Side.HIGH));
  }

  @Test
  void aSubgroupOfOneJoinsTheMeanChartOnly() {
    MeanRangeLimits limits = new MeanRangeLimits(10, 1);
    tests.next(limits.plot(1, 12.5, 0));

    assertThat(tests.next(limits.plot(1, 12.5, 0)))
        .containsExactly(new Signal(XBAR, SignalTest.TWO_OF_THREE, Side.HIGH));
  }

  /** Nine readings of one value: the lower limit of the range is above 0. */
  @Test
  void aLargeSubgroupWithoutRangeIsLowAndASmallOneIsNot() {
    MeanRangeLimits limits = new MeanRangeLimits(10, 1);

    assertThat(tests.next(limits.plot(9, 10, 0)))
        .containsExactly(new Signal(RANGE, SignalTest.BEYOND_LIMIT, Side.LOW));
    assertThat(tests.next(limits.plot(5, 10, 0))).isEmpty();
  }

  @Test
  void aRangeWithoutAPlaceIsRefused() {
    assertThatThrownBy(() -> tests.next(0, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }

  static LongStream seeds() {
    return LongStream.range(0, 200);
  }

  /** Saved and read back by another process at random points. */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void signalsAreTheSameForAnyCutIntoPieces(long seed) {
    Random random = new Random(seed);
    List<ChartPoint> points = points(random);
    SeriesTests cut = new SeriesTests();
    for (ChartPoint point : points) {
      if (random.nextInt(5) == 0) {
        cut = Restored.from(cut);
      }

      assertThat(cut.next(point)).isEqualTo(tests.next(point));
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void afterTheWarmUpAFreshObjectGoesOnAsTheOldOne(long seed) {
    List<ChartPoint> points = points(new Random(seed));
    List<List<Signal>> expected = points.stream().map(tests::next).toList();
    for (int start = 0; start < points.size(); start++) {
      SeriesTests fresh = new SeriesTests();
      points.subList(Math.max(0, start - SeriesTests.WARM_UP), start).forEach(fresh::next);

      assertThat(points.subList(start, points.size()).stream().map(fresh::next).toList())
          .isEqualTo(expected.subList(start, points.size()));
    }
  }

  /** Means that wander, so that every test is fulfilled now and then; some without a range. */
  private static List<ChartPoint> points(Random random) {
    List<ChartPoint> points = new ArrayList<>();
    double level = 0;
    for (int i = 0; i < 60; i++) {
      level = 0.9 * level + 0.6 * random.nextGaussian();
      double zMean = Math.rint(4 * (level + random.nextGaussian())) / 4;
      points.add(
          random.nextInt(6) == 0
              ? new ChartPoint(zMean, OptionalDouble.empty())
              : point(zMean, 1.5 * random.nextGaussian()));
    }
    return points;
  }

  private static ChartPoint point(double zMean, double zRange) {
    return new ChartPoint(zMean, OptionalDouble.of(zRange));
  }
}
