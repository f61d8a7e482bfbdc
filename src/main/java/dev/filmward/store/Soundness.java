package dev.filmward.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;

/** What the database itself, and its own counts, tell of faults. Each fault is a sentence. */
public final class Soundness {
  private final Handle handle;

  Soundness(Handle handle) {
    this.handle = handle;
  }

  /** Asks the least there is to ask; comes back where the database answers. */
  public void answers() {
    handle.createQuery("SELECT 1").mapTo(Integer.class).one();
  }

  /**
   * Pages, indexes and references, as SQLite checks them; a PostgreSQL server has its own tools.
   */
  public List<String> ofTheFile() {
    if (!isSqlite()) {
      return List.of();
    }
    Stream<String> pages =
        handle.createQuery("PRAGMA integrity_check").mapTo(String.class).stream()
            .filter(line -> !line.equals("ok"));
    Stream<String> references =
        handle
            .createQuery("PRAGMA foreign_key_check")
            .map(
                (row, context) ->
                    "a row of "
                        + row.getString(1)
                        + " refers to one that is not in "
                        + row.getString(3))
            .stream();
    return Stream.concat(pages, references).toList();
  }

  /** Samples that lost their readings but not by thinning, or say that they did and have them. */
  public List<String> ofTheThinning() {
    if (!hasThinning()) {
      return List.of();
    }
    long odd =
        handle
            .createQuery(
                "SELECT count(*) FROM sample WHERE (um = '[]') <> (thinned_at IS NOT NULL)")
            .mapTo(Long.class)
            .one();
    return odd == 0
        ? List.of()
        : List.of(odd + " samples lost their readings, or say so, but not by thinning");
  }

  /** Copies from before there was any thinning do not have that column. */
  private boolean hasThinning() {
    try (ResultSet found =
        handle.getConnection().getMetaData().getColumns(null, null, "sample", "thinned_at")) {
      return found.next();
    } catch (SQLException e) {
      throw new StoreException("The database cannot be read: " + e.getMessage(), e);
    }
  }

  private boolean isSqlite() {
    try {
      return handle.getConnection().getMetaData().getURL().startsWith("jdbc:sqlite:");
    } catch (SQLException e) {
      throw new StoreException("The database cannot be read: " + e.getMessage(), e);
    }
  }

  /** Files whose counts do not add up. */
  public List<String> ofTheCounts() {
    return handle
        .createQuery(
            "SELECT f.id, f.name FROM file f WHERE f.finished_at IS NOT NULL AND f.refusal IS NULL AND"
                + " (f.fresh + f.known + f.corrected <> f.readings OR f.quarantined <>"
                + " (SELECT coalesce(sum(q.readings), 0) FROM quarantine q WHERE q.file_id = f.id))"
                + " ORDER BY f.id")
        .map(
            (row, context) ->
                "the counts of file "
                    + row.getLong(1)
                    + " ("
                    + row.getString(2)
                    + ") do not add up")
        .list();
  }
}
