package dev.filmward.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.Optional;
import org.postgresql.ds.PGSimpleDataSource;
import org.sqlite.SQLiteDataSource;

/**
 * Copies a database into one file, also while a Filmward writes to it, and back. The copy is of one
 * moment, and is an SQLite database itself, whatever kind it came from; so a plant can move from
 * one kind to the other by way of it. It is on the disk when {@link #write} returns.
 *
 * <p>From SQLite by {@code VACUUM INTO}, see <a href="https://www.sqlite.org/lang_vacuum.html">its
 * documentation</a>; from and to PostgreSQL table by table.
 */
public final class Backup {
  private Backup() {}

  /**
   * Writes a copy of a data folder's database, or of one that has an address of its own; nothing of
   * the target's name is left where it fails.
   *
   * @throws FileAlreadyExistsException if the target exists; a backup is never overwritten
   * @throws StoreException if there is no database, or the copy cannot be written
   */
  public static void write(Path dataFolder, Optional<String> url, Path target) throws IOException {
    if (Files.exists(target)) {
      throw new FileAlreadyExistsException(target.toString());
    }
    Path part = target.resolveSibling(target.getFileName() + ".part");
    Files.deleteIfExists(part);
    try {
      if (url.isPresent()) {
        copyFromServer(url.get(), part);
      } else {
        vacuumInto(existing(dataFolder.resolve(SqliteDatabase.FILE_NAME)), part);
      }
      force(part);
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
    } catch (SQLException e) {
      throw new StoreException(
          "The backup cannot be written to " + target + ": " + e.getMessage(), e);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  /**
   * Puts a copy into a data folder that has no database yet, or into an empty database that has an
   * address of its own.
   *
   * @throws StoreException if there is something already, or there is no copy
   */
  public static void restore(Path copy, Path dataFolder, Optional<String> url) throws IOException {
    existing(copy);
    if (url.isPresent()) {
      copyToServer(copy, url.get());
    } else {
      copyToFolder(copy, dataFolder);
    }
  }

  private static void copyToFolder(Path copy, Path dataFolder) throws IOException {
    Path database = dataFolder.resolve(SqliteDatabase.FILE_NAME);
    if (Files.exists(database)) {
      throw new StoreException(
          dataFolder
              + " has a database already. Name an empty folder with --data, or move it away.");
    }
    Files.createDirectories(dataFolder);
    FolderLock lock = FolderLock.take(dataFolder);
    try {
      Path part = dataFolder.resolve(SqliteDatabase.FILE_NAME + ".part");
      Files.copy(copy, part, StandardCopyOption.REPLACE_EXISTING);
      force(part);
      Files.move(part, database, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      lock.close();
    }
  }

  private static void vacuumInto(Path database, Path target) throws SQLException {
    try (Connection connection = StoreLook.sqlite(database);
        PreparedStatement vacuum = connection.prepareStatement("VACUUM INTO ?")) {
      vacuum.setString(1, target.toAbsolutePath().toString());
      vacuum.execute();
    }
  }

  private static void copyFromServer(String url, Path target) throws SQLException {
    SQLiteDataSource file = new SQLiteDataSource();
    file.setUrl("jdbc:sqlite:" + target.toAbsolutePath());
    Migrations.run(file, "sqlite");
    try (Connection from = StoreLook.postgres(url);
        Connection to = file.getConnection()) {
      from.setAutoCommit(false);
      TableCopy.run(from, to);
    }
  }

  private static void copyToServer(Path copy, String url) {
    PGSimpleDataSource server = new PGSimpleDataSource();
    server.setUrl(url);
    Migrations.run(server, "postgresql");
    try (Connection from = StoreLook.sqlite(copy);
        Connection to = DriverManager.getConnection(url)) {
      if (hasRows(to)) {
        throw new StoreException("That database is not empty. Name an empty one with --db.");
      }
      TableCopy.run(from, to);
    } catch (SQLException e) {
      throw new StoreException("The backup cannot be restored: " + e.getMessage(), e);
    }
  }

  private static boolean hasRows(Connection database) throws SQLException {
    for (String table : TableCopy.tables(database)) {
      try (PreparedStatement any =
              database.prepareStatement(
                  "SELECT count(*) FROM (SELECT 1 FROM " + table + " LIMIT 1) found");
          var found = any.executeQuery()) {
        found.next();
        if (found.getLong(1) > 0) {
          return true;
        }
      }
    }
    return false;
  }

  private static Path existing(Path database) {
    if (!Files.isRegularFile(database)) {
      throw new StoreException("There is no database " + database + ".");
    }
    return database;
  }

  private static void force(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }
}
