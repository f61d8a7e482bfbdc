package dev.filmward.alarm;

import dev.filmward.film.SampleKey;
import java.time.Instant;
import java.util.List;

/**
 * What the tests say of all measured characteristics of one sample.
 *
 * @param line what the line was doing when it was taken
 */
public record SampleVerdict(
    SampleKey sample, Instant takenAt, List<Verdict> verdicts, LineMoment line) {
  public SampleVerdict {
    verdicts = List.copyOf(verdicts);
  }

  LineMode mode() {
    return line.mode();
  }
}
