package dev.filmward.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Optional;
import java.util.Properties;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Looks at a database without changing it, also while a Filmward holds it: all that it shows is of
 * one moment. For one thread.
 */
public final class StoreLook implements AutoCloseable {
  private static final String ROWS_AT_ONCE = "2000";

  private final Database database;

  private StoreLook(Database database) {
    this.database = database;
  }

  /**
   * Looks at the database of a data folder, or at one that has an address of its own.
   *
   * @throws StoreException if there is no database, or it cannot be read
   */
  public static StoreLook at(Path dataFolder, Optional<String> url) {
    return url.map(StoreLook::ofServer)
        .orElseGet(() -> ofFile(dataFolder.resolve(SqliteDatabase.FILE_NAME)));
  }

  /**
   * Looks at a database file, for example a backup.
   *
   * @throws StoreException if there is no such file, or it cannot be read
   */
  public static StoreLook ofFile(Path file) {
    if (!Files.isRegularFile(file)) {
      throw new StoreException("There is no database " + file + ". Name its folder with --data.");
    }
    return looking(sqlite(file));
  }

  private static StoreLook ofServer(String url) {
    return looking(postgres(url));
  }

  private static StoreLook looking(Connection connection) {
    Handle handle = Jdbi.create(connection).open().begin();
    return new StoreLook(new LookedAt(handle));
  }

  /** A connection that reads an SQLite file and never writes to it. */
  static Connection sqlite(Path file) {
    return connect(
        "jdbc:sqlite:" + file.toAbsolutePath() + "?open_mode=1&busy_timeout=5000",
        new Properties());
  }

  /** A connection to a server of which all reads are of one moment. */
  static Connection postgres(String url) {
    Properties properties = new Properties();
    properties.setProperty("defaultRowFetchSize", ROWS_AT_ONCE);
    Connection connection = connect(url, properties);
    try {
      connection.setReadOnly(true);
      connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
      return connection;
    } catch (SQLException e) {
      throw new StoreException("The database cannot be read: " + e.getMessage(), e);
    }
  }

  private static Connection connect(String url, Properties properties) {
    try {
      return DriverManager.getConnection(url, properties);
    } catch (SQLException e) {
      throw new StoreException("The database cannot be opened: " + e.getMessage(), e);
    }
  }

  /**
   * Runs some queries; all of them see the moment of the first one.
   *
   * @throws StoreException if the database cannot be read
   */
  public <T> T read(Function<Tables, T> work) {
    try {
      return database.read(handle -> work.apply(new Tables(handle, database)));
    } catch (RuntimeException e) {
      throw StoreFaults.translated(e);
    }
  }

  @Override
  public void close() {
    database.close();
  }
}
