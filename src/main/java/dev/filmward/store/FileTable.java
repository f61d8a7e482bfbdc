package dev.filmward.store;

import dev.filmward.store.FileEntry.Arrivals;
import dev.filmward.store.FileEntry.Counts;
import dev.filmward.store.FileEntry.Sender;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/** Files of readings that came, and the rows of them that could not be used. */
public final class FileTable {
  private final Handle handle;

  FileTable(Handle handle) {
    this.handle = handle;
  }

  /** Notes that a file is being read that nobody in particular sent. */
  public long begin(String name, String source, Instant receivedAt) {
    return begin(name, source, Sender.NOT_NAMED, receivedAt);
  }

  /** Notes that a file is being read. */
  public long begin(String name, String source, Sender sender, Instant receivedAt) {
    return handle
        .createUpdate(
            "INSERT INTO file (name, source, by_whom, why, received_at)"
                + " VALUES (:name, :source, :by, :why, :receivedAt)")
        .bind("by", sender.by())
        .bind("why", sender.why())
        .bind("name", name)
        .bind("source", source)
        .bind("receivedAt", Times.toMicros(receivedAt))
        .executeAndReturnGeneratedKeys("id")
        .mapTo(Long.class)
        .one();
  }

  public void finish(FileEntry entry, Instant at) {
    Counts counts = entry.counts();
    handle
        .createUpdate(
            "UPDATE file SET finished_at = :at, row_count = :rows, readings = :readings,"
                + " missing = :missing, quarantined = :quarantined, fresh = :fresh, known = :known,"
                + " corrected = :corrected, notes = :notes, refusal = :refusal WHERE id = :id")
        .bind("id", entry.id())
        .bind("at", Times.toMicros(at))
        .bind("rows", counts.rows())
        .bind("readings", counts.readings())
        .bind("missing", counts.missing())
        .bind("quarantined", counts.quarantined())
        .bind("fresh", counts.arrivals().fresh())
        .bind("known", counts.arrivals().known())
        .bind("corrected", counts.arrivals().corrected())
        .bind("notes", entry.notes())
        .bind("refusal", entry.refusal().orElse(null))
        .execute();
  }

  public void quarantine(long fileId, List<QuarantinedRow> rows) {
    if (rows.isEmpty()) {
      return;
    }
    PreparedBatch batch =
        handle.prepareBatch(
            "INSERT INTO quarantine"
                + " (file_id, line_number, column_name, cell, reason, raw, readings)"
                + " VALUES (:fileId, :line, :column, :value, :reason, :raw, :readings)");
    for (QuarantinedRow row : rows) {
      batch
          .bind("fileId", fileId)
          .bind("line", row.line())
          .bind("column", row.column())
          .bind("value", row.value())
          .bind("reason", row.reason())
          .bind("raw", row.raw())
          .bind("readings", row.readings())
          .add();
    }
    batch.execute();
  }

  /** Newest first. */
  public List<FileEntry> newest(int most) {
    return handle
        .createQuery("SELECT * FROM file WHERE finished_at IS NOT NULL ORDER BY id DESC LIMIT :n")
        .bind("n", most)
        .map((row, context) -> entry(row))
        .list();
  }

  public Optional<FileEntry> find(long id) {
    return handle
        .createQuery("SELECT * FROM file WHERE id = :id")
        .bind("id", id)
        .map((row, context) -> entry(row))
        .findOne();
  }

  /** Rows of a file in quarantine, in the order of the file. */
  public List<QuarantinedRow> quarantined(long fileId, int most) {
    return handle
        .createQuery("SELECT * FROM quarantine WHERE file_id = :id ORDER BY id LIMIT :n")
        .bind("id", fileId)
        .bind("n", most)
        .map((row, context) -> quarantinedRow(row))
        .list();
  }

  public long quarantinedRows(long fileId) {
    return handle
        .createQuery("SELECT count(*) FROM quarantine WHERE file_id = :id")
        .bind("id", fileId)
        .mapTo(Long.class)
        .one();
  }

  static QuarantinedRow quarantinedRow(ResultSet row) throws SQLException {
    return new QuarantinedRow(
        row.getLong("line_number"),
        row.getString("column_name"),
        row.getString("cell"),
        row.getString("reason"),
        row.getString("raw"),
        row.getInt("readings"));
  }

  static FileEntry entry(ResultSet row) throws SQLException {
    Counts counts =
        new Counts(
            row.getLong("row_count"),
            row.getLong("readings"),
            row.getLong("missing"),
            row.getLong("quarantined"),
            new Arrivals(row.getLong("fresh"), row.getLong("known"), row.getLong("corrected")));
    return new FileEntry(
        row.getLong("id"),
        row.getString("name"),
        row.getString("source"),
        new Sender(row.getString("by_whom"), row.getString("why")),
        Times.toInstant(row.getLong("received_at")),
        counts,
        row.getString("notes"),
        Optional.ofNullable(row.getString("refusal")),
        row.getLong("mended"));
  }
}
