package dev.filmward.report;

import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.IsoFields;
import java.time.temporal.TemporalAdjusters;
import java.util.Locale;

/**
 * An ISO week (ISO 8601) in the plant's zone: from Monday 00:00 to the next Monday 00:00, so that
 * it has 167 or 169 hours where the clock changes. Immutable.
 */
public record ReportWeek(LocalDate monday, ZoneId zone) {
  public ReportWeek {
    if (monday.getDayOfWeek() != DayOfWeek.MONDAY) {
      throw new IllegalArgumentException("a week begins on a Monday, not on " + monday);
    }
  }

  /**
   * Reads a week.
   *
   * @throws IllegalArgumentException with what to write instead
   */
  public static ReportWeek parse(String text, ZoneId zone) {
    try {
      return new ReportWeek(LocalDate.parse(text + "-1", DateTimeFormatter.ISO_WEEK_DATE), zone);
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(
          "\"" + text + "\" is no week; write year and ISO week like 2026-W47", e);
    }
  }

  /** The week that a moment lies in. */
  public static ReportWeek of(Instant moment, ZoneId zone) {
    LocalDate day = moment.atZone(zone).toLocalDate();
    return new ReportWeek(day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY)), zone);
  }

  /** As it is written: 2026-W47. */
  public String word() {
    return String.format(
        Locale.ROOT,
        "%04d-W%02d",
        monday.get(IsoFields.WEEK_BASED_YEAR),
        monday.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
  }

  public Instant from() {
    return monday.atStartOfDay(zone).toInstant();
  }

  /** Does not belong to the week any more. */
  public Instant to() {
    return monday.plusWeeks(1).atStartOfDay(zone).toInstant();
  }

  public ReportWeek minus(int weeks) {
    return new ReportWeek(monday.minusWeeks(weeks), zone);
  }

  public boolean contains(Instant moment) {
    return !moment.isBefore(from()) && moment.isBefore(to());
  }
}
