package dev.filmward.alarm;

import java.time.Instant;

/**
 * What was found and what was done about it. "Not found yet" is an honest cause.
 *
 * @param cause what made it happen, in words
 * @param action what was done, in words; empty where that is still to come
 */
public record Finding(String cause, String action, String by, Instant at) {
  public static final String NOT_FOUND_YET = "not found yet";

  public Finding {
    if (by.isBlank()) {
      throw new IllegalArgumentException("who found it? Give a name");
    }
    if (cause.isBlank()) {
      throw new IllegalArgumentException(
          "give a cause; \"" + NOT_FOUND_YET + "\" is an honest answer");
    }
  }

  public boolean namesCause() {
    return !cause.equals(NOT_FOUND_YET);
  }

  /** Whether cause and action are both known; until they are, the alarm is not closed. */
  boolean isComplete() {
    return namesCause() && !action.isBlank();
  }
}
