package dev.filmward.pipeline;

import dev.filmward.pipeline.Analysis.Sizes;
import dev.filmward.stats.CompensatedSum;
import java.util.Arrays;
import java.util.OptionalDouble;

/** Counts subgroups by their size, and sums up their ranges. For one thread. */
final class SizeCount {
  private final CompensatedSum ranges = new CompensatedSum();

  /** How many subgroups there are of each size. */
  private long[] bySize = new long[16];

  private long subgroups;
  private long withRange;

  void add(int size, double range) {
    if (size >= bySize.length) {
      bySize = Arrays.copyOf(bySize, 2 * size);
    }
    bySize[size]++;
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
    int least = 0;
    int greatest = 0;
    int usual = 0;
    for (int size = 1; size < bySize.length; size++) {
      if (bySize[size] > 0) {
        least = least == 0 ? size : least;
        greatest = size;
        usual = bySize[size] >= bySize[usual] ? size : usual;
      }
    }
    return new Sizes(subgroups, readings, least, greatest, usual);
  }

  /** The mean range of the subgroups that have one. */
  OptionalDouble rangeBar() {
    return withRange > 0 ? OptionalDouble.of(ranges.value() / withRange) : OptionalDouble.empty();
  }
}
