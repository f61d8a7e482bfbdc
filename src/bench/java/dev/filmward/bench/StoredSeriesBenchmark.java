package dev.filmward.bench;

import dev.filmward.film.Characteristic;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.SeriesReader;
import dev.filmward.pipeline.SeriesReader.Address;
import dev.filmward.pipeline.SeriesView;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What a chart costs with 50 million readings stored (1.4 million samples of seven layers): the
 * last 200 points of a layer, and 10 000 points in the midst of it for a chart of 1600 pixels with
 * their summary and signals; beside the means of the same 10 000 points by plain SQL.
 *
 * <p>{@code mvn -Pbench test-compile exec:exec@bench -Dbench=StoredSeriesBenchmark}; takes minutes
 * to fill the database.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class StoredSeriesBenchmark {
  private static final Instant FIRST = Instant.parse("2026-01-05T06:00:00Z");
  private static final int POINTS = 10_000;
  private static final int POINTS_BEFORE = 700_000;
  private static final int PIXELS = 1600;
  private static final Duration APART = Duration.ofSeconds(10);

  @Param({"SQLITE", "POSTGRESQL"})
  private DatabaseKind kind;

  @Param("50000000")
  private long readings;

  private BenchPlant plants;
  private Plant plant;
  private int layer;

  @Setup(Level.Trial)
  public void fill() throws Exception {
    plants = BenchPlant.of(kind);
    Path file = plants.file(readings);
    plant = plants.fresh();
    BenchPlant.read(plant, file);
    Files.delete(file);
  }

  @TearDown(Level.Trial)
  public void close() throws IOException {
    plant.close();
    plants.close();
  }

  /** Another layer each time, so that no layer is at hand from before. */
  private int nextLayer() {
    layer = layer % 7 + 1;
    return layer;
  }

  private Span middle() {
    long before = Math.min(POINTS_BEFORE, readings / 70);
    Instant from = FIRST.plus(APART.multipliedBy(before));
    return new Span(from, from.plus(APART.multipliedBy(POINTS - 1)));
  }

  @Benchmark
  public List<FigureRow> last200() {
    Series series = new Series("Blown 9", "BENCH-7", nextLayer());
    return plant.store().read(tables -> tables.figures().last(series, 200));
  }

  @Benchmark
  public SeriesView tenThousandForAChart() {
    Address address = new Address("Blown 9", "BENCH-7", Characteristic.Kind.LAYER, nextLayer());
    return new SeriesReader(plant).read(address, middle(), PIXELS);
  }

  /** Yardstick: the means only, from the readings. */
  @Benchmark
  public double tenThousandMeansByPlainSql() throws SQLException {
    double sum = 0;
    try (Connection connection = DriverManager.getConnection(plants.lastUrl());
        PreparedStatement query =
            connection.prepareStatement(
                "SELECT taken_at, avg(thickness_um) FROM reading WHERE line = 'Blown 9'"
                    + " AND structure = 'BENCH-7' AND layer = ? AND taken_at BETWEEN ? AND ?"
                    + " GROUP BY taken_at ORDER BY taken_at")) {
      query.setInt(1, nextLayer());
      query.setLong(2, middle().from().toEpochMilli() * 1000);
      query.setLong(3, middle().to().toEpochMilli() * 1000);
      try (ResultSet found = query.executeQuery()) {
        while (found.next()) {
          sum += found.getDouble(2);
        }
      }
    }
    return sum;
  }
}
