package dev.filmward.chart;

import java.util.Arrays;

/** What is charted of a series. */
public enum ChartKind {
  /** Means of the subgroups, or single values. */
  XBAR("xbar"),
  /** Ranges within the subgroups. */
  RANGE("range"),
  /** Standard deviations within the subgroups, or about the lanes' usual profile. */
  DEVIATION("deviation"),
  /** Distances of each mean or value from the one before. */
  MOVING_RANGE("moving-range"),
  /** Exponentially weighted moving average of the means. */
  EWMA("ewma"),
  /** Cumulative sums of the means' deviations. */
  CUSUM("cusum"),
  /** Distance of all layers together, Hotelling's T squared. */
  T_SQUARED("t-squared");

  private final String word;

  ChartKind(String word) {
    this.word = word;
  }

  /** As written in files and addresses. */
  public String word() {
    return word;
  }

  /** The chart of that name; {@link IllegalArgumentException} where there is none. */
  public static ChartKind fromWord(String word) {
    return Arrays.stream(values())
        .filter(kind -> kind.word.equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "no chart \"" + word + "\"; the charts are " + words()));
  }

  private static String words() {
    return String.join(", ", Arrays.stream(values()).map(ChartKind::word).toList());
  }
}
