package dev.filmward.rule;

import dev.filmward.chart.ChartKind;
import java.io.Serializable;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which tests are on for a characteristic: some on its mean chart, and on its chart of spread and
 * on the moving average of its means whether a point is beyond its limit. A set without any test is
 * allowed. Immutable.
 *
 * @param onMeans tests of the mean chart
 * @param onSpread {@link SignalTest#BEYOND_LIMIT} or nothing
 * @param onAverage {@link SignalTest#BEYOND_LIMIT} or nothing, of {@link SeriesTests#AVERAGE}
 */
public record TestSet(Set<SignalTest> onMeans, Set<SignalTest> onSpread, Set<SignalTest> onAverage)
    implements Serializable {
  private static final long serialVersionUID = 2L;

  /** The four zone tests, and whether a range is beyond its limit. */
  public static final TestSet STANDARD =
      new TestSet(
          EnumSet.range(SignalTest.BEYOND_LIMIT, SignalTest.EIGHT_IN_A_ROW),
          Set.of(SignalTest.BEYOND_LIMIT));

  /** Every test there is. */
  public static final TestSet ALL =
      new TestSet(EnumSet.allOf(SignalTest.class), Set.of(SignalTest.BEYOND_LIMIT));

  /** Only whether a mean or a range is beyond its limit. */
  public static final TestSet LIMITS_ONLY =
      new TestSet(Set.of(SignalTest.BEYOND_LIMIT), Set.of(SignalTest.BEYOND_LIMIT));

  public TestSet {
    onMeans = Set.copyOf(onMeans);
    onSpread = Set.copyOf(onSpread);
    onAverage = Set.copyOf(onAverage);
    check(onSpread, "spread");
    check(onAverage, "their moving average");
  }

  /** Without the moving average. */
  public TestSet(Set<SignalTest> onMeans, Set<SignalTest> onSpread) {
    this(onMeans, onSpread, Set.of());
  }

  private static void check(Set<SignalTest> tests, String chart) {
    for (SignalTest test : tests) {
      if (!Signal.isOf(ChartKind.RANGE, test)) {
        throw new IllegalArgumentException(
            "the test " + test.word() + " is of the mean chart only, not of " + chart);
      }
    }
  }

  /** Tests of the mean chart by their words; tests of spread as in {@link #STANDARD}. */
  public static TestSet onMeans(SignalTest... tests) {
    return new TestSet(Set.copyOf(Arrays.asList(tests)), STANDARD.onSpread);
  }

  /** The tests of the mean chart in their order. */
  public List<SignalTest> orderedOnMeans() {
    return onMeans.stream().sorted().toList();
  }

  public TestSet with(SignalTest onMeans) {
    return new TestSet(union(onMeans), onSpread, onAverage);
  }

  public TestSet without(SignalTest onMeans) {
    return new TestSet(
        this.onMeans.stream().filter(test -> test != onMeans).collect(Collectors.toSet()),
        onSpread,
        onAverage);
  }

  /** The same tests, and whether the moving average of the means is beyond its limit. */
  public TestSet withAverage() {
    return new TestSet(onMeans, onSpread, Set.of(SignalTest.BEYOND_LIMIT));
  }

  /** The same tests and one more; charts of spread count alike. */
  public TestSet with(ChartKind chart, SignalTest test) {
    return switch (chart) {
      case XBAR -> with(test);
      case EWMA -> new TestSet(onMeans, onSpread, Set.of(test));
      default -> new TestSet(onMeans, Set.of(test), onAverage);
    };
  }

  /** The same tests without one; charts of spread count alike. */
  public TestSet without(ChartKind chart, SignalTest test) {
    return switch (chart) {
      case XBAR -> without(test);
      case EWMA -> new TestSet(onMeans, onSpread, Set.of());
      default -> new TestSet(onMeans, Set.of(), onAverage);
    };
  }

  /** Whether the test behind a signal is on; charts of spread count alike. */
  public boolean has(Signal signal) {
    return switch (signal.chart()) {
      case XBAR -> onMeans.contains(signal.test());
      case EWMA -> onAverage.contains(signal.test());
      default -> onSpread.contains(signal.test());
    };
  }

  /** Whether all tests of another set are on here too. */
  public boolean covers(TestSet other) {
    return onMeans.containsAll(other.onMeans)
        && onSpread.containsAll(other.onSpread)
        && onAverage.containsAll(other.onAverage);
  }

  private Set<SignalTest> union(SignalTest more) {
    return Stream.concat(onMeans.stream(), Stream.of(more)).collect(Collectors.toSet());
  }

  /**
   * How many earlier points settle the answer at the next: a fresh {@link SeriesTests} that was
   * given these goes on as the one that saw the whole series. A moving average never forgets, but
   * what is older than this weighs less than a double can tell.
   */
  public int warmUp() {
    if (!onAverage.isEmpty()) {
      return SeriesTests.WARM_UP_OF_AVERAGE;
    }
    return onMeans.stream().mapToInt(SignalTest::earlierPoints).max().orElse(0);
  }

  /** All signals that this set lets through on the mean chart. */
  int signalsOnMeans() {
    int set = 0;
    for (SignalTest test : onMeans) {
      for (Side side : Side.values()) {
        set |= new Signal(ChartKind.XBAR, test, side).bit();
      }
    }
    return set;
  }

  boolean hasPatterns() {
    return onMeans.stream().anyMatch(test -> test.compareTo(SignalTest.TREND) >= 0);
  }
}
