package dev.filmward.alarm;

import dev.filmward.alarm.AlarmRun.Stretch;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * Tells whether a topic chatters: {@value #RAISES} raises within {@value #SAMPLES} samples, or, by
 * the clock, {@value #RAISES} changes from quiet to signalling or back within a minute. The rule by
 * the clock after ANSI/ISA-18.2, from memory; that by samples is common practice, no source.
 */
final class Chattering {
  static final int RAISES = 3;
  static final int SAMPLES = 10;
  private static final Duration MINUTE = Duration.ofMinutes(1);

  private Chattering() {}

  static boolean is(List<AlarmRun> ofTopic) {
    List<Stretch> stretches = ofTopic.stream().flatMap(run -> run.stretches().stream()).toList();
    return bySamples(stretches) || byClock(stretches);
  }

  private static boolean bySamples(List<Stretch> stretches) {
    long[] raised = stretches.stream().mapToLong(Stretch::firstSample).sorted().toArray();
    for (int i = RAISES - 1; i < raised.length; i++) {
      if (raised[i] - raised[i - RAISES + 1] < SAMPLES) {
        return true;
      }
    }
    return false;
  }

  private static boolean byClock(List<Stretch> stretches) {
    List<Instant> changes = new ArrayList<>();
    for (Stretch stretch : stretches) {
      changes.add(stretch.from());
      stretch.to().ifPresent(changes::add);
    }
    changes.sort(null);
    for (int i = RAISES - 1; i < changes.size(); i++) {
      Duration took = Duration.between(changes.get(i - RAISES + 1), changes.get(i));
      if (took.compareTo(MINUTE) <= 0) {
        return true;
      }
    }
    return false;
  }
}
