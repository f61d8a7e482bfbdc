package dev.filmward.store;

import java.time.Instant;
import java.util.Optional;

/**
 * A file of readings that came.
 *
 * @param source by which way: watch, import, upload, mended, demo or live
 * @param refusal why nothing of it could be read, where that is so
 * @param mended of the readings in quarantine, those that were mended and came as another file
 */
public record FileEntry(
    long id,
    String name,
    String source,
    Sender sender,
    Instant receivedAt,
    Counts counts,
    String notes,
    Optional<String> refusal,
    long mended) {

  /** Who sent it, and why; what it corrects carries both. */
  public record Sender(String by, String why) {
    public static final Sender NOT_NAMED = new Sender("not named", "");

    /** A blank name is none. */
    public static Sender of(String by, String why) {
      return new Sender(by.isBlank() ? NOT_NAMED.by : by.strip(), why.strip());
    }

    /** Whether a person or a thing is named. */
    public boolean isNamed() {
      return !by.equals(NOT_NAMED.by);
    }
  }

  /** Readings but for {@code rows}: rows x layers = readings + missing + quarantined. */
  public record Counts(
      long rows, long readings, long missing, long quarantined, Arrivals arrivals) {
    public static final Counts NONE = new Counts(0, 0, 0, 0, new Arrivals(0, 0, 0));
  }

  /** What the readings were to what was there: new + known + corrected = readings. */
  public record Arrivals(long fresh, long known, long corrected) {}
}
