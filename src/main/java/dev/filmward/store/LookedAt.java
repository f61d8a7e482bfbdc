package dev.filmward.store;

import java.util.function.Function;
import org.jdbi.v3.core.Handle;

/** A database through one connection that only reads. */
final class LookedAt implements Database {
  private final Handle handle;

  LookedAt(Handle handle) {
    this.handle = handle;
  }

  @Override
  public <T> T read(Function<Handle, T> work) {
    return work.apply(handle);
  }

  @Override
  public <T> T write(Function<Handle, T> work) {
    throw new IllegalStateException("a look changes nothing");
  }

  @Override
  public RowInsert insert(Handle written, String table, String... columns) {
    throw new IllegalStateException("a look changes nothing");
  }

  @Override
  public void close() {
    handle.rollback();
    handle.close();
  }
}
