package dev.filmward.rule;

import dev.filmward.chart.ChartKind;

/** A test on a kind of chart. */
public record ChartTest(ChartKind chart, SignalTest test) {

  /** The test that a signal fulfils. */
  public static ChartTest of(Signal signal) {
    return new ChartTest(signal.chart(), signal.test());
  }

  /** As written in files: {@code xbar/beyond-limit}. */
  public String word() {
    return chart.word() + '/' + test.word();
  }

  /** The test of that name; {@link IllegalArgumentException} where there is none. */
  public static ChartTest fromWord(String word) {
    int slash = word.indexOf('/');
    if (slash < 0) {
      throw new IllegalArgumentException(
          "a test is written as xbar/beyond-limit, not \"" + word + "\"");
    }
    return new ChartTest(
        ChartKind.fromWord(word.substring(0, slash)),
        SignalTest.fromWord(word.substring(slash + 1)));
  }
}
