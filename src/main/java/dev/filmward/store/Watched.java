package dev.filmward.store;

import java.util.Set;

/**
 * What was read from the database, and whether reading it again would give the same. Thread-safe.
 */
public final class Watched<T> {
  private final T value;
  private final Changes changes;
  private final Set<String> tables;
  private final long since;

  Watched(T value, Changes changes, Set<String> tables, long since) {
    this.value = value;
    this.changes = changes;
    this.tables = Set.copyOf(tables);
    this.since = since;
  }

  public T value() {
    return value;
  }

  /** False from the moment at which a write to any of the tables that were read has returned. */
  public boolean isCurrent() {
    return changes.isUnchanged(tables, since);
  }
}
