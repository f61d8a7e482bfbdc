package dev.filmward.diagnosis;

import java.time.Instant;

/**
 * Who brought a version of something about, when and why.
 *
 * @param version from 1
 */
public record Revision(int version, String author, String reason, Instant at) {
  public Revision {
    if (version < 1) {
      throw new IllegalArgumentException("versions count from 1, not " + version);
    }
    if (author.isBlank()) {
      throw new IllegalArgumentException("who decides this? Give a name");
    }
    if (reason.isBlank()) {
      throw new IllegalArgumentException("why is it decided? Give a reason");
    }
  }
}
