package dev.filmward.intake;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneRules;
import java.util.List;

/**
 * Reads a point in time; one without an offset is local time of the plant.
 *
 * <p>A local time that occurs twice, when clocks are put back, is taken as the earlier; one that
 * does not occur, when they are put forward, is refused. One owner, one thread.
 */
final class Times {
  private final ZoneId zone;
  private final ZoneRules rules;
  private final UsualTime usual = new UsualTime();
  private final TimeText text = new TimeText();
  private Instant instant = Instant.EPOCH;
  private String reason = "";
  private boolean sawLocal;
  private boolean sawTwice;

  Times(ZoneId zone) {
    this.zone = zone;
    this.rules = zone.getRules();
  }

  /** Reads a field; true if {@link #instant} is what it says, else {@link #reason} says why not. */
  boolean read(Row row, int field) {
    int start = row.from + row.start[field];
    int end = row.from + row.end[field];
    if (readUsual(row.bytes, start, end)) {
      return true;
    }
    if (!text.read(row.bytes, start, end)) {
      reason = Reasons.noTime(row.text(field));
      return false;
    }
    return text.hasOffset() ? at(ZoneOffset.ofTotalSeconds(text.offsetS())) : atPlant();
  }

  /** Reads a time as most gauges write it; false, and nothing changed, for any other. */
  boolean readUsual(byte[] bytes, int start, int end) {
    if (!usual.read(bytes, start, end)) {
      return false;
    }
    instant = Instant.ofEpochSecond(usual.epochSecond());
    return true;
  }

  Instant instant() {
    return instant;
  }

  String reason() {
    return reason;
  }

  /** Whether a time without an offset was read. */
  boolean sawLocal() {
    return sawLocal;
  }

  /** Whether a local time was read that occurs twice. */
  boolean sawTwice() {
    return sawTwice;
  }

  ZoneId zone() {
    return zone;
  }

  private boolean at(ZoneOffset offset) {
    instant = text.local().toInstant(offset);
    return true;
  }

  private boolean atPlant() {
    LocalDateTime local = text.local();
    List<ZoneOffset> offsets = rules.getValidOffsets(local);
    if (offsets.isEmpty()) {
      reason = Reasons.notOnTheClock(local, zone);
      return false;
    }
    sawLocal = true;
    sawTwice |= offsets.size() > 1;
    return at(offsets.get(0));
  }
}
