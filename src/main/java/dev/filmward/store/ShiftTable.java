package dev.filmward.store;

import dev.filmward.shift.CalendarVersion;
import dev.filmward.shift.ShiftCalendar;
import dev.filmward.shift.ShiftPattern;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/** Shift calendars that people set; versions are added and never changed. */
public final class ShiftTable {
  private static final String BETWEEN_CREWS = "\n";

  private final Handle handle;

  ShiftTable(Handle handle) {
    this.handle = handle;
  }

  /** First to last. */
  public List<CalendarVersion> versions() {
    return handle
        .createQuery("SELECT * FROM shift_calendar ORDER BY version")
        .map((row, context) -> version(row))
        .list();
  }

  public void add(CalendarVersion version) {
    handle
        .createUpdate(
            "INSERT INTO shift_calendar (version, holds_from, lines_per_operator, author, reason,"
                + " decided_at) VALUES (:version, :from, :lines, :author, :reason, :at)")
        .bind("version", version.version())
        .bind("from", version.holdsFrom().toString())
        .bind("lines", version.calendar().linesPerOperator())
        .bind("author", Nul.shown(version.author()))
        .bind("reason", Nul.shown(version.reason()))
        .bind("at", Times.toMicros(version.decidedAt()))
        .execute();
    List<ShiftPattern> patterns = version.calendar().patterns();
    for (int place = 0; place < patterns.size(); place++) {
      add(version.version(), place, patterns.get(place));
    }
  }

  private void add(int version, int place, ShiftPattern pattern) {
    handle
        .createUpdate(
            "INSERT INTO shift_pattern (version, place, name, starts_at, days, crews)"
                + " VALUES (:version, :place, :name, :startsAt, :days, :crews)")
        .bind("version", version)
        .bind("place", place)
        .bind("name", Nul.shown(pattern.name()))
        .bind("startsAt", pattern.startsAt().toString())
        .bind("days", days(pattern))
        .bind("crews", Nul.shown(String.join(BETWEEN_CREWS, pattern.crews())))
        .execute();
  }

  private static String days(ShiftPattern pattern) {
    return pattern.days().stream()
        .sorted()
        .map(day -> String.valueOf(day.getValue()))
        .collect(Collectors.joining(" "));
  }

  private CalendarVersion version(ResultSet row) throws SQLException {
    int version = row.getInt("version");
    return new CalendarVersion(
        version,
        LocalDate.parse(row.getString("holds_from")),
        new ShiftCalendar(patterns(version), row.getInt("lines_per_operator")),
        row.getString("author"),
        row.getString("reason"),
        Times.toInstant(row.getLong("decided_at")));
  }

  private List<ShiftPattern> patterns(int version) {
    return handle
        .createQuery("SELECT * FROM shift_pattern WHERE version = :version ORDER BY place")
        .bind("version", version)
        .map((row, context) -> pattern(row))
        .list();
  }

  private static ShiftPattern pattern(ResultSet row) throws SQLException {
    Set<DayOfWeek> days =
        Arrays.stream(row.getString("days").split(" ", -1))
            .map(number -> DayOfWeek.of(Integer.parseInt(number)))
            .collect(Collectors.toSet());
    return new ShiftPattern(
        row.getString("name"),
        LocalTime.parse(row.getString("starts_at")),
        days,
        row.getString("crews").lines().toList());
  }
}
