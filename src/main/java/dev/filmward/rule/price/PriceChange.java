package dev.filmward.rule.price;

import dev.filmward.chart.ChartKind;
import dev.filmward.rule.SignalTest;

/**
 * What the price would be with one test more or less.
 *
 * @param chart that of means, or for spread that of ranges
 */
public record PriceChange(ChartKind chart, SignalTest test, Turn turn, Price price) {

  /** What is done to the test. */
  public enum Turn {
    DROPPED,
    ADDED
  }
}
