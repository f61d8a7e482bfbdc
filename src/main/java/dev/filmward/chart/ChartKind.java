package dev.filmward.chart;

import java.util.Arrays;

/** The two charts of a series: of the subgroups' means and of their ranges. */
public enum ChartKind {
  XBAR("xbar"),
  RANGE("range");

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
            () -> new IllegalArgumentException("no chart \"" + word + "\"; xbar or range"));
  }
}
