package dev.filmward.store;

import dev.filmward.alarm.Disposition;
import dev.filmward.alarm.RollKey;
import dev.filmward.alarm.RollState;
import dev.filmward.diagnosis.Revision;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/** What becomes of rolls, in versions that are added and never changed. */
public final class RollTable {
  private final Handle handle;

  RollTable(Handle handle) {
    this.handle = handle;
  }

  /** Whether any sample of that roll is kept. */
  public boolean isKnown(RollKey roll) {
    return about(
                roll,
                "SELECT count(*) FROM (SELECT 1 FROM sample WHERE production_id = "
                    + BlockTable.PRODUCTION
                    + " AND roll = :roll LIMIT 1) found")
            .mapTo(Long.class)
            .one()
        > 0;
  }

  /** What was ever decided about a roll, newest first. */
  public List<Disposition> of(RollKey roll) {
    return about(
            roll,
            "SELECT * FROM roll_disposition WHERE line = :line AND structure = :structure"
                + " AND roll = :roll ORDER BY version DESC")
        .map((row, context) -> disposition(row))
        .list();
  }

  /** What holds about a roll now. */
  public Optional<Disposition> newest(RollKey roll) {
    return of(roll).stream().findFirst();
  }

  /**
   * What holds now about all rolls that somebody decided about; the last decision first.
   *
   * @param state only these, where it is given
   */
  public List<Disposition> newest(Optional<RollState> state, int most) {
    Query query =
        handle
            .createQuery(
                "SELECT * FROM roll_disposition d WHERE version = (SELECT max(version)"
                    + " FROM roll_disposition n WHERE n.line = d.line"
                    + " AND n.structure = d.structure AND n.roll = d.roll)"
                    + (state.isPresent() ? " AND state = :state" : "")
                    + " ORDER BY id DESC LIMIT :most")
            .bind("most", most);
    state.ifPresent(only -> query.bind("state", only.word()));
    return query.map((row, context) -> disposition(row)).list();
  }

  public void add(Disposition disposition) {
    OptionalLong alarmId = disposition.alarmId();
    handle
        .createUpdate(
            "INSERT INTO roll_disposition (line, structure, roll, version, state, author, reason,"
                + " decided_at, alarm_id) VALUES (:line, :structure, :roll, :version, :state,"
                + " :author, :reason, :at, :alarmId)")
        .bind("line", disposition.roll().line())
        .bind("structure", disposition.roll().structure())
        .bind("roll", disposition.roll().roll())
        .bind("version", disposition.revision().version())
        .bind("state", disposition.state().word())
        .bind("author", Nul.shown(disposition.revision().author()))
        .bind("reason", Nul.shown(disposition.revision().reason()))
        .bind("at", Times.toMicros(disposition.revision().at()))
        .bind("alarmId", alarmId.isPresent() ? alarmId.getAsLong() : null)
        .execute();
  }

  private Query about(RollKey roll, String sql) {
    return handle
        .createQuery(sql)
        .bind("line", roll.line())
        .bind("structure", roll.structure())
        .bind("roll", roll.roll());
  }

  private static Disposition disposition(ResultSet row) throws SQLException {
    long alarmId = row.getLong("alarm_id");
    boolean hasAlarm = !row.wasNull();
    return new Disposition(
        new RollKey(row.getString("line"), row.getString("structure"), row.getString("roll")),
        RollState.fromWord(row.getString("state")),
        new Revision(
            row.getInt("version"),
            row.getString("author"),
            row.getString("reason"),
            Times.toInstant(row.getLong("decided_at"))),
        hasAlarm ? OptionalLong.of(alarmId) : OptionalLong.empty());
  }
}
