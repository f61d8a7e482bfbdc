package dev.filmward.alarm;

import dev.filmward.film.Characteristic;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Which alarms are held back.
 *
 * @param structure all that the line makes where left out
 * @param positions of characteristics, 0 for the total; all of them where empty
 * @param deviation any where left out
 */
public record HoldScope(
    String line,
    Optional<String> structure,
    Set<Integer> positions,
    Optional<Deviation> deviation) {
  public HoldScope {
    if (line.isBlank()) {
      throw new IllegalArgumentException("which line? Give its name");
    }
    positions = Set.copyOf(positions);
  }

  /** What such an alarm is about, and nothing else. */
  public static HoldScope of(Subject subject) {
    return new HoldScope(
        subject.line(),
        Optional.of(subject.structure()),
        positions(subject),
        Optional.of(subject.deviation()));
  }

  /** Whether all that the alarm is about is held back; one layer more, and it is not. */
  public boolean covers(Subject subject) {
    return line.equals(subject.line())
        && structure.filter(code -> !code.equals(subject.structure())).isEmpty()
        && deviation.filter(way -> way != subject.deviation()).isEmpty()
        && (positions.isEmpty() || positions.containsAll(positions(subject)));
  }

  private static Set<Integer> positions(Subject subject) {
    return subject.members().stream()
        .map(Characteristic::position)
        .collect(Collectors.toUnmodifiableSet());
  }
}
