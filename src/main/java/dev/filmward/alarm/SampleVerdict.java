package dev.filmward.alarm;

import dev.filmward.film.SampleKey;
import java.time.Instant;
import java.util.List;

/**
 * What the tests say of all measured characteristics of one sample.
 *
 * @param mode what the line was doing when it was taken
 */
public record SampleVerdict(
    SampleKey sample, Instant takenAt, List<Verdict> verdicts, LineMode mode) {
  public SampleVerdict {
    verdicts = List.copyOf(verdicts);
  }
}
