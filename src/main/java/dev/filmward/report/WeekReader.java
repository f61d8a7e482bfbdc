package dev.filmward.report;

import dev.filmward.pipeline.LongWork;
import dev.filmward.pipeline.Plant;
import dev.filmward.report.WeeklyReport.Edition;
import dev.filmward.report.WeeklyReport.Intake;
import dev.filmward.store.FileEntry;
import dev.filmward.store.SampleTable;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Reads a week of a plant, gives its report. What is charted is what is reported: samples that are
 * held out are left out and listed, the same figures come out as on the screens. One production at
 * a time, so that memory grows with the largest and not with the plant. Thread-safe.
 */
public final class WeekReader {
  /** Weeks of the trend, this one included. */
  static final int TREND = 13;

  private static final int MOST_FILES = 100_000;

  private final Plant plant;
  private final String version;

  /**
   * @param version of the program, for the report's head
   */
  public WeekReader(Plant plant, String version) {
    this.plant = plant;
    this.version = version;
  }

  /**
   * Which films.
   *
   * @param line empty for all lines
   * @param structure empty for all structures
   */
  public record Scope(String line, String structure) {
    public static final Scope ALL = new Scope("", "");

    private boolean holds(SampleTable.Production made) {
      return (line.isEmpty() || line.equals(made.line()))
          && (structure.isEmpty() || structure.equals(made.structure()));
    }
  }

  /** Reads a week as it is known now. */
  public WeeklyReport read(ReportWeek week, Scope scope, ReportSettings settings) {
    Instant now = plant.clock().instant();
    LongWork work = LongWork.current();
    List<SampleTable.Production> productions = productions(scope);
    work.more(productions.size());
    List<FilmReader.Read> read =
        productions.parallelStream()
            .map(made -> read(work, made, week, settings, now))
            .flatMap(Optional::stream)
            .toList();
    List<FilmWeek> films = read.stream().map(FilmReader.Read::film).toList();
    return new WeeklyReport(
        WeeklyReport.FORMAT,
        week.word(),
        week.zone().getId(),
        week.from(),
        week.to(),
        now,
        version,
        Edition.INTERNAL,
        settings.asked(),
        films,
        plant.store().read(tables -> intake(tables, week)),
        DataDigest.of(read.stream().map(FilmReader.Read::dataDigest).toList()));
  }

  private Optional<FilmReader.Read> read(
      LongWork work,
      SampleTable.Production made,
      ReportWeek week,
      ReportSettings settings,
      Instant now) {
    work.goOn();
    Optional<FilmReader.Read> read =
        plant
            .structures()
            .find(made.structure())
            .map(plant::times)
            .map(times -> new FilmReader(made.line(), times, settings, now, work))
            .flatMap(reader -> plant.store().read(tables -> reader.read(tables, week)));
    work.did(1);
    return read;
  }

  private List<SampleTable.Production> productions(Scope scope) {
    return plant.store().read(tables -> tables.samples().productions()).stream()
        .filter(scope::holds)
        .sorted(
            Comparator.comparing(SampleTable.Production::line)
                .thenComparing(SampleTable.Production::structure))
        .toList();
  }

  private static Intake intake(Tables tables, ReportWeek week) {
    long files = 0;
    long refused = 0;
    long readings = 0;
    long quarantined = 0;
    long mended = 0;
    for (FileEntry file : tables.files().newest(MOST_FILES)) {
      if (week.contains(file.receivedAt())) {
        files++;
        refused += file.refusal().isPresent() ? 1 : 0;
        readings += file.counts().readings();
        quarantined += file.counts().quarantined();
        mended += file.mended();
      }
    }
    return new Intake(files, refused, readings, quarantined, mended);
  }
}
