package dev.filmward.simulate;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;

/** The runs of the folder sample-runs, as they were made. */
public final class SampleRuns {
  /** Where the two lines stand. */
  public static final ZoneId PLANT_ZONE = ZoneId.of("Europe/Berlin");

  private SampleRuns() {}

  /** By line, then in the order in which the line made them. */
  public static List<SampleRun> all() {
    return List.of(PouchRun.run(), LiddingRun.run(), NineLayerRun.run(), ShrinkRun.run());
  }

  /** A sample each quarter of an hour and a roll each three hours. */
  static Schedule schedule(String line, Instant start, String rollPrefix) {
    return new Schedule(line, start, Duration.ofMinutes(15), new Rolls(rollPrefix, 12));
  }
}
