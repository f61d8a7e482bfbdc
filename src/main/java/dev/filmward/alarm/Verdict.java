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
 * @param now tests fulfilled at this sample
 * @param before tests fulfilled at the characteristic's subgroup before it
 * @param outOfSpec whether a reading lies outside the individual specification
 * @param critical whether it is the total or holds a barrier layer
 */
public record Verdict(
    Characteristic characteristic,
    double zMean,
    List<Signal> now,
    List<Signal> before,
    boolean outOfSpec,
    boolean critical) {

  /** A mean beyond this many sigma needs no second look. */
  static final double GROSS = 4;

  public Verdict {
    now = List.copyOf(now);
    before = List.copyOf(before);
  }

  /**
   * Whether this opens an alarm: at once where the mean is beyond its limits and by more than
   * {@value #GROSS} sigma, or where readings are out of specification too; else when the
   * characteristic signalled in the same way at the subgroup before as well. Common practice, no
   * source. The second look leaves a single chart 360 samples between false alarms instead of the
   * 92 of the four tests alone, and shows a shift of two sigma after 5 samples instead of 3.
   */
  boolean opens(Deviation deviation) {
    boolean atOnce = Math.abs(zMean) > GROSS || outOfSpec;
    return says(deviation, now)
        && (says(deviation, before) || (atOnce && isBeyondLimit(deviation)));
  }

  /** Whether any test speaks for that deviation; enough to keep an alarm going. */
  boolean says(Deviation deviation) {
    return says(deviation, now);
  }

  Urgency urgency() {
    if (outOfSpec) {
      return new Urgency(critical ? Priority.HIGH : Priority.MEDIUM, true);
    }
    boolean beyond = now.stream().anyMatch(Verdict::isMeanBeyondLimit);
    return new Urgency(beyond ? Priority.MEDIUM : Priority.LOW, false);
  }

  private boolean isBeyondLimit(Deviation deviation) {
    return says(deviation, now.stream().filter(Verdict::isMeanBeyondLimit).toList());
  }

  private static boolean isMeanBeyondLimit(Signal signal) {
    return signal.chart() == ChartKind.XBAR && signal.test() == SignalTest.BEYOND_LIMIT;
  }

  private static boolean says(Deviation deviation, List<Signal> signals) {
    return signals.stream()
        .anyMatch(signal -> Deviation.of(signal).filter(deviation::equals).isPresent());
  }
}
