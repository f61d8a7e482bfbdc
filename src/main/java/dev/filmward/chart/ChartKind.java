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

  /**
   * @throws IllegalArgumentException if no chart is called that
   */
  public static ChartKind fromWord(String word) {
    return Arrays.stream(values())
        .filter(kind -> kind.word.equals(word))
        .findFirst()
        .orElseThrow(
            () -> new IllegalArgumentException("no chart \"" + word + "\"; xbar or range"));
  }
}
