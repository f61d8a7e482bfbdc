package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.chart.LimitsVersion;
import dev.filmward.rule.ChosenTests;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SignalTable.Stored;
import dev.filmward.store.Tables;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short way to signals under limits on trial says what the long one says. */
class TrialSignalsTest {
  private static final Instant START = Instant.parse("2026-11-02T06:00:00Z");
  private static final Series SERIES = new Series("L", "ONE", 1);
  private static final int SAMPLES = 3000;

  private static final String STRUCTURES =
      """
      structures:
        - code: ONE
          name: One layer
          layers:
            - {name: Skin, role: skin, resin: LDPE, target: 20 um, lower: 10 um, upper: 30 um}
      """;

  @TempDir private Path folder;

  @Test
  void isTheSameAsOfTheJudgeOfAllLimitsForWanderingSamplesOfChangingSize() throws Exception {
    long seed = System.nanoTime();
    System.out.println("seed " + seed);
    try (TestPlant plant = new TestPlant(folder, START.plusSeconds(60L * SAMPLES))) {
      plant.plant().learnStructures("one.yaml", STRUCTURES.getBytes(StandardCharsets.UTF_8));
      plant.read("one.csv", csv(new Random(seed)));
      for (int from : new int[] {0, 1, 30, 1500}) {
        Span span = Span.since(START.plusSeconds(60L * from));
        List<Stored> shortWay = plant.plant().store().read(tables -> shortWay(tables, span));
        List<Stored> longWay = plant.plant().store().read(tables -> longWay(tables, span));
        assertThat(shortWay).isEqualTo(longWay).isNotEmpty();
      }
    }
  }

  private static List<Stored> shortWay(Tables tables, Span span) {
    ChosenTests tests = tables.tests().of("L", "ONE");
    return new TrialSignals(trial(tables), tests, 1)
        .of(
            tables.figures().before(SERIES, span.from(), tests.warmUp(1)),
            tables.figures().columns(SERIES, span));
  }

  private static List<Stored> longWay(Tables tables, Span span) {
    ChosenTests tests = tables.tests().of("L", "ONE");
    SeriesJudge judge = new SeriesJudge(List.of(trial(tables)), at -> tests.at(at, 1), 1);
    judge.judge(tables.figures().before(SERIES, span.from(), tests.warmUp(1)));
    return judge.judge(tables.figures().within(SERIES, span)).stream()
        .flatMap(
            point -> point.now().stream().map(signal -> new Stored(point.row().sampleId(), signal)))
        .toList();
  }

  private static LimitsVersion trial(Tables tables) {
    return LimitsDesk.trial(tables, SERIES).orElseThrow();
  }

  private static String csv(Random random) {
    StringBuilder csv = new StringBuilder("taken_at,line,structure,roll,sample,lane,layer_1_um\n");
    double mean = 20;
    for (int i = 0; i < SAMPLES; i++) {
      mean += 0.05 * random.nextGaussian() + 0.02 * (20 - mean);
      int lanes = 1 + random.nextInt(5);
      for (int lane = 1; lane <= lanes; lane++) {
        csv.append(START.plusSeconds(60L * i)).append(",L,ONE,R,S").append(i).append(',');
        csv.append(lane).append(',');
        csv.append(
            i % 50 == 49
                ? ""
                : String.format(Locale.ROOT, "%.3f", mean + 0.3 * random.nextGaussian()));
        csv.append('\n');
      }
    }
    return csv.toString();
  }
}
