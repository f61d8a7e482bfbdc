package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.chart.ChartKind;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.rule.AlarmDelays.Delay;
import dev.filmward.rule.ChartTest;
import dev.filmward.rule.SignalTest;
import dev.filmward.rule.TestChoice;
import dev.filmward.rule.TestSet;
import dev.filmward.simulate.SampleRun;
import dev.filmward.simulate.SampleRuns;
import dev.filmward.store.TestDatabase;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A stream gives the same points, signals and alarms as a batch. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class PlantReplayTest {
  @Parameter private TestDatabase database;

  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");
  private static final int BASELINE_SAMPLES = 25;
  private static final TestSet EVERY_TEST = TestSet.ALL.withAverage();
  private static final TestSet NO_TEST = new TestSet(Set.of(), Set.of());

  @TempDir private Path folder;

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"pouch-haul-off-step", "lidding-tie-thinning"})
  void whateverThePiecesInOrder(String name) throws Exception {
    long seed = new Random().nextLong();
    List<String> pieces = new ArrayList<>(pieces(run(name), new Random(seed)));
    assertThat(picture(run(name), pieces, new Random(seed)))
        .as("seed %d", seed)
        .isEqualTo(batch(run(name)));
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"pouch-haul-off-step", "nine-layer-lane-off"})
  void whateverTheOrderOfThePieces(String name) throws Exception {
    long seed = new Random().nextLong();
    List<String> pieces = new ArrayList<>(pieces(run(name), new Random(seed)));
    Collections.shuffle(pieces.subList(1, pieces.size()), new Random(seed));
    assertThat(picture(run(name), pieces, new Random(seed)))
        .as("seed %d", seed)
        .isEqualTo(batch(run(name)));
  }

  /** A late sample is judged by the tests of its own time, so that its coming late is no matter. */
  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"pouch-haul-off-step", "lidding-tie-thinning"})
  void whateverTheOrderWhereOtherTestsWereChosenOnTheWay(String name) throws Exception {
    long seed = new Random().nextLong();
    SampleRun run = run(name);
    List<String> pieces = new ArrayList<>(pieces(run, new Random(seed)));
    int cut = pieces.size() / 2;
    List<String> early = pieces.subList(1, cut);
    List<String> late = new ArrayList<>(pieces.subList(cut + 1, pieces.size()));
    List<String> inOrder = new ArrayList<>(early);
    inOrder.add(pieces.get(cut));
    List<String> batch = chosenOnTheWay("batch", run, pieces.get(0), inOrder, late);
    late.add(early.get(early.size() / 2));
    late.add(early.get(early.size() - 1));
    inOrder.removeAll(late);
    Collections.shuffle(inOrder, new Random(seed));
    Collections.shuffle(late, new Random(seed));
    assertThat(chosenOnTheWay("stream", run, pieces.get(0), inOrder, late))
        .as("seed %d", seed)
        .isEqualTo(batch);
    assertThat(batch).isNotEqualTo(batch(run)).anyMatch(line -> line.contains("chart=EWMA"));
  }

  private List<String> chosenOnTheWay(
      String folder, SampleRun run, String baseline, List<String> before, List<String> after)
      throws IOException {
    try (TestPlant plant = plant("chosen-" + folder, run)) {
      plant.read("baseline.csv", baseline);
      plant.freeze(run.line(), run.structure().code());
      before.forEach(piece -> plant.read("piece.csv", piece));
      plant
          .plant()
          .chooseTests(
              run.line(),
              run.structure().code(),
              new TestsChange(
                  Map.of(
                      0, new TestChoice(EVERY_TEST, TestSet.LIMITS_ONLY.withAverage()),
                      1, new TestChoice(EVERY_TEST, EVERY_TEST),
                      2, new TestChoice(TestSet.LIMITS_ONLY, NO_TEST)),
                  Map.of(
                      new ChartTest(ChartKind.XBAR, SignalTest.BEYOND_LIMIT), new Delay(3, 2),
                      new ChartTest(ChartKind.XBAR, SignalTest.EIGHT_IN_A_ROW), new Delay(1, 5))),
              new Decision("Kim", "fewer false alarms", NOW));
      plant.restart();
      after.forEach(piece -> plant.read("piece.csv", piece));
      return plant.picture();
    }
  }

  @Test
  void theSameFileAgainChangesNothing() throws Exception {
    SampleRun run = run("shrink-in-control");
    try (TestPlant plant = plant("again", run)) {
      byte[] csv = run.files().get("readings.csv");
      plant.read("readings.csv", csv);
      plant.freeze(run.line(), run.structure().code());
      List<String> before = plant.picture();
      var again = plant.read("copy.csv", csv);
      assertThat(again.counts().arrivals().fresh()).isZero();
      assertThat(again.counts().arrivals().corrected()).isZero();
      assertThat(again.counts().arrivals().known()).isEqualTo(again.counts().readings());
      assertThat(plant.picture()).isEqualTo(before);
    }
  }

  private List<String> batch(SampleRun run) throws IOException {
    try (TestPlant plant = plant("batch", run)) {
      plant.read("readings.csv", run.files().get("readings.csv"));
      plant.freeze(run.line(), run.structure().code());
      return plant.picture();
    }
  }

  /** Reads the pieces, the first of which holds the baseline, with restarts in between. */
  private List<String> picture(SampleRun run, List<String> pieces, RandomGenerator random)
      throws IOException {
    try (TestPlant plant = plant("stream", run)) {
      for (int i = 0; i < pieces.size(); i++) {
        plant.read("piece-" + i + ".csv", pieces.get(i));
        if (i == 0) {
          plant.freeze(run.line(), run.structure().code());
        }
        if (random.nextInt(5) == 0) {
          plant.restart();
        }
      }
      return plant.picture();
    }
  }

  private TestPlant plant(String name, SampleRun run) throws IOException {
    TestPlant plant = new TestPlant(database, Files.createDirectories(folder.resolve(name)), NOW);
    try {
      plant.plant().learnStructures("structures.yaml", run.files().get("structures.yaml"));
    } catch (dev.filmward.intake.StructuresFault e) {
      throw new IllegalStateException(e);
    }
    return plant;
  }

  /** Cuts the rows at random, in the middle of samples too. */
  private static List<String> pieces(SampleRun run, RandomGenerator random) {
    String text = new String(run.files().get("readings.csv"), StandardCharsets.UTF_8);
    List<String> lines = text.lines().toList();
    int rowsInSample = (lines.size() - 1) / run.samples().size();
    List<String> pieces = new ArrayList<>();
    int from = 1;
    int to = 1 + BASELINE_SAMPLES * rowsInSample;
    while (from < lines.size()) {
      pieces.add(lines.get(0) + "\n" + String.join("\n", lines.subList(from, to)) + "\n");
      from = to;
      to = Math.min(lines.size(), to + 1 + random.nextInt(12 * rowsInSample));
    }
    return pieces;
  }

  private static SampleRun run(String name) {
    return SampleRuns.all().stream()
        .filter(run -> run.folder().equals(name))
        .findFirst()
        .orElseThrow();
  }
}
