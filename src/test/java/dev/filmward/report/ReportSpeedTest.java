package dev.filmward.report;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.pipeline.IncomingFile;
import dev.filmward.pipeline.TestPlant;
import dev.filmward.report.WeekReader.Scope;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SampleTable;
import dev.filmward.store.TestDatabase;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How long a report takes: 40 films of nine layers over 13 weeks, 20 million readings, within 60 s
 * and 1 GB on two cores. The usual run has a fortieth of it; all of it with {@code
 * -Dfilmward.report.films=40}. The plain reading of all samples is timed beside it.
 */
class ReportSpeedTest {
  private static final int LAYERS = 9;
  private static final int LANES = 5;
  private static final int SAMPLES_A_WEEK = 855;
  private static final Instant MONDAY = Instant.parse("2026-11-23T06:00:00Z");
  private static final ReportWeek WEEK = ReportWeek.parse("2026-W47", ZoneId.of("Europe/Berlin"));

  @TempDir private Path folder;

  @Test
  void aReportIsThereInTime() {
    int films = Integer.getInteger("filmward.report.films", 1);
    try (TestPlant plant = new TestPlant(TestDatabase.SQLITE, folder, MONDAY)) {
      for (int film = 0; film < films; film++) {
        fill(plant, film);
      }
      WeekReader reader = new WeekReader(plant.plant(), "test");
      long before = System.nanoTime();
      WeeklyReport report = reader.read(WEEK, Scope.ALL, ReportSettings.USUAL);
      double seconds = (System.nanoTime() - before) / 1e9;
      before = System.nanoTime();
      long readings = plainReading(plant);
      double plain = (System.nanoTime() - before) / 1e9;
      System.out.printf(
          Locale.ROOT,
          "report of %d films, %d readings in 13 weeks: %.2f s; plain reading of them: %.2f s; JSON %.1f MB%n",
          films,
          readings,
          seconds,
          plain,
          ReportJson.write(report).length / 1e6);
      assertThat(report.films()).hasSize(films);
      assertThat(report.films().get(0).characteristics().get(0).trend())
          .allMatch(week -> week.samples() == SAMPLES_A_WEEK);
      // a minute for forty films; a start of five seconds for one
      assertThat(seconds).isLessThan(5 + 55.0 * films / 40);
    }
  }

  private static long plainReading(TestPlant plant) {
    return plant
        .plant()
        .store()
        .read(
            tables -> {
              long[] readings = {0};
              for (SampleTable.Production made : tables.samples().productions()) {
                tables
                    .samples()
                    .within(
                        made.line(),
                        made.structure(),
                        Span.always(),
                        stored -> readings[0] += stored.sample().readings());
              }
              return readings[0];
            });
  }

  private static void fill(TestPlant plant, int film) {
    StringBuilder yaml =
        new StringBuilder(
            "structures:\n  - code: F" + film + "\n    name: Film " + film + "\n    layers:\n");
    for (int layer = 1; layer <= LAYERS; layer++) {
      yaml.append("      - {name: L")
          .append(layer)
          .append(", role: core, target: 10 um, lower: 8 um, upper: 12 um, density: 0.92}\n");
    }
    try {
      plant
          .plant()
          .learnStructures("f" + film + ".yaml", yaml.toString().getBytes(StandardCharsets.UTF_8));
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
    for (int week = 12; week >= 0; week--) {
      byte[] csv = csv(film, WEEK.minus(week)).getBytes(StandardCharsets.UTF_8);
      plant
          .plant()
          .read(
              new IncomingFile(
                  "w" + film + "-" + week + ".csv", "import", () -> new ByteArrayInputStream(csv)));
      if (week == 12) {
        plant.freeze("Line " + film % 8, "F" + film);
      }
    }
  }

  private static String csv(int film, ReportWeek week) {
    Random random = new Random(31L * film + week.monday().toEpochDay());
    StringBuilder csv = new StringBuilder("taken_at,line,structure,roll,sample,lane");
    for (int layer = 1; layer <= LAYERS; layer++) {
      csv.append(",layer_").append(layer).append("_um");
    }
    csv.append('\n');
    Duration pace = Duration.ofHours(160).dividedBy(SAMPLES_A_WEEK);
    for (int sample = 0; sample < SAMPLES_A_WEEK; sample++) {
      Instant at = week.from().plus(pace.multipliedBy(sample));
      for (int lane = 1; lane <= LANES; lane++) {
        csv.append(at)
            .append(",Line ")
            .append(film % 8)
            .append(",F")
            .append(film)
            .append(",R")
            .append(week.word())
            .append(sample / 50)
            .append(",S")
            .append(sample)
            .append(',')
            .append(lane);
        for (int layer = 1; layer <= LAYERS; layer++) {
          csv.append(',').append(Math.round((10 + 0.3 * random.nextGaussian()) * 1000) / 1000.0);
        }
        csv.append('\n');
      }
    }
    return csv.toString();
  }
}
