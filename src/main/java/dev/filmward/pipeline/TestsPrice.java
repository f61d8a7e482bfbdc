package dev.filmward.pipeline;

import dev.filmward.chart.ChartKind;
import dev.filmward.film.Characteristic;
import dev.filmward.pipeline.LimitsProposal.PastAlarm;
import dev.filmward.rule.AlarmDelays;
import dev.filmward.rule.SignalTest;
import dev.filmward.rule.TestChoice;
import dev.filmward.rule.price.ChosenPrice;
import dev.filmward.rule.price.PriceChange.Turn;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a choice of tests costs on a line at the pace at which it is sampled, and gives.
 *
 * <p>False alarms are first signals of a test that raises alarms, on any chart, while nothing has
 * changed. An alarm on the screen waits for a second signal in a row unless the mean is far off, so
 * that there are fewer of those.
 *
 * @param size readings in a sample as they usually are
 * @param interval the median time between the last samples; empty where none can be told, then no
 *     figure a shift means anything
 * @param withShares the same if the share of each layer were charted too, with its layer's tests
 * @param changes what dropping a test from all characteristics, or adding it to all, would do
 * @param family limits that would leave a single chart's false alarms to all of them together
 * @param alarms those it would have raised on all that is stored, under the limits of now
 * @param delays how long each test must speak, and be silent, for an alarm
 */
public record TestsPrice(
    Map<Characteristic, TestChoice> choices,
    int size,
    Optional<Duration> interval,
    ChosenPrice price,
    ChosenPrice withShares,
    List<Turned> changes,
    Family family,
    List<PastAlarm> alarms,
    AlarmDelays delays) {

  /** The price with one test dropped from all characteristics, or added to all. */
  public record Turned(ChartKind chart, SignalTest test, Turn turn, ChosenPrice price) {}

  /**
   * Limits for all mean charts looked at as one family, so that 370 samples pass between the first
   * false alarms of any of them.
   *
   * @param ofMeans reach of the limits of means, in standard deviations; 3 for a single chart
   * @param ofAverages the same for their moving averages; 2.86 for a single chart
   */
  public record Family(int charts, double ofMeans, double ofAverages) {}

  public TestsPrice {
    changes = List.copyOf(changes);
    alarms = List.copyOf(alarms);
  }
}
