package dev.filmward.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;

/** Structures files as they were given, oldest first; rows are added and never changed. */
public final class StructureTable {
  private final Handle handle;

  StructureTable(Handle handle) {
    this.handle = handle;
  }

  /** A structures file, word for word. */
  public record StoredFile(String name, String yaml) {}

  /**
   * How a file was given.
   *
   * @param holdsFrom where it does not hold from the moment it was received
   * @param takesBack the file whose version of a structure it undoes
   */
  public record Given(
      Instant receivedAt,
      String by,
      String reason,
      Optional<Instant> holdsFrom,
      OptionalLong takesBack) {

    /** From its moment on, without a word about why. */
    public static Given at(Instant receivedAt, String by) {
      return new Given(receivedAt, by, "", Optional.empty(), OptionalLong.empty());
    }
  }

  public record KeptFile(long id, StoredFile file, Given given) {}

  public void add(StoredFile file, Given given) {
    handle
        .createUpdate(
            "INSERT INTO structures_file"
                + " (name, received_at, yaml, given_by, reason, holds_from, takes_back)"
                + " VALUES (:name, :at, :yaml, :by, :reason, :from, :back)")
        .bind("name", file.name())
        .bind("at", Times.toMicros(given.receivedAt()))
        .bind("yaml", file.yaml())
        .bind("by", Nul.shown(given.by()))
        .bind("reason", Nul.shown(given.reason()))
        .bind("from", given.holdsFrom().map(Times::toMicros).orElse(null))
        .bind("back", given.takesBack().isPresent() ? given.takesBack().getAsLong() : null)
        .execute();
  }

  public List<KeptFile> all() {
    return handle
        .createQuery("SELECT * FROM structures_file ORDER BY id")
        .map((row, context) -> kept(row))
        .list();
  }

  private static KeptFile kept(ResultSet row) throws SQLException {
    long holdsFrom = row.getLong("holds_from");
    Optional<Instant> from =
        row.wasNull() ? Optional.empty() : Optional.of(Times.toInstant(holdsFrom));
    long takesBack = row.getLong("takes_back");
    OptionalLong back = row.wasNull() ? OptionalLong.empty() : OptionalLong.of(takesBack);
    Instant at = Times.toInstant(row.getLong("received_at"));
    return new KeptFile(
        row.getLong("id"),
        new StoredFile(row.getString("name"), row.getString("yaml")),
        new Given(at, row.getString("given_by"), row.getString("reason"), from, back));
  }
}
