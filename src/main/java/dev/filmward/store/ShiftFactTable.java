package dev.filmward.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/** What happened in the time of a shift; its beginning counts, its end does not. */
public final class ShiftFactTable {
  private final Handle handle;
  private final long from;
  private final long to;

  ShiftFactTable(Handle handle, Instant from, Instant to) {
    this.handle = handle;
    this.from = Times.toMicros(from);
    this.to = Times.toMicros(to);
  }

  /** A setting of what a line makes that somebody changed, with the words for it. */
  public record Changed(
      String line,
      String structure,
      int version,
      String state,
      String by,
      String reason,
      Instant at) {}

  /** What was decided about limits. */
  public List<Changed> limits() {
    return query("SELECT * FROM limits_change WHERE decided_at", "ORDER BY decided_at, id")
        .map((row, context) -> changed(row, row.getString("state")))
        .list();
  }

  /** What was decided about tests. */
  public List<Changed> tests() {
    return query(
            "SELECT * FROM tests_version WHERE decided_at",
            "ORDER BY decided_at, line, structure, version")
        .map((row, context) -> changed(row, ""))
        .list();
  }

  /** What people did, by the audit chain, in its order. */
  public List<AuditEntry> audited() {
    return query("SELECT * FROM audit WHERE at", "ORDER BY id")
        .map(
            (row, context) ->
                new AuditEntry(
                    Times.toInstant(row.getLong("at")),
                    row.getString("by_whom"),
                    row.getString("action"),
                    row.getString("subject"),
                    row.getString("detail")))
        .list();
  }

  /** Files that could not be read, or of which rows went into quarantine. */
  public List<FileEntry> troubledFiles() {
    return query(
            "SELECT * FROM file WHERE (refusal IS NOT NULL OR quarantined > 0)"
                + " AND finished_at IS NOT NULL AND received_at",
            "ORDER BY id")
        .map((row, context) -> FileTable.entry(row))
        .list();
  }

  /** Alarms of which somebody said the cause, whether or not they are closed by it. */
  public List<Long> explained() {
    return query("SELECT id FROM alarm WHERE finding_at", "ORDER BY id").mapTo(Long.class).list();
  }

  private Query query(String select, String order) {
    return handle
        .createQuery(select + " >= :from AND " + column(select) + " < :to " + order)
        .bind("from", from)
        .bind("to", to);
  }

  /** The last word of a question is the column of its time. */
  private static String column(String select) {
    return select.substring(select.lastIndexOf(' ') + 1);
  }

  private static Changed changed(ResultSet row, String state) throws SQLException {
    return new Changed(
        row.getString("line"),
        row.getString("structure"),
        row.getInt("version"),
        state,
        row.getString("author"),
        row.getString("reason"),
        Times.toInstant(row.getLong("decided_at")));
  }
}
