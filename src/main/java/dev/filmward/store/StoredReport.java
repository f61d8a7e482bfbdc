package dev.filmward.store;

import java.time.Instant;
import java.util.Optional;

/**
 * A weekly report as it is kept. Immutable.
 *
 * @param id 0 until it is kept
 * @param signature empty for a draft, which a newer one replaces
 * @param digest SHA-256 of the report as JSON, in hexadecimal
 * @param dataDigest of the readings that it rests on
 * @param changes figures that it changed against the revision before, as JSON
 */
public record StoredReport(
    long id,
    Scope scope,
    int revision,
    Instant madeAt,
    Optional<Signature> signature,
    String digest,
    String dataDigest,
    String changes) {

  /**
   * Of which week and films.
   *
   * @param line empty for all lines
   * @param structure empty for all structures
   */
  public record Scope(String week, String line, String structure) {}

  /** Who issued it, when and why. */
  public record Signature(String by, Instant at, String reason) {
    public Signature {
      if (by.isBlank() || reason.isBlank()) {
        throw new IllegalArgumentException("a report is signed with a name and a reason");
      }
    }
  }
}
