package dev.filmward.alarm;

import dev.filmward.chart.ChartKind;
import dev.filmward.film.Characteristic;
import dev.filmward.rule.Signal;
import dev.filmward.rule.SignalTest;
import java.util.List;

/**
 * What the tests say of one characteristic at one sample.
 *
 * @param now tests fulfilled at this sample
 * @param before tests fulfilled at the characteristic's subgroup before it
 * @param outOfSpec whether a reading lies outside the individual specification
 * @param critical whether it is the total or holds a barrier layer
 */
public record Verdict(
    Characteristic characteristic,
    List<Signal> now,
    List<Signal> before,
    boolean outOfSpec,
    boolean critical) {
  public Verdict {
    now = List.copyOf(now);
    before = List.copyOf(before);
  }

  /**
   * Whether this opens an alarm: a mean beyond its limits at once; any other test when the
   * characteristic signalled in the same way at the subgroup before as well. Common practice, no
   * source: the second look keeps one odd range or the mere end of a pattern from calling a person.
   */
  boolean opens(Deviation deviation) {
    return says(deviation, atOnce(now)) || (says(deviation, now) && says(deviation, before));
  }

  /** Whether any test speaks for that deviation; enough to keep an alarm going. */
  boolean says(Deviation deviation) {
    return says(deviation, now);
  }

  Urgency urgency() {
    if (outOfSpec) {
      return new Urgency(critical ? Priority.HIGH : Priority.MEDIUM, true);
    }
    return new Urgency(atOnce(now).isEmpty() ? Priority.LOW : Priority.MEDIUM, false);
  }

  private static List<Signal> atOnce(List<Signal> signals) {
    return signals.stream().filter(Verdict::callsAtOnce).toList();
  }

  private static boolean callsAtOnce(Signal signal) {
    return signal.chart() == ChartKind.XBAR && signal.test() == SignalTest.BEYOND_LIMIT;
  }

  private static boolean says(Deviation deviation, List<Signal> signals) {
    return signals.stream()
        .anyMatch(signal -> Deviation.of(signal).filter(deviation::equals).isPresent());
  }
}
