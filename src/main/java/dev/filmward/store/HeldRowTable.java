package dev.filmward.store;

import dev.filmward.store.HeldRow.Mended;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/** Rows in quarantine: open or mended, and what it takes to read one again. */
public final class HeldRowTable {
  private final Handle handle;

  HeldRowTable(Handle handle) {
    this.handle = handle;
  }

  /** What stands before the rows of a file, and the mapping (YAML) it was read through. */
  public record Head(String text, Optional<String> mapping) {}

  public void keepHead(long fileId, Head head) {
    handle
        .createUpdate("UPDATE file SET heading = :heading, mapping = :mapping WHERE id = :id")
        .bind("heading", head.text())
        .bind("mapping", head.mapping().orElse(null))
        .bind("id", fileId)
        .execute();
  }

  /** Empty where none was kept. */
  public Optional<Head> head(long fileId) {
    return handle
        .createQuery("SELECT heading, mapping FROM file WHERE id = :id AND heading IS NOT NULL")
        .bind("id", fileId)
        .map(
            (row, context) ->
                new Head(row.getString("heading"), Optional.ofNullable(row.getString("mapping"))))
        .findOne();
  }

  /** In the order of the file. */
  public List<HeldRow> of(long fileId, int most) {
    return rows(
        "SELECT * FROM quarantine WHERE file_id = :file ORDER BY id LIMIT :n", fileId, most);
  }

  /** Those that are open, in the order of the file. */
  public List<HeldRow> open(long fileId, int most) {
    return rows(
        "SELECT * FROM quarantine WHERE file_id = :file AND mended_at IS NULL"
            + " ORDER BY id LIMIT :n",
        fileId,
        most);
  }

  public Optional<HeldRow> find(long fileId, long id) {
    return handle
        .createQuery("SELECT * FROM quarantine WHERE file_id = :file AND id = :id")
        .bind("file", fileId)
        .bind("id", id)
        .map((row, context) -> heldRow(row))
        .findOne();
  }

  /** Marks all that is open on some lines of a file as mended. */
  public void mend(long fileId, List<Mended> mended, List<Long> lines) {
    PreparedBatch batch =
        handle.prepareBatch(
            "UPDATE quarantine SET mended_text = :text, mended_by = :by, mended_at = :at,"
                + " mended_file_id = :as WHERE file_id = :file AND line_number = :line"
                + " AND mended_at IS NULL");
    for (int i = 0; i < lines.size(); i++) {
      Mended one = mended.get(i);
      batch
          .bind("text", one.text())
          .bind("by", one.by())
          .bind("at", Times.toMicros(one.at()))
          .bind("as", one.fileId())
          .bind("file", fileId)
          .bind("line", lines.get(i))
          .add();
    }
    batch.execute();
    handle
        .createUpdate(
            "UPDATE file SET mended = (SELECT coalesce(sum(q.readings), 0) FROM quarantine q"
                + " WHERE q.file_id = file.id AND q.mended_at IS NOT NULL) WHERE id = :id")
        .bind("id", fileId)
        .execute();
  }

  private List<HeldRow> rows(String sql, long fileId, int most) {
    return handle
        .createQuery(sql)
        .bind("file", fileId)
        .bind("n", most)
        .map((row, context) -> heldRow(row))
        .list();
  }

  private static HeldRow heldRow(ResultSet row) throws SQLException {
    return new HeldRow(row.getLong("id"), FileTable.quarantinedRow(row), mended(row));
  }

  private static Optional<Mended> mended(ResultSet row) throws SQLException {
    String by = row.getString("mended_by");
    return by == null
        ? Optional.empty()
        : Optional.of(
            new Mended(
                row.getString("mended_text"),
                by,
                Times.toInstant(row.getLong("mended_at")),
                row.getLong("mended_file_id")));
  }
}
