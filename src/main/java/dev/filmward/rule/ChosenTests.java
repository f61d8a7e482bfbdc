package dev.filmward.rule;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * The choices of tests of a production, first to last: each moment has the one in force then, so
 * that a sample is judged in the same way whenever it comes. Immutable.
 */
public record ChosenTests(List<TestsVersion> versions) {
  /** Nobody has chosen yet: the standard tests. */
  public static final ChosenTests STANDARD = new ChosenTests(List.of());

  public ChosenTests {
    versions = List.copyOf(versions);
  }

  /** The choice for a characteristic at a moment; position 0 is the total. */
  public TestChoice at(Instant moment, int position) {
    return at(moment).map(version -> version.at(position)).orElse(TestChoice.STANDARD);
  }

  /** How long tests must speak, and be silent, for alarms at a moment. */
  public AlarmDelays delaysAt(Instant moment) {
    return at(moment).map(TestsVersion::delays).orElse(AlarmDelays.STANDARD);
  }

  /** What the next sample has. */
  public AlarmDelays newestDelays() {
    return latest().map(TestsVersion::delays).orElse(AlarmDelays.STANDARD);
  }

  private Optional<TestsVersion> at(Instant moment) {
    for (int i = versions.size() - 1; i >= 0; i--) {
      if (!versions.get(i).holdsFrom().isAfter(moment)) {
        return Optional.of(versions.get(i));
      }
    }
    return Optional.empty();
  }

  /** The choice that the next sample has. */
  public TestChoice newest(int position) {
    return latest().map(version -> version.at(position)).orElse(TestChoice.STANDARD);
  }

  /** As if the newest choice had been in force all the time. */
  public ChosenTests newestAlways() {
    return new ChosenTests(latest().map(version -> version.from(Instant.MIN)).stream().toList());
  }

  public Optional<TestsVersion> latest() {
    return versions.isEmpty() ? Optional.empty() : Optional.of(versions.get(versions.size() - 1));
  }

  /** How many earlier points settle the answer at the next under any of the choices. */
  public int warmUp(int position) {
    return versions.stream()
        .mapToInt(version -> version.at(position).shown().warmUp())
        .reduce(TestSet.STANDARD.warmUp(), Math::max);
  }

  /** How many samples before a sample an alarm's delays look back for under any of the choices. */
  public int earlierSamples() {
    return versions.stream()
        .mapToInt(version -> version.delays().earlierSamples())
        .reduce(AlarmDelays.STANDARD.earlierSamples(), Math::max);
  }
}
