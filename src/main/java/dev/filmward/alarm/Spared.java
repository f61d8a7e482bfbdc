package dev.filmward.alarm;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;

/**
 * How many alarms of one topic would be left under settings that can be judged by the alarms alone.
 * Stateless.
 */
public final class Spared {
  private Spared() {}

  /**
   * If an alarm waited for one sample more: those that went on signalling at the next sample, at
   * one of their stretches. One whose next sample has not come yet is left.
   */
  public static int byOneSampleMore(List<AlarmRun> ofTopic) {
    return (int)
        ofTopic.stream()
            .filter(
                run ->
                    run.stretches().stream()
                        .anyMatch(s -> s.to().isEmpty() || s.lastSample() > s.firstSample()))
            .count();
  }

  /** If the first were shelved for so long, then the next one after that, and so on. */
  public static int byShelving(List<AlarmRun> ofTopic, Duration shelf) {
    List<AlarmRun> inOrder =
        ofTopic.stream().sorted(Comparator.comparing(AlarmRun::raisedAt)).toList();
    int left = 0;
    Instant until = Instant.MIN;
    for (AlarmRun run : inOrder) {
      if (!run.raisedAt().isBefore(until)) {
        left++;
        until = run.raisedAt().plus(shelf);
      }
    }
    return left;
  }
}
