package dev.filmward.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.nio.file.Path;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** SQLite in one file, with a write-ahead log and full synchronisation. */
record SqliteDatabase(Path file) implements Database {
  static final String FILE_NAME = "filmward.db";
  private static final int CONNECTIONS = 6;

  @Override
  public HikariDataSource connect() {
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
  public String migrations() {
    return "classpath:db/sqlite";
  }

  @Override
  public RowInsert insert(Handle handle, String table, String... columns) {
    return new BatchInsert(handle.getConnection(), table, List.of(columns));
  }
}
