package dev.filmward.store;

import com.zaxxer.hikari.HikariDataSource;
import org.jdbi.v3.core.Handle;

/** What differs from one kind of database to another. Thread-safe. */
interface Database {
  /** Opens connections. */
  HikariDataSource connect();

  /** Where the migrations are. */
  String migrations();

  /** Takes rows for a table; within the handle's transaction. */
  RowInsert insert(Handle handle, String table, String... columns);

  /** An id that no row of a table has, nor any greater one. */
  default long nextId(Handle handle, String table) {
    return handle
        .createQuery("SELECT coalesce(max(id), 0) + 1 FROM " + table)
        .mapTo(Long.class)
        .one();
  }
}
