package dev.filmward.telling;

import java.time.Instant;

/** Who decided something, why and when. */
public record Decided(String by, String reason, Instant at) {
  public Decided {
    if (by.isBlank()) {
      throw new IllegalArgumentException("who decides this? Give a name");
    }
    if (reason.isBlank()) {
      throw new IllegalArgumentException("give a reason; whoever is not told will ask for it");
    }
  }
}
