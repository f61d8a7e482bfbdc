package dev.filmward.rule.price;

import dev.filmward.stats.ChartConstants;

/**
 * What of a line is charted: layers, total and shares, each with a mean and a range chart.
 *
 * @param characteristics how many there are, at least 1
 * @param size readings in a subgroup, 2 to 100
 */
public record ChartedLine(int characteristics, int size) {

  public ChartedLine {
    if (characteristics < 1
        || size < ChartConstants.SMALLEST_SIZE
        || size > ChartConstants.LARGEST_SIZE) {
      throw new IllegalArgumentException(
          "no charts of " + characteristics + " characteristics with " + size + " readings");
    }
  }
}
