package dev.filmward.pipeline;

import dev.filmward.chart.Baseline;
import dev.filmward.pipeline.Analysis.Sizes;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** Counts subgroups by their size. For one thread. */
final class SizeCount {
  private final TreeMap<Integer, Integer> bySize = new TreeMap<>();
  private long subgroups;

  void add(int size) {
    bySize.merge(size, 1, Integer::sum);
    subgroups++;
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

  /** The mean range, where a subgroup has one. */
  OptionalDouble rangeBar(Baseline baseline) {
    return bySize.lastKey() > 1 ? OptionalDouble.of(baseline.rangeBar()) : OptionalDouble.empty();
  }
}
