package dev.filmward.web;

import dev.filmward.access.TestPeople;
import dev.filmward.intake.StructuresFault;
import dev.filmward.people.Role;
import dev.filmward.pipeline.IncomingFile;
import dev.filmward.pipeline.MappingBook;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.Store;
import dev.filmward.store.TestDatabase;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/**
 * A plant that makes the small film, served on a free port; its clock stands still unless given.
 */
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
    this.api = as(TestPeople.KIM, Role.ADMINISTRATOR);
  }

  static ServedPlant in(Path folder) throws StructuresFault {
    return in(TestDatabase.SQLITE, folder);
  }

  static ServedPlant in(TestDatabase database, Path folder) throws StructuresFault {
    return in(database, folder, Clock.fixed(NOW, ZoneOffset.UTC));
  }

  static ServedPlant in(TestDatabase database, Path folder, Clock clock) throws StructuresFault {
    return in(database.open(folder), folder, clock, DoorOptions.SHUT);
  }

  static ServedPlant in(Path folder, Clock clock, DoorOptions doors) throws StructuresFault {
    return in(Store.open(folder), folder, clock, doors);
  }

  private static ServedPlant in(Store store, Path folder, Clock clock, DoorOptions doors)
      throws StructuresFault {
    Plant plant = new Plant(store, clock, ZONE, MappingBook.in(folder.resolve("mappings")));
    plant.learnStructures("structures.yaml", SmallFilm.STRUCTURES.getBytes(StandardCharsets.UTF_8));
    WebServer.Options options =
        new WebServer.Options("127.0.0.1", 0, WebServer.Options.Purpose.PLANT, doors);
    return new ServedPlant(plant, WebServer.start(plant, options));
  }

  /** Kim, an administrator, who is signed in. */
  Api api() {
    return api;
  }

  /** Somebody who is signed in, and added where there is nobody of that name. */
  Api as(String name, Role role) {
    return new Api(server.port()).as(TestPeople.signedIn(plant.store(), plant.clock(), name, role));
  }

  /** Somebody who is not signed in. */
  Api nobody() {
    return new Api(server.port());
  }

  java.util.List<Routes.Known> routes() {
    return server.routes();
  }

  WebServer server() {
    return server;
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
