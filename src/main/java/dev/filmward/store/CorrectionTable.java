package dev.filmward.store;

import dev.filmward.film.SampleKey;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/** Readings that took the place of others, with who, when and why; only ever added. */
public final class CorrectionTable {
  private final Handle handle;

  CorrectionTable(Handle handle) {
    this.handle = handle;
  }

  /** What a file corrected, newest first. */
  public List<CorrectedReading> ofFile(long fileId, int most) {
    return list(
        handle
            .createQuery(
                "SELECT * FROM correction_history WHERE file_id = :file ORDER BY id DESC LIMIT :n")
            .bind("file", fileId),
        most);
  }

  /** What was corrected in a sample, newest first. */
  public List<CorrectedReading> ofSample(SampleKey key, int most) {
    return list(
        handle
            .createQuery(
                "SELECT * FROM correction_history WHERE line = :line AND structure = :structure"
                    + " AND roll = :roll AND sample = :sample ORDER BY id DESC LIMIT :n")
            .bind("line", key.line())
            .bind("structure", key.structure())
            .bind("roll", key.roll())
            .bind("sample", key.sample()),
        most);
  }

  /** What was corrected of all that a line made of a structure, newest first. */
  public List<CorrectedReading> ofProduction(String line, String structure, int most) {
    return list(
        handle
            .createQuery(
                "SELECT * FROM correction_history WHERE line = :line AND structure = :structure"
                    + " ORDER BY id DESC LIMIT :n")
            .bind("line", line)
            .bind("structure", structure),
        most);
  }

  private static List<CorrectedReading> list(Query query, int most) {
    return query.bind("n", most).map((row, context) -> corrected(row)).list();
  }

  private static CorrectedReading corrected(ResultSet row) throws SQLException {
    return new CorrectedReading(
        new SampleKey(
            row.getString("line"),
            row.getString("structure"),
            row.getString("roll"),
            row.getString("sample")),
        new CorrectedReading.Place(row.getInt("layer"), row.getInt("lane")),
        row.getDouble("old_um"),
        row.getDouble("new_um"),
        new FileEntry.Sender(row.getString("by_whom"), row.getString("why")),
        Times.toInstant(row.getLong("corrected_at")),
        new CorrectedReading.ByFile(row.getLong("file_id"), row.getString("file")));
  }
}
