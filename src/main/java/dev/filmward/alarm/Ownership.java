package dev.filmward.alarm;

import java.time.Instant;
import java.util.Optional;

/**
 * With whom an alarm is: the person who took it, until somebody hands it on.
 *
 * @param why may be empty
 */
public record Ownership(String owner, String why, String by, Instant at) {
  public Ownership {
    if (owner.isBlank()) {
      throw new IllegalArgumentException("to whom is it handed on? Give a name");
    }
    if (by.isBlank()) {
      throw new IllegalArgumentException("who hands it on? Give a name");
    }
  }

  /** Who owns an alarm, after it was handed on or not; what came later counts. */
  public static Optional<Ownership> of(Alarm alarm, Optional<Ownership> handedOn) {
    Optional<Ownership> taken =
        alarm.acknowledgement().map(seen -> new Ownership(seen.by(), "", seen.by(), seen.at()));
    if (handedOn.isEmpty() || taken.isEmpty()) {
      return handedOn.or(() -> taken);
    }
    return taken.get().at().isAfter(handedOn.get().at()) ? taken : handedOn;
  }
}
