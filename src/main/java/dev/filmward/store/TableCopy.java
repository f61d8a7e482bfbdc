package dev.filmward.store;

import java.sql.Connection;
import java.sql.DatabaseMetaData;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Copies all rows of all tables from one database into another one of the same layout that is
 * empty, whatever kinds they are; tables that others refer to come first. What a database keeps for
 * itself (migrations, tickets) stays behind. In one transaction of the target.
 */
final class TableCopy {
  private static final int ROWS_AT_ONCE = 1_000;
  private static final Set<String> OWN = Set.of("flyway_schema_history", "last_write");

  private final Connection from;
  private final Connection to;

  private TableCopy(Connection from, Connection to) {
    this.from = from;
    this.to = to;
  }

  static void run(Connection from, Connection to) throws SQLException {
    to.setAutoCommit(false);
    TableCopy copy = new TableCopy(from, to);
    for (String table : tables(from)) {
      copy.copy(table);
    }
    to.commit();
  }

  /** All tables that are copied, those that others refer to first. */
  static List<String> tables(Connection database) throws SQLException {
    DatabaseMetaData about = database.getMetaData();
    List<String> all = new ArrayList<>();
    try (ResultSet found =
        about.getTables(database.getCatalog(), database.getSchema(), "%", new String[] {"TABLE"})) {
      while (found.next()) {
        String name = found.getString("TABLE_NAME");
        if (!OWN.contains(name) && !name.startsWith("sqlite_")) {
          all.add(name);
        }
      }
    }
    Collections.sort(all);
    Set<String> ordered = new LinkedHashSet<>();
    for (String table : all) {
      addWithParents(table, database, ordered);
    }
    return List.copyOf(ordered);
  }

  private static void addWithParents(String table, Connection database, Set<String> ordered)
      throws SQLException {
    List<String> parents = new ArrayList<>();
    try (ResultSet keys =
        database
            .getMetaData()
            .getImportedKeys(database.getCatalog(), database.getSchema(), table)) {
      while (keys.next()) {
        parents.add(keys.getString("PKTABLE_NAME"));
      }
    }
    for (String parent : parents) {
      if (!ordered.contains(parent)) {
        addWithParents(parent, database, ordered);
      }
    }
    ordered.add(table);
  }

  private void copy(String table) throws SQLException {
    try (Statement select = from.createStatement();
        ResultSet rows = select.executeQuery("SELECT * FROM " + table)) {
      List<String> columns = columns(rows);
      String places = columns.stream().map(column -> "?").collect(Collectors.joining(", "));
      String sql =
          "INSERT INTO %s (%s) VALUES (%s)".formatted(table, String.join(", ", columns), places);
      try (PreparedStatement insert = to.prepareStatement(sql)) {
        copy(rows, columns.size(), insert);
      }
      if (columns.contains("id")) {
        countOn(table);
      }
    }
  }

  private static List<String> columns(ResultSet rows) throws SQLException {
    List<String> columns = new ArrayList<>();
    for (int i = 1; i <= rows.getMetaData().getColumnCount(); i++) {
      columns.add(rows.getMetaData().getColumnName(i).toLowerCase(Locale.ROOT));
    }
    return columns;
  }

  private void copy(ResultSet rows, int columns, PreparedStatement insert) throws SQLException {
    int waiting = 0;
    while (rows.next()) {
      for (int i = 1; i <= columns; i++) {
        Object value = rows.getObject(i);
        insert.setObject(
            i, isPostgres(to) && value instanceof String text ? Nul.shown(text) : value);
      }
      insert.addBatch();
      if (++waiting == ROWS_AT_ONCE) {
        insert.executeBatch();
        waiting = 0;
      }
    }
    insert.executeBatch();
  }

  /** Has PostgreSQL go on counting after the ids that were given; SQLite does so by itself. */
  private void countOn(String table) throws SQLException {
    if (!isPostgres(to)) {
      return;
    }
    try (Statement statement = to.createStatement()) {
      statement.execute(
          "SELECT setval(pg_get_serial_sequence('%1$s', 'id'), (SELECT max(id) FROM %1$s))"
              .formatted(table));
    }
  }

  private static boolean isPostgres(Connection connection) throws SQLException {
    return connection.getMetaData().getURL().startsWith("jdbc:postgresql:");
  }
}
