package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.film.Sample;
import dev.filmward.gauge.screen.Misread;
import dev.filmward.gauge.screen.ScreeningRules;
import dev.filmward.gauge.screen.ScreeningState;
import dev.filmward.gauge.screen.Treatment;
import dev.filmward.pipeline.ScreeningDesk.Suspect;
import dev.filmward.simulate.GaugeFault;
import dev.filmward.simulate.SampleRun;
import dev.filmward.simulate.SampleRuns;
import dev.filmward.store.ScreeningTable.Depth;
import dev.filmward.store.ScreeningTable.Question;
import dev.filmward.store.StoreLook;
import dev.filmward.store.TestDatabase;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Misread samples are held out the same for any cut and order, and stand as people decide. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class ScreeningReplayTest {
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");
  private static final int BASELINE = 30;

  /** Indexes of samples that are misread, and how. */
  private static final Map<Integer, GaugeFault> MISREAD =
      Map.of(
          60, GaugeFault.boundaryMissed(1),
          61, GaugeFault.boundaryMissed(1),
          75, GaugeFault.twoWalls(),
          90, GaugeFault.times(10),
          91, GaugeFault.boundaryMissed(2).inShareOfLanes(0.5));

  @Parameter private TestDatabase database;
  @TempDir private Path folder;

  private final SampleRun run = SampleRuns.all().get(0);

  @Test
  void whateverTheCutTheOrderAndTheRestarts() throws Exception {
    long seed = new Random().nextLong();
    List<String> batch;
    try (TestPlant plant = plant("batch")) {
      plant.read("all.csv", csv(samples(), 0, samples().size()));
      plant.freeze(run.line(), run.structure().code());
      batch = plant.picture();
    }
    assertThat(batch).anyMatch(line -> line.contains("HELD_OUT"));
    Random random = new Random(seed);
    try (TestPlant plant = plant("stream")) {
      plant.read("baseline.csv", csv(samples(), 0, BASELINE));
      plant.freeze(run.line(), run.structure().code());
      List<int[]> pieces = new ArrayList<>();
      for (int from = BASELINE; from < samples().size(); ) {
        int to = Math.min(samples().size(), from + 1 + random.nextInt(9));
        pieces.add(new int[] {from, to});
        from = to;
      }
      Collections.shuffle(pieces, random);
      for (int[] piece : pieces) {
        plant.read("piece.csv", csv(samples(), piece[0], piece[1]));
        if (random.nextInt(8) == 0) {
          plant.restart();
        }
      }
      assertThat(plant.picture()).as("seed %d", seed).isEqualTo(batch);
    }
  }

  @Test
  void noAlarmOpensAndTheCheckHoldsUntilSomebodyPutsTheSampleBack() throws Exception {
    try (TestPlant plant = plant("decisions")) {
      plant.read("baseline.csv", csv(samples(), 0, BASELINE));
      plant.freeze(run.line(), run.structure().code());
      plant.read("next.csv", csv(samples(), BASELINE, 80));
      ScreeningDesk desk = plant.plant().screening();
      assertThat(alarms(plant)).isEmpty();
      List<Suspect> suspects = desk.list(open());
      assertThat(suspects)
          .extracting(suspect -> suspect.screened().stored().sample().key().sample())
          .containsExactly("S076", "S062", "S061");
      assertThat(suspects.get(0).screened().flags())
          .extracting(flag -> flag.kind())
          .containsExactly(Misread.TWO_WALLS);
      long id = suspects.get(0).screened().stored().id();
      desk.decide(id, ScreeningState.PUT_BACK, new Decision("Kim", "it was slit", NOW));
      assertThat(alarms(plant)).isNotEmpty();
      desk.decide(id, ScreeningState.CONFIRMED, new Decision("Kim", "it was not", NOW));
      assertThat(alarms(plant)).isEmpty();
      assertThat(desk.get(id).decisions()).hasSize(2);
      assertThatThrownBy(
              () -> desk.decide(id, ScreeningState.CONFIRMED, new Decision("Kim", "again", NOW)))
          .isInstanceOf(IllegalStateException.class);
      long entries =
          plant.plant().store().read(tables -> tables.audit().check(Optional.empty()).links());
      assertThat(entries).isGreaterThanOrEqualTo(3);
    }
    if (database == TestDatabase.SQLITE) {
      try (StoreLook look = StoreLook.at(folder.resolve("decisions"), Optional.empty())) {
        assertThat(StoredCheck.of(look).faults()).isEmpty();
      }
    }
  }

  @Test
  void aKindThatIsOnlyMarkedIsChartedFromTheNextSampleOn() throws Exception {
    try (TestPlant plant = plant("settings")) {
      plant.read("baseline.csv", csv(samples(), 0, BASELINE));
      plant.freeze(run.line(), run.structure().code());
      plant.read("next.csv", csv(samples(), BASELINE, 70));
      ScreeningDesk desk = plant.plant().screening();
      desk.set(
          run.line(),
          run.structure().code(),
          new ScreeningRules(Map.of(Misread.TWO_WALLS, Treatment.MARK), OptionalDouble.of(100)),
          new Decision("Kim", "we measure two walls on purpose", NOW));
      plant.read("then.csv", csv(samples(), 70, 80));
      assertThat(desk.list(open()))
          .extracting(suspect -> suspect.screened().state().orElseThrow())
          .containsExactly(ScreeningState.MARKED, ScreeningState.HELD_OUT, ScreeningState.HELD_OUT);
      assertThat(alarms(plant)).isNotEmpty();
    }
  }

  private static Question open() {
    return new Question(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of(ScreeningState.values()),
        Depth.WITHOUT_MERE_GAPS,
        50);
  }

  private static List<String> alarms(TestPlant plant) {
    return plant.plant().store().read(tables -> tables.alarms().newest(100)).stream()
        .map(Object::toString)
        .toList();
  }

  private TestPlant plant(String name) throws Exception {
    TestPlant plant = new TestPlant(database, Files.createDirectories(folder.resolve(name)), NOW);
    plant.plant().learnStructures("structures.yaml", run.files().get("structures.yaml"));
    return plant;
  }

  /** The run, which steps from sample 96 on, with some samples misread before. */
  private List<Sample> samples() {
    List<Sample> samples = new ArrayList<>(run.samples().subList(0, 95));
    MISREAD.forEach(
        (at, fault) -> samples.set(at, fault.of(samples.get(at), run.structure(), 17L * at)));
    return samples;
  }

  private static String csv(List<Sample> samples, int from, int to) {
    StringBuilder csv = new StringBuilder("taken_at,line,structure,roll,sample,lane");
    int layers = samples.get(0).layers();
    for (int position = 1; position <= layers; position++) {
      csv.append(",layer_").append(position).append("_um");
    }
    csv.append('\n');
    for (Sample sample : samples.subList(from, to)) {
      for (int lane = 0; lane < sample.laneCount(); lane++) {
        List<String> cells =
            new ArrayList<>(
                Arrays.asList(
                    sample.takenAt().toString(),
                    sample.key().line(),
                    sample.key().structure(),
                    sample.key().roll(),
                    sample.key().sample(),
                    String.valueOf(sample.lane(lane))));
        for (int position = 1; position <= layers; position++) {
          cells.add(
              sample.isMeasured(position, lane)
                  ? String.valueOf(sample.thicknessUm(position, lane))
                  : "");
        }
        csv.append(String.join(",", cells)).append('\n');
      }
    }
    return csv.toString();
  }
}
