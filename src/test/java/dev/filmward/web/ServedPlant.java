package dev.filmward.web;

import dev.filmward.intake.StructuresFault;
import dev.filmward.pipeline.IncomingFile;
import dev.filmward.pipeline.MappingBook;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.Store;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A plant that makes the small film, served on a free port; its clock stands still. */
final class ServedPlant implements AutoCloseable {
  static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");
  static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

  /** Sample 30 is taken now. */
  static final SmallFilm FILM = SmallFilm.withSampleAt(30, NOW);

  private final Plant plant;
  private final WebServer server;
  private final Api api;

  private ServedPlant(Plant plant, WebServer server) {
    this.plant = plant;
    this.server = server;
    this.api = new Api(server.port());
  }

  static ServedPlant in(Path folder) throws StructuresFault {
    Plant plant =
        new Plant(
            Store.open(folder),
            Clock.fixed(NOW, ZoneOffset.UTC),
            ZONE,
            MappingBook.in(folder.resolve("mappings")));
    plant.learnStructures("structures.yaml", SmallFilm.STRUCTURES.getBytes(StandardCharsets.UTF_8));
    WebServer.Options options =
        new WebServer.Options("127.0.0.1", 0, WebServer.Options.Purpose.PLANT);
    return new ServedPlant(plant, WebServer.start(plant, options));
  }

  Api api() {
    return api;
  }

  java.util.List<Routes.Known> routes() {
    return server.routes();
  }

  Plant plant() {
    return plant;
  }

  int port() {
    return server.port();
  }

  /** Reads a file as from a folder, with a name of any length. */
  void read(String name, String csv) {
    byte[] bytes = csv.getBytes(StandardCharsets.UTF_8);
    plant.read(new IncomingFile(name, "watch", () -> new ByteArrayInputStream(bytes)));
  }

  /** Twenty-five usual samples with limits frozen from them, all of them in the last half hour. */
  ServedPlant withFrozenLimits() {
    api.upload("baseline.csv", FILM.usual(0, 25));
    api.freeze();
    return this;
  }

  /** The store is gone while the server goes on. */
  void loseTheDatabase() {
    plant.close();
  }

  /** Stops serving, as a process that ends does; what is open to it breaks off. */
  void stopServing() {
    server.close();
  }

  @Override
  public void close() {
    server.close();
    plant.close();
  }
}
