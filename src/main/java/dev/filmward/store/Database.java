package dev.filmward.store;

import java.util.function.Function;
import org.jdbi.v3.core.Handle;

/** What differs from one kind of database to another. Thread-safe, but for writing. */
interface Database extends AutoCloseable {
  /** Runs queries on one connection. */
  <T> T read(Function<Handle, T> work);

  /**
   * Runs one transaction; one at a time. Where the connection is lost it may run the work again.
   */
  <T> T write(Function<Handle, T> work);

  /** Takes rows for a table; within the handle's transaction. */
  RowInsert insert(Handle handle, String table, String... columns);

  /** An id that no row of a table has, nor any greater one. */
  default long nextId(Handle handle, String table) {
    return handle
        .createQuery("SELECT coalesce(max(id), 0) + 1 FROM " + table)
        .mapTo(Long.class)
        .one();
  }

  @Override
  void close();
}
