package dev.filmward.rule.price;

import dev.filmward.rule.SeriesTests;
import dev.filmward.rule.SignalTest;
import dev.filmward.rule.TestSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;

/**
 * Run lengths of the tests on the means of a characteristic, with those of their moving average.
 * What was worked out is kept, because pages ask for the same choices again and again. Thread-safe.
 *
 * <p>The moving average together with tests other than the limit of three sigma has no exact run
 * length here. As signals of the same means they come together more often than by chance, so that
 * false alarms are fewer than for independent charts, and a shift is seen no later than by the
 * better of the two: both figures are then bounds, see {@link #isExact}.
 */
public final class RunLengthBook {
  private static final int MOST = 400;
  private static final double THREE_SIGMA = 3;
  private static final Set<SignalTest> LIMIT = Set.of(SignalTest.BEYOND_LIMIT);

  private final Map<Entry, RunLength> known =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Entry, RunLength> eldest) {
          return size() > MOST;
        }
      };

  private record Entry(Set<SignalTest> onMeans, Set<SignalTest> onAverage, double shift) {}

  /** Up to the first false alarm, or more. */
  RunLength ofFalseAlarm(TestSet tests) {
    if (isExact(tests)) {
      return exact(tests.onMeans(), tests.onAverage(), 0);
    }
    return exact(tests.onMeans(), Set.of(), 0).orOf(exact(Set.of(), LIMIT, 0));
  }

  /** Points until a shift of the mean, in standard deviations of a mean, is seen, or fewer. */
  double pointsToSee(TestSet tests, double shift) {
    if (isExact(tests)) {
      return exact(tests.onMeans(), tests.onAverage(), shift).mean();
    }
    return Math.min(
        exact(tests.onMeans(), Set.of(), shift).mean(), exact(Set.of(), LIMIT, shift).mean());
  }

  /** Whether the figures of a choice are exact, not bounds. */
  public static boolean isExact(TestSet tests) {
    return tests.onAverage().isEmpty()
        || tests.onMeans().isEmpty()
        || tests.onMeans().equals(LIMIT);
  }

  private RunLength exact(Set<SignalTest> onMeans, Set<SignalTest> onAverage, double shift) {
    return known(new Entry(onMeans, onAverage, shift), () -> workedOut(onMeans, onAverage, shift));
  }

  private static RunLength workedOut(
      Set<SignalTest> onMeans, Set<SignalTest> onAverage, double shift) {
    if (onAverage.isEmpty()) {
      return onMeans.isEmpty() ? RunLength.endless() : TestRunLength.of(onMeans, shift);
    }
    return onMeans.isEmpty()
        ? EwmaRunLength.of(SeriesTests.AVERAGE, shift)
        : EwmaRunLength.withPointLimit(SeriesTests.AVERAGE, THREE_SIGMA, shift);
  }

  private RunLength known(Entry entry, Supplier<RunLength> worked) {
    synchronized (known) {
      RunLength found = known.get(entry);
      if (found == null) {
        found = worked.get();
        known.put(entry, found);
      }
      return found;
    }
  }
}
