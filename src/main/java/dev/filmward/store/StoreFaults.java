package dev.filmward.store;

import java.sql.SQLException;
import java.util.Optional;
import org.jdbi.v3.core.ConnectionException;
import org.jdbi.v3.core.JdbiException;

/**
 * Tells what the world did to the database (a full disk, a server that went away) from faults of
 * this program, and says the former in words with what to do. What was confirmed before stays.
 *
 * <p>Numbers after <a href="https://www.sqlite.org/rescode.html">SQLite's result codes</a>, states
 * after PostgreSQL's appendix on error codes.
 */
final class StoreFaults {
  private static final String KEPT = " Everything that was confirmed before is kept.";

  private StoreFaults() {}

  /** The exception to throw in place of another one; the same one where it is a fault of ours. */
  static RuntimeException translated(RuntimeException e) {
    if (!(e instanceof JdbiException)) {
      return e;
    }
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLException sql) {
        Optional<String> words = words(sql);
        if (words.isPresent()) {
          return new StoreException(words.get(), e);
        }
      }
    }
    return e instanceof ConnectionException ? noAnswer(e) : e;
  }

  /** What the world did, in words with what to do; else what failed and what the database says. */
  static StoreException of(String failed, SQLException e) {
    return new StoreException(words(e).orElse(failed + ": " + oneLine(e)), e);
  }

  private static StoreException noAnswer(RuntimeException e) {
    return new StoreException(
        "The database does not answer ("
            + Attempts.reason(e)
            + "). Start it, then do it again."
            + KEPT,
        e);
  }

  private static Optional<String> words(SQLException e) {
    String state = e.getSQLState() == null ? "" : e.getSQLState();
    if (state.equals("53100") || e.getErrorCode() == 13 || e.getErrorCode() == 10) {
      return Optional.of(
          "The database cannot be written, most likely because the disk is full ("
              + oneLine(e)
              + "). Free some room, then do it again."
              + KEPT);
    }
    if (state.startsWith("08") || state.startsWith("57P")) {
      return Optional.of(
          "The database does not answer (" + oneLine(e) + "). Start it, then do it again." + KEPT);
    }
    return switch (e.getErrorCode()) {
      case 5, 6 ->
          Optional.of("Another program holds the database. Close it, then do it again." + KEPT);
      case 8, 14 ->
          Optional.of(
              "The database may not be written (" + oneLine(e) + "). Look at its folder's rights.");
      case 11, 26 ->
          Optional.of(
              "The database is damaged ("
                  + oneLine(e)
                  + "). Stop Filmward, keep a copy of the data folder, and restore a backup.");
      default -> Optional.empty();
    };
  }

  private static String oneLine(SQLException e) {
    return String.valueOf(e.getMessage()).lines().findFirst().orElse("no reason given");
  }
}
