package dev.filmward.bench;

import dev.filmward.stats.ChartConstants;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * Yardstick: the figures and signals of a long file of seven layers and five lanes from DuckDB in
 * SQL, with two threads and a fixed schema, so that every field is checked to be of its type.
 * Layers are turned into columns as the rows come in, which took half the time of grouping by
 * layer. All samples must be whole: the constants are of five readings.
 */
final class DuckDbAnalysis {
  private static final int LAYERS = 7;

  private DuckDbAnalysis() {}

  public static void main(String[] args) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:duckdb:");
        Statement statement = connection.createStatement()) {
      statement.execute("SET threads = 2");
      statement.execute("SET preserve_insertion_order = false");
      statement.execute(lanes(args[0]));
      statement.execute(subgroups());
      statement.execute(SERIES);
      statement.execute(points());
      print(statement.executeQuery(SIGNALS));
    }
  }

  private static void print(ResultSet rows) throws SQLException {
    while (rows.next()) {
      StringBuilder line = new StringBuilder(rows.getString(1));
      for (int i = 2; i <= rows.getMetaData().getColumnCount(); i++) {
        line.append(' ').append(rows.getDouble(i));
      }
      System.out.println(line);
    }
  }

  private static String lanes(String file) {
    StringBuilder layers = new StringBuilder();
    for (int layer = 1; layer <= LAYERS; layer++) {
      layers.append(", max(thickness_um) FILTER (layer = %d) AS a%d".formatted(layer, layer));
    }
    return """
        CREATE TEMP TABLE lanes AS
        SELECT line, structure, roll, sample, lane, min(taken_at) AS t %s
        FROM read_csv('%s', header = true, auto_detect = false, delim = ',', quote = '"',
          escape = '"', columns = {'taken_at': 'TIMESTAMP', 'line': 'VARCHAR',
          'structure': 'VARCHAR', 'roll': 'VARCHAR', 'sample': 'VARCHAR', 'lane': 'INTEGER',
          'layer': 'UTINYINT', 'thickness_um': 'DOUBLE'})
        GROUP BY line, structure, roll, sample, lane
        """
        .formatted(layers, file);
  }

  private static String subgroups() {
    StringBuilder parts = new StringBuilder();
    StringBuilder total = new StringBuilder();
    for (int layer = 1; layer <= LAYERS; layer++) {
      parts.append(part(layer, "a" + layer)).append(", ");
      total.append(layer == 1 ? "a" : " + a").append(layer);
    }
    return """
        CREATE TEMP TABLE subgroups AS
        SELECT line, structure, roll, sample, min(t) AS t, unnest([%s], recursive := true)
        FROM lanes GROUP BY line, structure, roll, sample
        """
        .formatted(parts + part(0, total.toString()));
  }

  private static String part(int position, String value) {
    return "{'c': %d, 'n': count(%s), 'm': avg(%s), 'r': max(%s) - min(%s), 'v': var_pop(%s) * count(%s)}"
        .formatted(position, value, value, value, value, value, value);
  }

  private static final String SERIES =
      """
      CREATE TEMP TABLE series AS
      SELECT line, structure, c, count(*) AS k, sum(n) AS readings, sum(n * m) / sum(n) AS centre,
        avg(r) AS r_bar, count(*) AS subgroups
      FROM subgroups WHERE n > 0 GROUP BY line, structure, c
      """;

  private static String points() {
    String d2 = ChartConstants.d2(5) + "e0";
    String d3 = ChartConstants.d3(5) + "e0";
    return """
        CREATE TEMP TABLE points AS
        SELECT s.*, centre, r_bar, r_bar / %s AS sigma, (m - centre) * sqrt(n) / (r_bar / %s) AS z,
          (r / (r_bar / %s) - %s) / %s AS y
        FROM subgroups s JOIN series USING (line, structure, c) WHERE n > 0
        """
        .formatted(d2, d2, d2, d2, d3);
  }

  private static final String SIGNALS =
      """
      SELECT c, count(*), sum(n), any_value(centre),
        sqrt((sum(v) + sum(n * (m - centre) * (m - centre))) / (sum(n) - 1)),
        any_value(r_bar), any_value(sigma),
        count(*) FILTER (abs(z) > 3),
        count(*) FILTER ((z > 2 AND high2 >= 2) OR (z < -2 AND low2 >= 2)),
        count(*) FILTER ((z > 1 AND high1 >= 4) OR (z < -1 AND low1 >= 4)),
        count(*) FILTER (high0 = 8 OR low0 = 8),
        count(*) FILTER (abs(y) > 3)
      FROM (
        SELECT *, sum((z > 2)::INT) OVER w3 AS high2, sum((z < -2)::INT) OVER w3 AS low2,
          sum((z > 1)::INT) OVER w5 AS high1, sum((z < -1)::INT) OVER w5 AS low1,
          sum((z > 0)::INT) OVER w8 AS high0, sum((z < 0)::INT) OVER w8 AS low0
        FROM points
        WINDOW w3 AS (PARTITION BY line, structure, c ORDER BY t, roll, sample ROWS 2 PRECEDING),
          w5 AS (PARTITION BY line, structure, c ORDER BY t, roll, sample ROWS 4 PRECEDING),
          w8 AS (PARTITION BY line, structure, c ORDER BY t, roll, sample ROWS 7 PRECEDING))
      GROUP BY line, structure, c ORDER BY c
      """;
}
