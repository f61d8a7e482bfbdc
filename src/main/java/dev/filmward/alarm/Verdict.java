package dev.filmward.alarm;

import dev.filmward.chart.ChartKind;
import dev.filmward.film.Characteristic;
import dev.filmward.rule.Signal;
import dev.filmward.rule.SignalTest;
import java.util.List;

/**
 * What the tests say of one characteristic at one sample.
 *
 * @param zMean the mean as standardised by its limits
 */
public record Verdict(Characteristic characteristic, double zMean, Heard heard, Stakes stakes) {

  /** A mean beyond this many sigma needs no second look. */
  static final double GROSS = 4;

  /**
   * Whether this opens an alarm: at once where the mean is beyond its limits and by more than
   * {@value #GROSS} sigma, or where readings are out of specification too; else when as many
   * samples in a row signalled in the same way as the test asks for. Common practice, no source.
   * The usual second look leaves a single chart 360 samples between false alarms instead of the 92
   * of the four tests alone, and shows a shift of two sigma after 5 samples instead of 3.
   */
  boolean opens(Deviation deviation) {
    boolean atOnce = Math.abs(zMean) > GROSS || stakes.outOfSpec();
    return heard.opens(deviation) || (atOnce && isBeyondLimit(deviation));
  }

  /** Whether any test speaks for that deviation, or did lately; enough to keep an alarm going. */
  boolean says(Deviation deviation) {
    return heard.goesOn(deviation);
  }

  Urgency urgency() {
    boolean beyond = heard.now().stream().anyMatch(Verdict::isMeanBeyondLimit);
    Priority priority = stakes.priority(beyond ? Priority.MEDIUM : Priority.LOW);
    return new Urgency(priority, stakes.outOfSpec(), stakes.timeToSpec());
  }

  private boolean isBeyondLimit(Deviation deviation) {
    List<Signal> beyond = heard.now().stream().filter(Verdict::isMeanBeyondLimit).toList();
    return Heard.says(beyond, deviation);
  }

  private static boolean isMeanBeyondLimit(Signal signal) {
    return signal.chart() == ChartKind.XBAR && signal.test() == SignalTest.BEYOND_LIMIT;
  }
}
