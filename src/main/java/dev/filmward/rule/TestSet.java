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
 * Which tests are on for a characteristic: some on its mean chart, and on its chart of spread
 * whether a point is beyond its limit. A set without any test is allowed. Immutable.
 *
 * @param onMeans tests of the mean chart
 * @param onSpread {@link SignalTest#BEYOND_LIMIT} or nothing
 */
public record TestSet(Set<SignalTest> onMeans, Set<SignalTest> onSpread) implements Serializable {
  private static final long serialVersionUID = 1L;

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
    for (SignalTest test : onSpread) {
      if (!Signal.isOf(ChartKind.RANGE, test)) {
        throw new IllegalArgumentException(
            "the test " + test.word() + " is of the mean chart only, not of spread");
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
    return new TestSet(union(onMeans), onSpread);
  }

  public TestSet without(SignalTest onMeans) {
    return new TestSet(
        this.onMeans.stream().filter(test -> test != onMeans).collect(Collectors.toSet()),
        onSpread);
  }

  private Set<SignalTest> union(SignalTest more) {
    return Stream.concat(onMeans.stream(), Stream.of(more)).collect(Collectors.toSet());
  }

  /**
   * How many earlier points settle the answer at the next: a fresh {@link SeriesTests} that was
   * given these goes on exactly as the one that saw the whole series.
   */
  public int warmUp() {
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
