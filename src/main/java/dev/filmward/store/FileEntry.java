package dev.filmward.store;

import java.time.Instant;
import java.util.Optional;

/**
 * A file of readings that came.
 *
 * @param source by which way: watch, import, upload, demo or live
 * @param refusal why nothing of it could be read, where that is so
 */
public record FileEntry(
    long id,
    String name,
    String source,
    Instant receivedAt,
    Counts counts,
    String notes,
    Optional<String> refusal) {

  /** Readings but for {@code rows}: rows x layers = readings + missing + quarantined. */
  public record Counts(
      long rows, long readings, long missing, long quarantined, Arrivals arrivals) {
    public static final Counts NONE = new Counts(0, 0, 0, 0, new Arrivals(0, 0, 0));
  }

  /** What the readings were to what was there: new + known + corrected = readings. */
  public record Arrivals(long fresh, long known, long corrected) {}
}
