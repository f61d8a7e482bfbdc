package dev.filmward.pipeline;

import dev.filmward.pipeline.Analysis.Sizes;
import dev.filmward.stats.CompensatedSum;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** Counts subgroups by their size, and sums up their ranges. For one thread. */
final class SizeCount {
  private final TreeMap<Integer, Integer> bySize = new TreeMap<>();
  private final CompensatedSum ranges = new CompensatedSum();
  private long subgroups;
  private long withRange;

  void add(int size, double range) {
    bySize.merge(size, 1, Integer::sum);
    subgroups++;
    if (size > 1) {
      ranges.add(range);
      withRange++;
    }
  }

  long subgroups() {
    return subgroups;
  }

  /** Asked only where there is a subgroup. */
  Sizes sizes(long readings) {
    int usual = bySize.firstKey();
    for (Map.Entry<Integer, Integer> entry : bySize.entrySet()) {
      if (entry.getValue() >= bySize.getOrDefault(usual, 0)) {
        usual = entry.getKey();
      }
    }
    return new Sizes(subgroups, readings, bySize.firstKey(), bySize.lastKey(), usual);
  }

  /** The mean range of the subgroups that have one. */
  OptionalDouble rangeBar() {
    return withRange > 0 ? OptionalDouble.of(ranges.value() / withRange) : OptionalDouble.empty();
  }
}
