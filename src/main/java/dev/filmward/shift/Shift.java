package dev.filmward.shift;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * One shift of one day.
 *
 * @param day on which it begins; it belongs to that day also after midnight
 * @param to when the next one begins
 */
public record Shift(LocalDate day, String name, Instant from, Instant to, Optional<String> crew) {
  public Shift {
    if (!from.isBefore(to)) {
      throw new IllegalArgumentException(name + " of " + day + " ends before it begins");
    }
  }

  /** As written in addresses: {@code 2026-11-25 Early}. */
  public String word() {
    return day + " " + name;
  }

  /** Its beginning counts, its end does not. */
  public boolean contains(Instant moment) {
    return !moment.isBefore(from) && moment.isBefore(to);
  }

  public Duration length() {
    return Duration.between(from, to);
  }
}
