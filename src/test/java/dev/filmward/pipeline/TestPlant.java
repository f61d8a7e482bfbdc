package dev.filmward.pipeline;

import dev.filmward.access.MovedClock;
import dev.filmward.alarm.Alarm;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.FileEntry;
import dev.filmward.store.SampleTable.Production;
import dev.filmward.store.Tables;
import dev.filmward.store.TestDatabase;
import dev.filmward.subgroup.Subgrouping;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/** A plant in a folder, with a clock that stands still, and a picture of all that it knows. */
public final class TestPlant implements AutoCloseable {
  private final TestDatabase database;
  private final Path folder;
  private final MovedClock clock;
  private Plant plant;

  public TestPlant(Path folder, Instant now) {
    this(TestDatabase.SQLITE, folder, now);
  }

  public TestPlant(TestDatabase database, Path folder, Instant now) {
    this.database = database;
    this.folder = folder;
    this.clock = new MovedClock(now);
    this.plant = open();
  }

  public Plant plant() {
    return plant;
  }

  /** Puts the clock forward, or back. */
  public void clockAt(Instant moment) {
    clock.moveTo(moment);
  }

  public FileEntry read(String name, String csv) {
    return read(name, csv.getBytes(StandardCharsets.UTF_8));
  }

  FileEntry read(String name, byte[] csv) {
    return plant.read(new IncomingFile(name, "import", () -> new ByteArrayInputStream(csv)));
  }

  public void freeze(String line, String structure) {
    plant.freezeLimits(line, structure, 25, new Decision("Kim", "quiet baseline", clock.instant()));
  }

  void restart() {
    plant.close();
    plant = open();
  }

  /** Points, signals and alarms, a line each; not how they came about. */
  public List<String> picture() {
    return plant
        .store()
        .read(
            tables -> {
              List<String> lines = new ArrayList<>();
              for (Production made : tables.samples().productions()) {
                lines.add(made.toString());
                addSeries(lines, tables, made);
              }
              lines.addAll(alarms(tables));
              lines.addAll(flags(tables));
              return lines;
            });
  }

  private static List<String> flags(Tables tables) {
    List<String> lines = new ArrayList<>();
    for (Production made : tables.samples().productions()) {
      tables
          .screening()
          .flagged(made.line(), made.structure(), Span.always())
          .forEach(
              each -> lines.add(each.stored().sample().key() + " " + each.state() + each.flags()));
    }
    return lines;
  }

  @Override
  public void close() {
    plant.close();
  }

  private Plant open() {
    return new Plant(database.open(folder), clock, ZoneId.of("Europe/Berlin"));
  }

  private void addSeries(List<String> lines, Tables tables, Production made) {
    Structure structure = plant.structures().find(made.structure()).orElseThrow();
    for (Characteristic what : Subgrouping.layersAndTotal(structure).characteristics()) {
      Series series = new Series(made.line(), made.structure(), what.position());
      tables.figures().within(series, Span.always()).stream()
          .map(row -> what.position() + " " + row.key() + " " + row.takenAt() + row.subgroup())
          .forEach(lines::add);
      tables.signals().within(series, Span.always()).stream()
          .map(
              stored ->
                  what.position() + " " + name(tables, series, stored.sampleId()) + stored.signal())
          .forEach(lines::add);
    }
  }

  private static String name(Tables tables, Series series, long sampleId) {
    return tables.figures().within(series, Span.always()).stream()
        .filter(row -> row.sampleId() == sampleId)
        .map(row -> row.key().sample())
        .findFirst()
        .orElseThrow();
  }

  private static List<String> alarms(Tables tables) {
    return tables.alarms().newest(1000).stream()
        .map(Alarm::excursion)
        .map(Object::toString)
        .sorted()
        .toList();
  }
}
