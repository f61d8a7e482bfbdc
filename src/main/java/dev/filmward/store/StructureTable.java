package dev.filmward.store;

import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** Structures files as they were given, oldest first. */
public final class StructureTable {
  private final Handle handle;

  StructureTable(Handle handle) {
    this.handle = handle;
  }

  /** A structures file, word for word. */
  public record StoredFile(String name, String yaml) {}

  /** Keeps a file, unless it is the newest one already; says whether it was kept. */
  public boolean add(StoredFile file, Instant receivedAt) {
    List<StoredFile> files = all();
    if (!files.isEmpty() && files.get(files.size() - 1).equals(file)) {
      return false;
    }
    handle
        .createUpdate(
            "INSERT INTO structures_file (name, received_at, yaml) VALUES (:name, :at, :yaml)")
        .bind("name", file.name())
        .bind("at", Times.toMicros(receivedAt))
        .bind("yaml", file.yaml())
        .execute();
    return true;
  }

  public List<StoredFile> all() {
    return handle
        .createQuery("SELECT name, yaml FROM structures_file ORDER BY id")
        .map((row, context) -> new StoredFile(row.getString("name"), row.getString("yaml")))
        .list();
  }
}
