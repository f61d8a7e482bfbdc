package dev.filmward.alarm;

import java.time.Instant;

/** Who said "seen, mine", and when. */
public record Acknowledgement(String by, Instant at) {
  public Acknowledgement {
    if (by.isBlank()) {
      throw new IllegalArgumentException("who acknowledges? Give a name");
    }
  }
}
