package dev.filmward.store;

import java.time.Instant;
import java.util.Optional;

/**
 * What somebody of a shift wrote down.
 *
 * @param id given by the store; 0 before that
 * @param line empty where it is about the plant as a whole
 * @param at the moment it is about
 * @param roll empty where it is about no roll
 */
public record ShiftNote(
    long id,
    String line,
    Instant at,
    Instant writtenAt,
    String by,
    String text,
    String roll,
    Kind kind,
    Optional<Settled> settled) {

  /** Whether anything is to be done. */
  public enum Kind {
    /** To be known. */
    NOTE,
    /** Stays on every shift's page until somebody settles it. */
    FOLLOW_UP
  }

  /** How a thing to be done came out. */
  public record Settled(Instant at, String by, String outcome) {}

  public ShiftNote {
    if (by.isBlank() || text.isBlank()) {
      throw new IllegalArgumentException("a note has words and somebody who wrote them");
    }
  }

  public boolean isOpen() {
    return kind == Kind.FOLLOW_UP && settled.isEmpty();
  }
}
