package dev.filmward.bench;

import dev.filmward.intake.StructuresFault;
import dev.filmward.pipeline.IncomingFile;
import dev.filmward.pipeline.Plant;
import dev.filmward.simulate.LargeFile;
import dev.filmward.store.FileEntry;
import dev.filmward.store.Store;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;

/** A folder with a file of readings and a plant to read it into, in SQLite or PostgreSQL. */
final class BenchPlant implements AutoCloseable {
  private final Path folder;
  private final Optional<EmbeddedPostgres> server;
  private int plants;

  private BenchPlant(Path folder, Optional<EmbeddedPostgres> server) {
    this.folder = folder;
    this.server = server;
  }

  static BenchPlant of(DatabaseKind kind) throws IOException {
    Path folder = Files.createTempDirectory("filmward-bench");
    return new BenchPlant(
        folder, kind == DatabaseKind.POSTGRESQL ? Optional.of(durableServer()) : Optional.empty());
  }

  /** As a server comes from its makers: what is committed is on the disk. */
  private static EmbeddedPostgres durableServer() throws IOException {
    return EmbeddedPostgres.builder()
        .setServerConfig("fsync", "on")
        .setServerConfig("full_page_writes", "on")
        .setServerConfig("synchronous_commit", "on")
        .setServerConfig("shared_buffers", "128MB")
        .start();
  }

  Path file(long rows) throws IOException {
    Path file = folder.resolve("readings.csv");
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 20)) {
      new LargeFile(rows, 60, LargeFile.Form.LONG).write(out);
    }
    return file;
  }

  /** A plant with nothing in it. */
  Plant fresh() throws SQLException, StructuresFault {
    plants++;
    Store store = Store.open(folder.resolve("plant" + plants), server.map(this::url));
    Plant plant = new Plant(store, Clock.systemUTC(), ZoneOffset.UTC);
    plant.learnStructures(
        "structures.yaml", LargeFile.structuresYaml().getBytes(StandardCharsets.UTF_8));
    return plant;
  }

  static FileEntry read(Plant plant, Path file) {
    return plant.read(new IncomingFile("readings.csv", "import", () -> Files.newInputStream(file)));
  }

  /** A connection to a database with nothing in it, for yardsticks. */
  Connection plain() throws SQLException {
    plants++;
    return DriverManager.getConnection(
        server
            .map(this::url)
            .orElse(
                "jdbc:sqlite:"
                    + folder.resolve("plain" + plants + ".db")
                    + "?journal_mode=WAL&synchronous=FULL"));
  }

  /** The address of the last plant's database. */
  String lastUrl() {
    return server
        .map(running -> running.getJdbcUrl("postgres", "plant" + plants))
        .orElse("jdbc:sqlite:" + folder.resolve("plant" + plants).resolve("filmward.db"));
  }

  private String url(EmbeddedPostgres running) {
    String name = "plant" + plants;
    try (Connection connection = running.getPostgresDatabase().getConnection();
        Statement statement = connection.createStatement()) {
      statement.execute("CREATE DATABASE " + name);
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
    return running.getJdbcUrl("postgres", name);
  }

  @Override
  public void close() throws IOException {
    if (server.isPresent()) {
      server.get().close();
    }
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }
}
