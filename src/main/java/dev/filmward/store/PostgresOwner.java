package dev.filmward.store;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * The one connection that writes. It holds an advisory lock of the database and schema, so that one
 * process at a time writes there; the server lets go of it when the connection ends, however it
 * ends. For one thread at a time.
 */
final class PostgresOwner implements AutoCloseable {
  private static final int LOCK = 0x46494c4d;
  private static final int LOCK_ATTEMPTS = 10;
  private static final int LOCK_PAUSE_MS = 100;

  private final String url;
  private final String shown;
  private Optional<Handle> open = Optional.empty();

  PostgresOwner(String url, String shown) {
    this.url = url;
    this.shown = shown;
  }

  /**
   * The connection, made and locked where there is none.
   *
   * @throws StoreException if the server does not answer or another process holds the lock
   */
  Handle handle() {
    if (open.isEmpty()) {
      open = Optional.of(connect());
    }
    return open.get();
  }

  /** Lets go of a connection that is lost. */
  void drop() {
    open.ifPresent(handle -> close(handle.getConnection()));
    open = Optional.empty();
  }

  @Override
  public void close() {
    drop();
  }

  private Handle connect() {
    Connection connection;
    try {
      connection = DriverManager.getConnection(url);
    } catch (SQLException e) {
      throw new StoreException("no connection: " + e.getMessage(), e);
    }
    Jdbi jdbi = Jdbi.create(connection);
    jdbi.registerArgument(new Nul());
    Handle handle = jdbi.open();
    try {
      lock(handle);
      return handle;
    } catch (RuntimeException e) {
      close(connection);
      throw e;
    }
  }

  /** Tries for a while: after a crash the server may take a moment to notice. */
  private void lock(Handle handle) {
    for (int attempt = 1; !tryLock(handle); attempt++) {
      if (attempt == LOCK_ATTEMPTS) {
        throw new StoreException(
            "The database at "
                + shown
                + " is in use by another Filmward. Stop that one, or name another database with"
                + " --db.");
      }
      pause();
    }
  }

  private static boolean tryLock(Handle handle) {
    return handle
        .createQuery("SELECT pg_try_advisory_lock(:lock, hashtext(current_schema()))")
        .bind("lock", LOCK)
        .mapTo(Boolean.class)
        .one();
  }

  private static void pause() {
    try {
      Thread.sleep(LOCK_PAUSE_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new StoreException("Stopped while waiting for the lock of the database", e);
    }
  }

  private static void close(Connection connection) {
    try {
      connection.close();
    } catch (SQLException e) {
      // it was lost already
    }
  }
}
