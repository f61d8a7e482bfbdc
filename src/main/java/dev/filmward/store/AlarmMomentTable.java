package dev.filmward.store;

import dev.filmward.alarm.Priority;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** When alarms were announced, signalled and were taken: what their figures are made from. */
public final class AlarmMomentTable {
  private static final String TOUCHING =
      " a.historical = 0 AND a.shown_at IS NOT NULL AND a.opened_at < :to"
          + " AND (a.returned_at IS NULL OR a.last_signal_at >= :from)";

  private final Handle handle;

  AlarmMomentTable(Handle handle) {
    this.handle = handle;
  }

  /** An announced alarm. */
  public record AlarmMoment(
      long id,
      String line,
      String structure,
      Priority priority,
      Instant openedAt,
      Instant lastSignalAt,
      Optional<Instant> returnedAt,
      Optional<Instant> acknowledgedAt) {}

  /** A sample at which an alarm signalled. */
  public record SignalMoment(long alarmId, long sampleId) {}

  /**
   * Alarms that were announced or signalled in a time; those that came as old news are left out,
   * and those that were only ever held back.
   */
  public List<AlarmMoment> touching(Instant from, Instant to) {
    return handle
        .createQuery("SELECT * FROM alarm a WHERE" + TOUCHING + " ORDER BY a.opened_at, a.id")
        .bind("from", Times.toMicros(from))
        .bind("to", Times.toMicros(to))
        .map((row, context) -> moment(row))
        .list();
  }

  /** The samples at which these signalled, each once for an alarm. */
  public List<SignalMoment> signals(Instant from, Instant to) {
    return handle
        .createQuery(
            "SELECT DISTINCT g.alarm_id, g.sample_id FROM alarm_signal g"
                + " JOIN alarm a ON a.id = g.alarm_id WHERE"
                + TOUCHING)
        .bind("from", Times.toMicros(from))
        .bind("to", Times.toMicros(to))
        .map((row, context) -> new SignalMoment(row.getLong("alarm_id"), row.getLong("sample_id")))
        .list();
  }

  /** How many came as old news in a time, so that nobody was called. */
  public long historical(Instant from, Instant to) {
    return handle
        .createQuery(
            "SELECT count(*) FROM alarm WHERE historical = 1 AND opened_at >= :from"
                + " AND opened_at < :to")
        .bind("from", Times.toMicros(from))
        .bind("to", Times.toMicros(to))
        .mapTo(Long.class)
        .one();
  }

  private static AlarmMoment moment(ResultSet row) throws SQLException {
    return new AlarmMoment(
        row.getLong("id"),
        row.getString("line"),
        row.getString("structure"),
        Priority.valueOf(row.getString("priority")),
        Times.toInstant(row.getLong("opened_at")),
        Times.toInstant(row.getLong("last_signal_at")),
        time(row, "returned_at"),
        time(row, "acknowledged_at"));
  }

  private static Optional<Instant> time(ResultSet row, String column) throws SQLException {
    long micros = row.getLong(column);
    return row.wasNull() ? Optional.empty() : Optional.of(Times.toInstant(micros));
  }
}
