package dev.filmward.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Looks at a database without changing it, also while a Filmward holds it: all that it shows is of
 * one moment. For one thread.
 */
public final class StoreLook implements AutoCloseable {
  private final Handle handle;
  private final Database database;

  private StoreLook(Handle handle, Database database) {
    this.handle = handle;
    this.database = database;
  }

  /**
   * Looks at the database of a data folder.
   *
   * @throws StoreException if there is no database, or it cannot be read
   */
  public static StoreLook at(Path dataFolder) {
    return ofFile(dataFolder.resolve(SqliteDatabase.FILE_NAME));
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
    return new StoreLook(
        Jdbi.create("jdbc:sqlite:" + file.toAbsolutePath() + "?open_mode=1&busy_timeout=5000")
            .open()
            .begin(),
        new SqliteDatabase(file));
  }

  /**
   * Runs some queries; all of them see the moment of the first one.
   *
   * @throws StoreException if the database cannot be read
   */
  public <T> T read(Function<Tables, T> work) {
    try {
      return work.apply(new Tables(handle, database));
    } catch (RuntimeException e) {
      throw StoreFaults.translated(e);
    }
  }

  @Override
  public void close() {
    handle.rollback();
    handle.close();
  }
}
