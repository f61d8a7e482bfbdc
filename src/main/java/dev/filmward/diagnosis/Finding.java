package dev.filmward.diagnosis;

import java.util.List;

/**
 * The value of a statistic and what it is about.
 *
 * @param positions reported layers, from 1; empty for all of them
 * @param lanes as the gauge numbers them; empty for all of them
 */
record Finding(double value, List<Integer> positions, List<Integer> lanes) {
  Finding {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a statistic has a finite value, not " + value);
    }
    positions = List.copyOf(positions);
    lanes = List.copyOf(lanes);
  }
}
