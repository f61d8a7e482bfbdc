package dev.filmward.rule;

import dev.filmward.chart.LimitsVersion.Decision;
import java.time.Instant;
import java.util.Map;

/**
 * A choice of tests for what a line makes of one structure, as a person decided it; never changed
 * once made. Immutable.
 *
 * @param version from 1
 * @param choices by the position of the characteristic, 0 for the total; one that is not named has
 *     the standard tests
 * @param delays how long each test must speak, and be silent, for an alarm
 * @param holdsFrom until a later version does
 */
public record TestsVersion(
    int version,
    Map<Integer, TestChoice> choices,
    AlarmDelays delays,
    Instant holdsFrom,
    Decision decision) {

  public TestsVersion {
    choices = Map.copyOf(choices);
  }

  public TestChoice at(int position) {
    return choices.getOrDefault(position, TestChoice.STANDARD);
  }

  TestsVersion from(Instant moment) {
    return new TestsVersion(version, choices, delays, moment, decision);
  }
}
