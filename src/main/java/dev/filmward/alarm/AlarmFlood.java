package dev.filmward.alarm;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A time in which more alarms came to one operator position than anybody can answer: it begins when
 * more than {@value #MORE_THAN} came within the last ten minutes, and ends when these are fewer
 * than {@value #FEWER_THAN}. Source: ANSI/ISA-18.2 and EEMUA 191, from memory.
 *
 * @param alarms that came in it, with those of the ten minutes that made it one
 */
public record AlarmFlood(Instant from, Instant to, int alarms) {
  static final int MORE_THAN = 10;
  static final int FEWER_THAN = 5;
  static final Duration WINDOW = Duration.ofMinutes(10);

  /**
   * The floods of one position.
   *
   * @param moments of its alarms, ascending
   * @param end of what is looked at; a flood that goes on is cut there
   */
  static List<AlarmFlood> of(List<Instant> moments, Instant end) {
    List<AlarmFlood> floods = new ArrayList<>();
    Optional<Instant> since = Optional.empty();
    int within = 0;
    int alarms = 0;
    for (var change : changes(moments).entrySet()) {
      Step step = change.getValue();
      within += step.came - step.went;
      alarms = since.isPresent() ? alarms + step.came : within;
      if (since.isEmpty() && within > MORE_THAN) {
        since = Optional.of(change.getKey());
      } else if (since.isPresent() && within < FEWER_THAN) {
        floods.add(flood(since.get(), change.getKey(), end, alarms));
        since = Optional.empty();
      }
    }
    return floods;
  }

  Duration length() {
    return Duration.between(from, to);
  }

  private static AlarmFlood flood(Instant from, Instant to, Instant end, int alarms) {
    return new AlarmFlood(from, to.isBefore(end) ? to : end, alarms);
  }

  private record Step(int came, int went) {
    private Step and(Step other) {
      return new Step(came + other.came, went + other.went);
    }
  }

  /** An alarm counts from its moment on, and no more ten minutes later. */
  private static TreeMap<Instant, Step> changes(List<Instant> moments) {
    TreeMap<Instant, Step> changes = new TreeMap<>();
    for (Instant moment : moments) {
      changes.merge(moment, new Step(1, 0), Step::and);
      changes.merge(moment.plus(WINDOW), new Step(0, 1), Step::and);
    }
    return changes;
  }
}
