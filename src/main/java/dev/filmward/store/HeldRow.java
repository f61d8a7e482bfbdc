package dev.filmward.store;

import java.time.Instant;
import java.util.Optional;

/**
 * A row in quarantine, or a reading of it, and what became of it. Immutable.
 *
 * @param mended empty while it is open
 */
public record HeldRow(long id, QuarantinedRow row, Optional<Mended> mended) {

  /**
   * What was submitted in its place.
   *
   * @param fileId the file as which it came
   */
  public record Mended(String text, String by, Instant at, long fileId) {}

  public boolean isOpen() {
    return mended.isEmpty();
  }
}
