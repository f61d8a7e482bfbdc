package dev.filmward.store;

import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;
import java.util.function.Function;
import org.flywaydb.core.Flyway;
import org.jdbi.v3.core.Jdbi;

/**
 * The database of one data folder.
 *
 * <p>SQLite with a write-ahead log and full synchronisation: what {@link #write} has returned from
 * survives a crash of the process and of the machine. One process at a time may hold a data folder.
 * Thread-safe: readers run side by side, writers one after another.
 */
public final class Store implements AutoCloseable {
  private final HikariDataSource source;
  private final Database database;
  private final Jdbi jdbi;
  private final FolderLock folderLock;
  private final ReentrantLock writing = new ReentrantLock();

  private Store(HikariDataSource source, Database database, FolderLock folderLock) {
    this.source = source;
    this.database = database;
    this.jdbi = Jdbi.create(source);
    this.folderLock = folderLock;
  }

  /**
   * Opens the database of a folder, making both where they do not exist yet.
   *
   * @throws StoreException if another process holds the folder or it cannot be written
   */
  public static Store open(Path dataFolder) {
    try {
      Files.createDirectories(dataFolder);
    } catch (IOException e) {
      throw new StoreException(
          "The data folder " + dataFolder + " cannot be made: " + e.getMessage(), e);
    }
    FolderLock lock = FolderLock.take(dataFolder);
    try {
      Database database = new SqliteDatabase(dataFolder.resolve(SqliteDatabase.FILE_NAME));
      HikariDataSource source = database.connect();
      migrate(source, database);
      return new Store(source, database, lock);
    } catch (RuntimeException e) {
      lock.close();
      throw new StoreException(
          "The database in " + dataFolder + " cannot be opened: " + e.getMessage(), e);
    }
  }

  private static void migrate(HikariDataSource source, Database database) {
    Flyway.configure(Store.class.getClassLoader())
        .dataSource(source)
        .locations(database.migrations())
        .load()
        .migrate();
  }

  /**
   * Runs some queries on one connection; each of them sees what was committed before it.
   *
   * @throws StoreException if the database cannot be read
   */
  public <T> T read(Function<Tables, T> work) {
    try {
      return jdbi.withHandle(handle -> work.apply(new Tables(handle, database)));
    } catch (RuntimeException e) {
      throw StoreFaults.translated(e);
    }
  }

  /**
   * Runs one transaction; all of it is kept, or nothing where it throws.
   *
   * @throws StoreException if the database cannot be written, for example on a full disk
   */
  public <T> T write(Function<Tables, T> work) {
    writing.lock();
    try {
      return jdbi.inTransaction(handle -> work.apply(new Tables(handle, database)));
    } catch (RuntimeException e) {
      throw StoreFaults.translated(e);
    } finally {
      writing.unlock();
    }
  }

  /** As {@link #write}, without an answer. */
  public void change(Consumer<Tables> work) {
    write(
        tables -> {
          work.accept(tables);
          return true;
        });
  }

  @Override
  public void close() {
    source.close();
    folderLock.close();
  }
}
