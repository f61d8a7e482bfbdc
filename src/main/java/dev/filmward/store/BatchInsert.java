package dev.filmward.store;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.Collections;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** Inserts rows by one statement that is prepared once. */
final class BatchInsert implements RowInsert {
  private static final int ROWS_IN_BATCH = 500;

  private final PreparedStatement statement;
  private int column;
  private int rows;

  /** What becomes of a row that is there already. */
  enum Twice {
    FAILS,
    PASSED_OVER
  }

  BatchInsert(Handle handle, String table, List<String> columns, Twice twice) {
    StatementWatch.wrote(handle, table);
    String sql =
        "INSERT INTO "
            + table
            + " ("
            + String.join(", ", columns)
            + ") VALUES ("
            + String.join(", ", Collections.nCopies(columns.size(), "?"))
            + (twice == Twice.FAILS ? ")" : ") ON CONFLICT DO NOTHING");
    try {
      statement = handle.getConnection().prepareStatement(sql);
    } catch (SQLException e) {
      throw failed(e);
    }
  }

  @Override
  public RowInsert number(long value) {
    try {
      statement.setLong(++column, value);
    } catch (SQLException e) {
      throw failed(e);
    }
    return this;
  }

  @Override
  public RowInsert text(String value) {
    try {
      statement.setString(++column, value);
    } catch (SQLException e) {
      throw failed(e);
    }
    return this;
  }

  @Override
  public RowInsert bytes(byte[] value) {
    try {
      statement.setBytes(++column, value);
    } catch (SQLException e) {
      throw failed(e);
    }
    return this;
  }

  @Override
  public void endRow() {
    column = 0;
    try {
      statement.addBatch();
      if (++rows % ROWS_IN_BATCH == 0) {
        statement.executeBatch();
      }
    } catch (SQLException e) {
      throw failed(e);
    }
  }

  @Override
  public void close() {
    try (statement) {
      statement.executeBatch();
    } catch (SQLException e) {
      throw failed(e);
    }
  }

  private static StoreException failed(SQLException e) {
    return StoreFaults.of("Rows could not be written", e);
  }
}
