package dev.filmward.store;

import dev.filmward.alarm.Acknowledgement;
import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlarmState;
import dev.filmward.alarm.Course;
import dev.filmward.alarm.Deviation;
import dev.filmward.alarm.Excursion;
import dev.filmward.alarm.Finding;
import dev.filmward.alarm.LineMode;
import dev.filmward.alarm.Priority;
import dev.filmward.alarm.Subject;
import dev.filmward.film.Characteristic;
import dev.filmward.film.SampleKey;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Collection;
import java.util.Optional;
import java.util.TreeSet;

/** A row of the alarm table, without the alarm's members. */
record AlarmRow(
    long id,
    Deviation deviation,
    Priority priority,
    boolean outOfSpec,
    Course course,
    boolean historical,
    Optional<Acknowledgement> acknowledgement,
    Optional<Finding> finding,
    AlarmState state,
    Optional<Instant> shownAt,
    LineMode mode,
    boolean raised,
    Optional<Instant> outOfSpecAt) {

  static AlarmRow read(ResultSet row) throws SQLException {
    return new AlarmRow(
        row.getLong("id"),
        Deviation.valueOf(row.getString("deviation")),
        Priority.valueOf(row.getString("priority")),
        row.getInt("out_of_spec") != 0,
        course(row),
        row.getInt("historical") != 0,
        acknowledgement(row),
        finding(row),
        AlarmState.fromWord(row.getString("state")),
        moment(row, "shown_at"),
        LineMode.fromWord(row.getString("line_mode")),
        row.getInt("raised") != 0,
        moment(row, "out_of_spec_at"));
  }

  Alarm toAlarm(Collection<Characteristic> members) {
    Subject subject =
        new Subject(
            course.first().line(), course.first().structure(), deviation, new TreeSet<>(members));
    Excursion excursion =
        new Excursion(subject, priority, outOfSpec, course, mode, raised, outOfSpecAt);
    return new Alarm(id, excursion, historical, acknowledgement, finding, state, shownAt);
  }

  private static Course course(ResultSet row) throws SQLException {
    SampleKey first =
        new SampleKey(
            row.getString("line"),
            row.getString("structure"),
            row.getString("roll"),
            row.getString("sample"));
    return new Course(
        first,
        Times.toInstant(row.getLong("opened_at")),
        Times.toInstant(row.getLong("last_signal_at")),
        moment(row, "returned_at"),
        row.getInt("quiet_samples"),
        moment(row, "settled_at"));
  }

  private static Optional<Acknowledgement> acknowledgement(ResultSet row) throws SQLException {
    String by = row.getString("acknowledged_by");
    return by == null
        ? Optional.empty()
        : Optional.of(new Acknowledgement(by, Times.toInstant(row.getLong("acknowledged_at"))));
  }

  private static Optional<Finding> finding(ResultSet row) throws SQLException {
    String cause = row.getString("cause");
    return cause == null
        ? Optional.empty()
        : Optional.of(
            new Finding(
                cause,
                row.getString("action"),
                row.getString("finding_by"),
                Times.toInstant(row.getLong("finding_at"))));
  }

  private static Optional<Instant> moment(ResultSet row, String column) throws SQLException {
    long micros = row.getLong(column);
    return row.wasNull() ? Optional.empty() : Optional.of(Times.toInstant(micros));
  }
}
