package dev.filmward.store;

import java.sql.SQLException;
import java.time.Duration;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Patience with a database that went away: the pauses between attempts double, from {@value
 * #FIRST_PAUSE_MS} to {@value #LONGEST_PAUSE_MS} ms, until the time is up. For one thread, for one
 * piece of work.
 */
final class Attempts {
  private static final Logger LOG = LoggerFactory.getLogger(Attempts.class);
  private static final long FIRST_PAUSE_MS = 100;
  private static final long LONGEST_PAUSE_MS = 5000;

  private final String database;
  private final long endNanos;
  private final Duration patience;
  private long pauseMs = FIRST_PAUSE_MS;

  Attempts(String database, Duration patience) {
    this.database = database;
    this.patience = patience;
    this.endNanos = System.nanoTime() + patience.toNanos();
  }

  /** Whether the connection is gone, or none is to be had, and another attempt may go well. */
  static boolean isLost(Throwable failure) {
    for (Throwable e = failure; e != null; e = e.getCause()) {
      if (e instanceof SQLException sql && isLost(sql.getSQLState())) {
        return true;
      }
    }
    return false;
  }

  /**
   * Class 08 of SQL:2016, connection exception; class 57 of PostgreSQL, the server stops or starts.
   */
  private static boolean isLost(@Nullable String state) {
    return state != null && (state.startsWith("08") || state.startsWith("57P0"));
  }

  /** What went wrong at the bottom of it, in a line. */
  static String reason(Throwable failure) {
    Throwable deepest = failure;
    while (deepest.getCause() != null) {
      deepest = deepest.getCause();
    }
    return String.valueOf(deepest.getMessage()).lines().findFirst().orElse("");
  }

  /**
   * Waits before the next attempt.
   *
   * @throws StoreException if the time is up
   */
  void pause(Throwable failure) {
    if (System.nanoTime() - endNanos >= 0) {
      throw new StoreException(
          "The database at "
              + database
              + " has not answered for "
              + patience.toSeconds()
              + " s. What was confirmed is safe there; see that it runs, then try again.",
          failure);
    }
    if (pauseMs == FIRST_PAUSE_MS) {
      LOG.warn("The database at {} went away; trying again: {}", database, reason(failure));
    }
    try {
      Thread.sleep(pauseMs);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new StoreException("Stopped while waiting for the database at " + database, failure);
    }
    pauseMs = Math.min(LONGEST_PAUSE_MS, 2 * pauseMs);
  }

  /** Says that it went well again, where it had not. */
  void done() {
    if (pauseMs > FIRST_PAUSE_MS) {
      LOG.info("The database at {} answers again", database);
    }
  }
}
