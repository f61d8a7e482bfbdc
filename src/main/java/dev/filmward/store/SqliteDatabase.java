package dev.filmward.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import dev.filmward.store.BatchInsert.Twice;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * SQLite in a folder that this process holds, with a write-ahead log and full synchronisation: what
 * is committed survives a crash of the process and of the machine.
 */
final class SqliteDatabase implements Database {
  static final String FILE_NAME = "filmward.db";
  private static final int CONNECTIONS = 6;

  private final HikariDataSource source;
  private final Jdbi jdbi;
  private final FolderLock folderLock;

  private SqliteDatabase(HikariDataSource source, FolderLock folderLock) {
    this.source = source;
    this.jdbi = Jdbi.create(source);
    this.folderLock = folderLock;
  }

  static SqliteDatabase open(Path dataFolder) {
    try {
      Files.createDirectories(dataFolder);
    } catch (IOException e) {
      throw new StoreException(
          "The data folder " + dataFolder + " cannot be made: " + e.getMessage(), e);
    }
    FolderLock lock = FolderLock.take(dataFolder);
    try {
      HikariDataSource source = connect(dataFolder.resolve(FILE_NAME));
      Migrations.run(source, "sqlite");
      return new SqliteDatabase(source, lock);
    } catch (RuntimeException e) {
      lock.close();
      throw new StoreException(
          "The database in " + dataFolder + " cannot be opened: " + e.getMessage(), e);
    }
  }

  private static HikariDataSource connect(Path file) {
    HikariConfig config = new HikariConfig();
    config.setJdbcUrl(
        "jdbc:sqlite:"
            + file.toAbsolutePath()
            + "?journal_mode=WAL&synchronous=FULL&busy_timeout=5000&foreign_keys=true"
            + "&transaction_mode=IMMEDIATE");
    config.setMaximumPoolSize(CONNECTIONS);
    config.setMinimumIdle(1);
    config.setPoolName("filmward-store");
    return new HikariDataSource(config);
  }

  @Override
  public <T> T read(Function<Handle, T> work) {
    return jdbi.withHandle(work::apply);
  }

  @Override
  public <T> T write(Function<Handle, T> work) {
    return jdbi.inTransaction(work::apply);
  }

  @Override
  public RowInsert insert(Handle handle, String table, String... columns) {
    return new BatchInsert(handle, table, List.of(columns), Twice.FAILS);
  }

  @Override
  public void close() {
    source.close();
    folderLock.close();
  }
}
