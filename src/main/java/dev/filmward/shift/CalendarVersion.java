package dev.filmward.shift;

import java.time.Instant;
import java.time.LocalDate;

/**
 * A calendar that a person set. Versions are added and never changed.
 *
 * @param holdsFrom the first day whose shifts it gives; its rotations of crews begin there
 */
public record CalendarVersion(
    int version,
    LocalDate holdsFrom,
    ShiftCalendar calendar,
    String author,
    String reason,
    Instant decidedAt) {
  public CalendarVersion {
    if (version < 1 || author.isBlank() || reason.isBlank()) {
      throw new IllegalArgumentException("who set the calendar, and why? It is kept with both");
    }
  }
}
