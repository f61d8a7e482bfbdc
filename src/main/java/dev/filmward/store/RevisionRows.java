package dev.filmward.store;

import dev.filmward.diagnosis.Revision;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Versions of one thing in a table of their own, which are added and never changed. */
final class RevisionRows {
  private final Handle handle;
  private final String table;

  /**
   * @param table never a text from outside
   */
  RevisionRows(Handle handle, String table) {
    this.handle = handle;
    this.table = table;
  }

  void add(Revision revision) {
    handle
        .createUpdate(
            "INSERT INTO "
                + table
                + " (version, author, reason, decided_at) VALUES (:version, :author, :reason, :at)")
        .bind("version", revision.version())
        .bind("author", Nul.shown(revision.author()))
        .bind("reason", Nul.shown(revision.reason()))
        .bind("at", Times.toMicros(revision.at()))
        .execute();
  }

  Optional<Revision> newest() {
    return all().stream().findFirst();
  }

  /** Newest first. */
  List<Revision> all() {
    return handle
        .createQuery("SELECT * FROM " + table + " ORDER BY version DESC")
        .map(
            (row, context) ->
                new Revision(
                    row.getInt("version"),
                    row.getString("author"),
                    row.getString("reason"),
                    Times.toInstant(row.getLong("decided_at"))))
        .list();
  }
}
