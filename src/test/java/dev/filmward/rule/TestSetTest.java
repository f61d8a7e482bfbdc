package dev.filmward.rule;

import static dev.filmward.chart.ChartKind.DEVIATION;
import static dev.filmward.chart.ChartKind.RANGE;
import static dev.filmward.chart.ChartKind.XBAR;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.stats.Restored;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class TestSetTest {

  @Test
  void theStandardSetIsWhatSeriesAreTestedForWithoutAChoice() {
    assertThat(TestSet.STANDARD.orderedOnMeans())
        .containsExactly(
            SignalTest.BEYOND_LIMIT,
            SignalTest.TWO_OF_THREE,
            SignalTest.FOUR_OF_FIVE,
            SignalTest.EIGHT_IN_A_ROW);
    assertThat(TestSet.STANDARD.onSpread()).containsExactly(SignalTest.BEYOND_LIMIT);
    assertThat(TestSet.STANDARD.warmUp()).isEqualTo(SeriesTests.WARM_UP);
  }

  @Test
  void testsAreSwitchedOneByOne() {
    TestSet set = TestSet.LIMITS_ONLY.with(SignalTest.TREND);

    assertThat(set).isEqualTo(TestSet.onMeans(SignalTest.TREND, SignalTest.BEYOND_LIMIT));
    assertThat(set.without(SignalTest.TREND)).isEqualTo(TestSet.LIMITS_ONLY);
    assertThat(set.with(SignalTest.TREND)).isEqualTo(set);
    assertThat(set.without(SignalTest.MIXTURE)).isEqualTo(set);
  }

  @Test
  void whatIsOffIsNotSignalled() {
    SeriesTests tests =
        new SeriesTests(new TestSet(Set.of(SignalTest.TWO_OF_THREE), Set.of()), RANGE);

    assertThat(Signal.decode(tests.next(4, 9))).isEmpty();
    assertThat(Signal.decode(tests.next(4, 9)))
        .containsExactly(new Signal(XBAR, SignalTest.TWO_OF_THREE, Side.HIGH));
  }

  @Test
  void withNoTestThereIsNoSignal() {
    SeriesTests tests = new SeriesTests(new TestSet(Set.of(), Set.of()), RANGE);

    assertThat(tests.next(99, 99)).isZero();
  }

  @Test
  void spreadMayBeChartedOtherThanByRanges() {
    SeriesTests tests = new SeriesTests(TestSet.STANDARD, DEVIATION);

    assertThat(Signal.decode(tests.next(0, 3.1)))
        .containsExactly(new Signal(DEVIATION, SignalTest.BEYOND_LIMIT, Side.HIGH));
  }

  @Test
  void spreadHasNoOtherTestThanItsLimit() {
    assertThatThrownBy(() -> new TestSet(Set.of(), Set.of(SignalTest.TREND)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Each test alone says what it says among all. */
  @ParameterizedTest
  @EnumSource(SignalTest.class)
  void aTestDoesNotDependOnTheOthers(SignalTest test) {
    SeriesTests all = new SeriesTests(TestSet.ALL, RANGE);
    SeriesTests alone = new SeriesTests(new TestSet(EnumSet.of(test), Set.of()), RANGE);
    int bits = new Signal(XBAR, test, Side.HIGH).bit() | new Signal(XBAR, test, Side.LOW).bit();
    int seen = 0;
    for (double z : wandering(new Random(4), 4000)) {
      int signals = alone.next(z);
      seen |= signals;

      assertThat(signals).isEqualTo(all.next(z) & bits);
    }
    assertThat(seen).isNotZero();
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void signalsAreTheSameForAnyCutIntoPiecesAndAfterTheWarmUp(long seed) {
    Random random = new Random(seed);
    double[] points = wandering(random, 400);
    SeriesTests whole = new SeriesTests(TestSet.ALL, RANGE);
    SeriesTests cut = new SeriesTests(TestSet.ALL, RANGE);
    List<Integer> signals = new ArrayList<>();
    for (double point : points) {
      cut = random.nextInt(5) == 0 ? Restored.from(cut) : cut;
      signals.add(whole.next(point));
      assertThat(cut.next(point)).isEqualTo(signals.get(signals.size() - 1));
    }
    int warmUp = TestSet.ALL.warmUp();
    for (int start = warmUp; start < 400; start += 7) {
      SeriesTests fresh = new SeriesTests(TestSet.ALL, RANGE);
      for (int i = start - warmUp; i < start; i++) {
        fresh.next(points[i]);
      }
      assertThat(fresh.next(points[start])).isEqualTo(signals.get(start));
    }
  }

  /** Stretches that are quiet, wild, wandering or swinging, so that every test is fulfilled. */
  private static double[] wandering(Random random, int points) {
    double[] distances = new double[points];
    double level = 0;
    for (int i = 0; i < points; i++) {
      level = 0.8 * level + random.nextGaussian();
      double noise = random.nextGaussian();
      distances[i] =
          switch (i / 40 % 4) {
            case 0 -> 0.3 * noise;
            case 1 -> 2.5 * noise;
            case 2 -> level;
            default -> 0.2 * noise + (i % 2 == 0 ? 1.5 : -1.5);
          };
    }
    return distances;
  }
}
