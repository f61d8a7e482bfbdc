package dev.filmward.alarm;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * One alarm as people met it: when it was announced, when it signalled, when somebody took it.
 * Immutable.
 *
 * @param stretches the times that it signalled without a break, in order; at least one
 */
public record AlarmRun(
    long id,
    Topic topic,
    Priority priority,
    List<Stretch> stretches,
    Optional<Instant> acknowledgedAt) {

  /** What alarms are about; alarms of one topic are the same trouble come back. */
  public record Topic(String line, String structure, Deviation deviation, String words) {}

  /**
   * A time without a break.
   *
   * @param to the first quiet sample after it; empty while it goes on
   * @param firstSample number of the sample that began it, counted along its production
   * @param lastSample number of the last sample that signalled
   */
  public record Stretch(Instant from, Optional<Instant> to, long firstSample, long lastSample) {
    public Stretch {
      if (lastSample < firstSample) {
        throw new IllegalArgumentException("a stretch ends at sample " + lastSample + " or later");
      }
    }

    /** How long it had gone on at a moment, or went on where it was over by then. */
    Duration length(Instant moment) {
      Instant end = to.filter(moment::isAfter).orElse(moment);
      return Duration.between(from, end);
    }
  }

  public AlarmRun {
    if (stretches.isEmpty()) {
      throw new IllegalArgumentException("alarm " + id + " signalled at some sample");
    }
    stretches = List.copyOf(stretches);
  }

  /** When it was announced. */
  public Instant raisedAt() {
    return stretches.get(0).from();
  }

  /**
   * Over before anybody could act: one sample alone signalled, and nobody had taken it when the
   * next one was quiet. The standards mean by fleeting an alarm that clears without an operator's
   * act, of seconds; one sample is what that comes to here.
   */
  boolean isFleeting() {
    Stretch first = stretches.get(0);
    return stretches.size() == 1
        && first.firstSample() == first.lastSample()
        && first.to().isPresent()
        && acknowledgedAt.filter(at -> at.isBefore(first.to().get())).isEmpty();
  }
}
