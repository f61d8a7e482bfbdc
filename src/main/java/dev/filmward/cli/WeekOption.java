package dev.filmward.cli;

import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.function.Predicate;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads an ISO week such as {@code 2026-W47}. */
final class WeekOption implements ITypeConverter<WeekOption.Week> {

  /** An ISO week, by its Monday. */
  record Week(LocalDate monday) {
    Week {
      if (monday.getDayOfWeek() != DayOfWeek.MONDAY) {
        throw new IllegalArgumentException("a week begins on a Monday, not on " + monday);
      }
    }

    /** Whether a moment lies in the week in a zone, from Monday 00:00 to the next one. */
    Predicate<Instant> in(ZoneId zone) {
      Instant from = monday.atStartOfDay(zone).toInstant();
      Instant to = monday.plusWeeks(1).atStartOfDay(zone).toInstant();
      return moment -> !moment.isBefore(from) && moment.isBefore(to);
    }
  }

  @Override
  public Week convert(String text) {
    try {
      return new Week(LocalDate.parse(text + "-1", DateTimeFormatter.ISO_WEEK_DATE));
    } catch (DateTimeException e) {
      throw new TypeConversionException(
          "\"" + text + "\" is no week; write year and ISO week like 2026-W47");
    }
  }
}
