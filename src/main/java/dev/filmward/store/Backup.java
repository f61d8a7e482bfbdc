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

/**
 * Copies a database into one file, also while a Filmward writes to it, and back. The copy is of one
 * moment, and is an SQLite database itself. It is on the disk when {@link #write} returns.
 *
 * <p>By {@code VACUUM INTO}, see <a href="https://www.sqlite.org/lang_vacuum.html">SQLite's
 * documentation</a>.
 */
public final class Backup {
  private Backup() {}

  /**
   * Writes a copy of what a data folder holds; nothing of the target's name is left where it fails.
   *
   * @throws FileAlreadyExistsException if the target exists; a backup is never overwritten
   * @throws StoreException if there is no database, or the copy cannot be written
   */
  public static void write(Path dataFolder, Path target) throws IOException {
    Path database = existing(dataFolder.resolve(SqliteDatabase.FILE_NAME));
    if (Files.exists(target)) {
      throw new FileAlreadyExistsException(target.toString());
    }
    Path part = target.resolveSibling(target.getFileName() + ".part");
    Files.deleteIfExists(part);
    try {
      vacuumInto(database, part);
      force(part);
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
    } catch (SQLException e) {
      throw new StoreException(
          "The backup cannot be written to " + target + ": " + e.getMessage() + ". Free some room.",
          e);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  /**
   * Puts a copy into a data folder that has no database yet.
   *
   * @throws StoreException if the folder has a database, or there is no copy
   */
  public static void restore(Path copy, Path dataFolder) throws IOException {
    existing(copy);
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
    String url = "jdbc:sqlite:" + database.toAbsolutePath() + "?open_mode=1&busy_timeout=5000";
    try (Connection connection = DriverManager.getConnection(url);
        PreparedStatement vacuum = connection.prepareStatement("VACUUM INTO ?")) {
      vacuum.setString(1, target.toAbsolutePath().toString());
      vacuum.execute();
    }
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
