package dev.filmward.pipeline;

import dev.filmward.shift.CalendarVersion;
import dev.filmward.shift.ShiftBook;
import dev.filmward.shift.ShiftCalendar;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The plant's shift calendars: gives the shifts, and lets people set another. Thread-safe. */
public final class ShiftDesk {
  private final Plant plant;

  public ShiftDesk(Plant plant) {
    this.plant = plant;
  }

  public ShiftBook book() {
    return plant.store().read(this::book);
  }

  ShiftBook book(Tables tables) {
    return new ShiftBook(tables.shifts().versions(), plant.zone());
  }

  /**
   * Sets the calendar from a day on.
   *
   * @throws IllegalArgumentException if that day is too early: a later calendar never changes
   *     shifts that have begun, and the first one none that was handed over
   */
  public CalendarVersion set(
      ShiftCalendar calendar, LocalDate holdsFrom, String by, String reason) {
    Instant now = plant.clock().instant();
    return plant
        .store()
        .write(
            tables -> {
              ShiftBook book = book(tables);
              check(tables, book, holdsFrom, now);
              int number = book.versions().size() + 1;
              CalendarVersion version =
                  new CalendarVersion(number, holdsFrom, calendar, by, reason, now);
              tables.shifts().add(version);
              tables.audit().add(audited(version, book.on(holdsFrom)));
              return version;
            });
  }

  /** The earliest day from which another calendar may hold; empty where any day will do. */
  public Optional<LocalDate> earliest() {
    return plant.store().read(tables -> earliest(tables, book(tables), plant.clock().instant()));
  }

  private static Optional<LocalDate> earliest(Tables tables, ShiftBook book, Instant now) {
    if (book.versions().isEmpty() && tables.handovers().isEmpty()) {
      return Optional.empty();
    }
    LocalDate tomorrow = book.date(now).plusDays(1);
    return book.versions().stream()
        .map(CalendarVersion::holdsFrom)
        .max(LocalDate::compareTo)
        .filter(tomorrow::isBefore)
        .or(() -> Optional.of(tomorrow));
  }

  private static void check(Tables tables, ShiftBook book, LocalDate holdsFrom, Instant now) {
    earliest(tables, book, now)
        .filter(holdsFrom::isBefore)
        .ifPresent(
            earliest -> {
              throw new IllegalArgumentException(
                  "shifts that have begun stay as they are; the earliest day is " + earliest);
            });
    if (holdsFrom.isAfter(book.date(now).plusYears(1))) {
      throw new IllegalArgumentException("a calendar is set for the next year, not for later");
    }
  }

  private static AuditEntry audited(CalendarVersion version, ShiftCalendar before) {
    return new AuditEntry(
        version.decidedAt(),
        version.author(),
        "shifts",
        "shift calendar, version " + version.version(),
        "from "
            + version.holdsFrom()
            + ": "
            + words(version.calendar())
            + "; before: "
            + words(before)
            + "; "
            + version.reason());
  }

  private static String words(ShiftCalendar calendar) {
    List<String> shifts =
        calendar.patterns().stream()
            .map(
                pattern ->
                    pattern.name()
                        + " "
                        + pattern.startsAt()
                        + (pattern.days().size() == 7
                            ? ""
                            : pattern.days().stream()
                                .sorted()
                                .map(Object::toString)
                                .collect(Collectors.joining(" ", " on ", "")))
                        + (pattern.crews().isEmpty()
                            ? ""
                            : " by " + String.join(" ", pattern.crews())))
            .toList();
    return String.join(", ", shifts) + ", " + calendar.linesPerOperator() + " lines a person";
  }
}
