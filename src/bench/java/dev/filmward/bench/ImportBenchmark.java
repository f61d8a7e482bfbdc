package dev.filmward.bench;

import dev.filmward.pipeline.Plant;
import dev.filmward.store.FileEntry;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.Statement;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.postgresql.PGConnection;

/**
 * Seconds to read a file of four million readings (seven layers, five lanes) into an empty database
 * until all is durable, beside a yardstick without any checks, figures or tests: the same rows, a
 * reading each, into one table without an index, by batches of plain JDBC (SQLite, full
 * synchronisation, 100 000 rows a transaction) or by one COPY of the file (PostgreSQL).
 *
 * <p>{@code mvn -Pbench test-compile exec:exec@bench -Dbench=ImportBenchmark}
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 1)
@Measurement(iterations = 4)
@Fork(1)
public class ImportBenchmark {
  private static final long READINGS = 4_000_000;
  private static final int ROWS_PER_TRANSACTION = 100_000;

  private static final String TABLE =
      "CREATE TABLE plain (taken_at TEXT, line TEXT, structure TEXT, roll TEXT, sample TEXT,"
          + " lane INTEGER, layer INTEGER, thickness_um DOUBLE PRECISION)";

  @Param({"SQLITE", "POSTGRESQL"})
  private DatabaseKind kind;

  private BenchPlant plants;
  private Path file;

  @Setup
  public void open() throws IOException {
    plants = BenchPlant.of(kind);
    file = plants.file(READINGS);
  }

  @TearDown
  public void close() throws IOException {
    plants.close();
  }

  @Benchmark
  public FileEntry importFile() throws Exception {
    try (Plant plant = plants.fresh()) {
      FileEntry entry = BenchPlant.read(plant, file);
      if (entry.counts().arrivals().fresh() != READINGS) {
        throw new IllegalStateException("read " + entry);
      }
      return entry;
    }
  }

  @Benchmark
  public long plainRows() throws Exception {
    try (Connection connection = plants.plain();
        Statement statement = connection.createStatement();
        BufferedReader lines = Files.newBufferedReader(file)) {
      statement.execute(TABLE);
      return kind == DatabaseKind.SQLITE ? batches(connection, lines) : copy(connection, lines);
    }
  }

  private static long copy(Connection connection, Reader lines) throws Exception {
    return connection
        .unwrap(PGConnection.class)
        .getCopyAPI()
        .copyIn("COPY plain FROM STDIN WITH (FORMAT csv, HEADER)", lines, 1 << 16);
  }

  private static long batches(Connection connection, BufferedReader lines) throws Exception {
    connection.setAutoCommit(false);
    long rows = 0;
    try (PreparedStatement insert =
        connection.prepareStatement("INSERT INTO plain VALUES (?, ?, ?, ?, ?, ?, ?, ?)")) {
      lines.readLine();
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        String[] cells = line.split(",");
        for (int i = 0; i < 5; i++) {
          insert.setString(i + 1, cells[i]);
        }
        insert.setInt(6, Integer.parseInt(cells[5]));
        insert.setInt(7, Integer.parseInt(cells[6]));
        insert.setDouble(8, Double.parseDouble(cells[7]));
        insert.addBatch();
        if (++rows % ROWS_PER_TRANSACTION == 0) {
          insert.executeBatch();
          connection.commit();
        }
      }
      insert.executeBatch();
    }
    connection.commit();
    return rows;
  }
}
