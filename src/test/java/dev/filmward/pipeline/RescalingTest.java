package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.chart.LimitsVersion;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.gauge.Gauge;
import dev.filmward.gauge.calibration.Calibration.Subject;
import dev.filmward.gauge.calibration.GaugeSetting;
import dev.filmward.gauge.calibration.PieceReadings;
import dev.filmward.gauge.calibration.PieceReadings.Kind;
import dev.filmward.gauge.calibration.ReferencePiece;
import dev.filmward.gauge.calibration.Scaling.Word;
import dev.filmward.gauge.calibration.Velocity;
import dev.filmward.pipeline.GaugeDesk.Measured;
import dev.filmward.pipeline.Rescaling.LimitsToo;
import dev.filmward.pipeline.Rescaling.Temperature;
import dev.filmward.pipeline.Thinning.Order;
import dev.filmward.simulate.SampleRun;
import dev.filmward.simulate.SampleRuns;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.StoreLook;
import dev.filmward.store.TestDatabase;
import dev.filmward.subgroup.Subgroup;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Readings get another velocity from a moment on, and everything that follows from them follows.
 */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class RescalingTest {
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");

  /** A piece of 51 um that reads 50 um: the velocity, and with it every reading, is 2 % short. */
  private static final double FACTOR = 51.0 / 50.0;

  private static final int CORE = 2;

  @Parameter private TestDatabase database;
  @TempDir private Path folder;

  @Test
  void figuresAreThoseOfTheReadingsTimesTheFactorAndTheReadingsStay() throws Exception {
    SampleRun run = run("shrink-in-control");
    try (TestPlant test = plant("factor", run)) {
      Instant from = middle(run);
      List<FigureRow> before = rows(test, run, CORE);
      List<Sample> exported = exported(test, run);
      var done = test.plant().rescaling().apply(order(test, run, from, LimitsToo.FLAG));
      List<FigureRow> after = rows(test, run, CORE);
      assertThat(done.samples()).isEqualTo(run.samples().size() / 2);
      for (int i = 0; i < before.size(); i++) {
        Subgroup was = before.get(i).subgroup().orElseThrow();
        Subgroup is = after.get(i).subgroup().orElseThrow();
        double factor = before.get(i).takenAt().isBefore(from) ? 1 : FACTOR;
        assertThat(is.mean()).isCloseTo(was.mean() * factor, within(1e-12));
        assertThat(is.range()).isCloseTo(was.range() * factor, within(1e-12));
        assertThat(is.sumOfSquares())
            .isCloseTo(was.sumOfSquares() * factor * factor, within(1e-11));
      }
      assertThat(exported(test, run)).isEqualTo(exported);
      assertThat(faults("factor")).isEmpty();
    }
  }

  @Test
  void whatIsCancelledHappensNotAtAllAndMayBeDoneAnew() throws Exception {
    SampleRun run = run("shrink-in-control");
    try (TestPlant test = plant("cancelled", run)) {
      Rescaling order = order(test, run, middle(run), LimitsToo.FLAG);
      List<FigureRow> before = rows(test, run, CORE);
      LongWork unwanted = new LongWork();
      unwanted.cancel();
      assertThatThrownBy(() -> unwanted.during(() -> test.plant().rescaling().apply(order)))
          .isInstanceOf(CancellationException.class)
          .hasMessageContaining("nothing of it holds");
      assertThat(rows(test, run, CORE)).isEqualTo(before);
      assertThat(test.plant().rescaling().apply(order).version()).isEqualTo(1);
      assertThat(rows(test, run, CORE)).isNotEqualTo(before);
      assertThat(faults("cancelled")).isEmpty();
    }
  }

  /** A lane in which a layer was not measured has no total, so these samples are passed over. */
  @Test
  void theTotalIsTheSumOfTheLayersAsTheyAreShown() throws Exception {
    SampleRun run = run("shrink-in-control");
    try (TestPlant test = plant("total", run)) {
      test.plant().rescaling().apply(order(test, run, middle(run), LimitsToo.FLAG));
      List<FigureRow> total = rows(test, run, 0);
      List<List<FigureRow>> layers =
          List.of(rows(test, run, 1), rows(test, run, 2), rows(test, run, 3));
      int whole = 0;
      for (int i = 0; i < total.size(); i++) {
        Subgroup all = total.get(i).subgroup().orElseThrow();
        double sum = 0;
        int readings = 0;
        for (List<FigureRow> layer : layers) {
          sum += layer.get(i).subgroup().orElseThrow().mean();
          readings += layer.get(i).subgroup().orElseThrow().size();
        }
        if (readings == 3 * all.size()) {
          assertThat(all.mean()).isCloseTo(sum, within(1e-9));
          whole++;
        }
      }
      assertThat(whole).as("samples without a missing reading").isGreaterThan(50);
    }
  }

  /** Whether a sample came before or after the decision, and in what order, is no matter. */
  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"pouch-haul-off-step", "shrink-in-control"})
  void aStreamEqualsABatch(String name) throws Exception {
    long seed = new Random().nextLong();
    SampleRun run = run(name);
    List<String> pieces = pieces(run, new Random(seed));
    List<String> late = new ArrayList<>(pieces.subList(1, pieces.size()));
    Collections.shuffle(late, new Random(seed));
    List<String> early = late.subList(0, late.size() / 2);
    try (TestPlant batch = empty("batch", run);
        TestPlant stream = empty("stream", run)) {
      batch.read("readings.csv", run.files().get("readings.csv"));
      batch.freeze(run.line(), run.structure().code());
      batch.plant().rescaling().apply(order(batch, run, middle(run), LimitsToo.FLAG));
      stream.read("first.csv", pieces.get(0));
      stream.freeze(run.line(), run.structure().code());
      early.forEach(piece -> stream.read("early.csv", piece));
      stream.plant().rescaling().apply(order(stream, run, middle(run), LimitsToo.FLAG));
      stream.restart();
      late.subList(early.size(), late.size()).forEach(piece -> stream.read("late.csv", piece));
      assertThat(stream.picture()).as("seed %d", seed).isEqualTo(batch.picture());
      assertThat(faults("stream")).isEmpty();
    }
  }

  @Test
  void takenBackEverythingIsAsBefore() throws Exception {
    SampleRun run = run("pouch-haul-off-step");
    try (TestPlant test = plant("back", run)) {
      List<String> before = test.picture();
      RescalingDesk desk = test.plant().rescaling();
      desk.apply(order(test, run, middle(run), LimitsToo.FLAG));
      assertThat(test.picture()).isNotEqualTo(before);
      Series layer = new Series(run.line(), run.structure().code(), CORE);
      desk.takeBack(layer, 1, LimitsToo.FLAG, word("the piece was the wrong one"));
      assertThat(test.picture()).isEqualTo(before);
      assertThat(desk.of(run.line(), run.structure().code()).of(CORE).versions()).hasSize(2);
      assertThatThrownBy(() -> desk.takeBack(layer, 1, LimitsToo.FLAG, word("again")))
          .isInstanceOf(IllegalStateException.class)
          .hasMessageContaining("taken back before");
    }
  }

  @Test
  void aPreviewSaysWhatWouldComeAndChangesNothing() throws Exception {
    SampleRun run = run("shrink-in-control");
    try (TestPlant test = plant("preview", run)) {
      Rescaling order = order(test, run, middle(run), LimitsToo.FLAG);
      List<String> before = test.picture();
      RescalingPreview preview = test.plant().rescaling().preview(order);
      assertThat(test.picture()).isEqualTo(before);
      assertThat(test.plant().rescaling().of(run.line(), run.structure().code()).byPosition())
          .isEmpty();
      assertThat(preview.samples()).isEqualTo(run.samples().size() / 2);
      RescalingPreview.Mean core = preview.means().get(0);
      assertThat(core.after().orElseThrow() / core.before().orElseThrow())
          .isCloseTo(FACTOR, within(1e-12));
      assertThat(preview.otherwise()).containsExactly(1);
      assertThat(preview.alarms().orElseThrow().before()).isEmpty();
      assertThat(preview.alarms().orElseThrow().after())
          .as("2 % of 24 um is half a micrometre: the layer would seem to be too thick")
          .isNotEmpty();
    }
  }

  /** The layer is judged as before where its limits are multiplied by what its readings are. */
  @Test
  void limitsThatAreCarriedAlongFindTheSame() throws Exception {
    SampleRun run = run("pouch-haul-off-step");
    try (TestPlant test = plant("carried", run)) {
      Instant from = run.samples().get(0).takenAt();
      List<String> before = signals(test, run);
      test.clockAt(NOW.plusSeconds(60));
      test.plant().rescaling().apply(order(test, run, from, LimitsToo.CARRY));
      assertThat(signals(test, run)).isEqualTo(before).isNotEmpty();
      assertThat(otherwise(test, run, CORE)).isEmpty();
      var limits = limits(test, run);
      assertThat(limits.get(1).limits().centre())
          .isCloseTo(limits.get(0).limits().centre() * FACTOR, within(1e-12));
      assertThat(limits.get(1).limits().sigmaWithin())
          .isCloseTo(limits.get(0).limits().sigmaWithin() * FACTOR, within(1e-12));
    }
  }

  @Test
  void limitsThatAreLeftAreFlaggedUntilTheRescalingIsTakenBack() throws Exception {
    SampleRun run = run("shrink-in-control");
    try (TestPlant test = plant("flagged", run)) {
      assertThat(otherwise(test, run, CORE)).isEmpty();
      test.clockAt(NOW.plusSeconds(60));
      test.plant().rescaling().apply(order(test, run, middle(run), LimitsToo.FLAG));
      assertThat(otherwise(test, run, CORE)).containsExactly(1);
      assertThat(otherwise(test, run, 0)).containsExactly(1);
      assertThat(otherwise(test, run, 1)).isEmpty();
      test.clockAt(NOW.plusSeconds(120));
      Series layer = new Series(run.line(), run.structure().code(), CORE);
      test.plant().rescaling().takeBack(layer, 1, LimitsToo.FLAG, word("wrong piece"));
      assertThat(otherwise(test, run, CORE)).isEmpty();
    }
  }

  @Test
  void samplesWithoutReadingsKeepTheirFiguresAndAreCounted() throws Exception {
    SampleRun run = run("shrink-in-control");
    try (TestPlant test = plant("thinned", run)) {
      new Thinning(test.plant()).run(new Order(run.samples().get(30).takenAt(), "Kim", "old"));
      List<FigureRow> before = rows(test, run, CORE);
      Instant from = run.samples().get(10).takenAt();
      var done = test.plant().rescaling().apply(order(test, run, from, LimitsToo.FLAG));
      assertThat(done.left()).isEqualTo(20);
      assertThat(done.samples()).isEqualTo(run.samples().size() - 30);
      assertThat(rows(test, run, CORE).subList(0, 30)).isEqualTo(before.subList(0, 30));
      assertThat(faults("thinned")).isEmpty();
    }
  }

  /** Once the gauge itself has the new velocity its readings are right as they are exported. */
  @Test
  void readingsOfAGaugeThatWasSetSinceAreNotScaledTwice() throws Exception {
    SampleRun run = run("shrink-in-control");
    try (TestPlant test = plant("set", run)) {
      test.clockAt(NOW.plusSeconds(60));
      Instant from = run.samples().get(20).takenAt();
      Instant set = run.samples().get(50).takenAt();
      List<FigureRow> before = rows(test, run, CORE);
      test.plant().rescaling().apply(order(test, run, from, LimitsToo.FLAG));
      test.clockAt(NOW.plusSeconds(120));
      test.plant()
          .gauges()
          .set(
              new GaugeSetting(
                  run.line(),
                  run.structure().code(),
                  run.structure().reported().get(CORE - 1).name(),
                  Velocity.of(2430 * FACTOR),
                  OptionalDouble.of(76),
                  set,
                  word("set to what was found")));
      List<FigureRow> after = rows(test, run, CORE);
      for (int i = 0; i < after.size(); i++) {
        double factor = i >= 20 && i < 50 ? FACTOR : 1;
        assertThat(after.get(i).subgroup().orElseThrow().mean())
            .isCloseTo(before.get(i).subgroup().orElseThrow().mean() * factor, within(1e-12));
      }
      assertThat(faults("set")).isEmpty();
    }
  }

  @Test
  void theBoardAndSuspectRollsGoByTheCorrectedReadings() throws Exception {
    SampleRun run = run("shrink-in-control");
    try (TestPlant test = plant("board", run)) {
      double before = lastMean(test);
      test.plant().rescaling().apply(order(test, run, middle(run), LimitsToo.FLAG));
      assertThat(lastMean(test)).isCloseTo(before * FACTOR, within(1e-12));
    }
  }

  private static double lastMean(TestPlant test) {
    return new BoardReader(test.plant())
        .read().lines().get(0).characteristics().stream()
            .filter(state -> state.characteristic().position() == CORE)
            .findFirst()
            .flatMap(Board.CharacteristicState::last)
            .orElseThrow()
            .mean();
  }

  private Rescaling order(TestPlant test, SampleRun run, Instant from, LimitsToo limits) {
    GaugeDesk desk = test.plant().gauges();
    Word word = new Word("Kim", "checked on the reference piece", test.plant().clock().instant());
    desk.keep(new Gauge("G-1", 50, 0.6), word);
    String layer = run.structure().reported().get(CORE - 1).name();
    PieceReadings piece =
        new PieceReadings(
            new ReferencePiece("R-51", 51, 0.5, 2, "HDPE", "contact gauge"),
            Kind.THICKNESS,
            List.of(50.0, 50.0, 50.0));
    long id =
        desk.keep(
                new Measured(
                    new Subject("G-1", run.structure().code(), layer, "HDPE"),
                    Velocity.of(2430),
                    List.of(piece),
                    Optional.empty()),
                word)
            .id();
    return new Rescaling(
        run.line(), run.structure().code(), CORE, id, from, Temperature.LEFT_OUT, limits, word);
  }

  private static Word word(String reason) {
    return new Word("Kim", reason, NOW.plusSeconds(90));
  }

  private static List<FigureRow> rows(TestPlant test, SampleRun run, int position) {
    Series series = new Series(run.line(), run.structure().code(), position);
    return test.plant().store().read(tables -> tables.figures().within(series, Span.always()));
  }

  private static List<LimitsVersion> limits(TestPlant test, SampleRun run) {
    Series series = new Series(run.line(), run.structure().code(), CORE);
    return test.plant().store().read(tables -> tables.limits().of(series));
  }

  private static Set<Integer> otherwise(TestPlant test, SampleRun run, int position) {
    Series series = new Series(run.line(), run.structure().code(), position);
    return test.plant()
        .store()
        .read(tables -> ScaledLimits.of(tables, series).otherwise(tables.limits().of(series)));
  }

  private static List<String> signals(TestPlant test, SampleRun run) {
    return test.picture().stream()
        .filter(line -> line.startsWith(CORE + " ") && line.contains("Signal["))
        .toList();
  }

  private static List<Sample> exported(TestPlant test, SampleRun run) {
    List<SampleKey> keys = run.samples().stream().map(Sample::key).toList();
    return test.plant()
        .store()
        .read(
            tables ->
                keys.stream()
                    .map(key -> tables.samples().find(key).orElseThrow().sample())
                    .toList());
  }

  private List<String> faults(String name) {
    Path data = folder.resolve(name);
    try (StoreLook look = StoreLook.at(data, database.url(data))) {
      return StoredCheck.of(look).faults();
    }
  }

  private static Instant middle(SampleRun run) {
    return run.samples().get((run.samples().size() + 1) / 2).takenAt();
  }

  private TestPlant plant(String name, SampleRun run) throws Exception {
    TestPlant test = empty(name, run);
    test.read("readings.csv", run.files().get("readings.csv"));
    test.freeze(run.line(), run.structure().code());
    return test;
  }

  private TestPlant empty(String name, SampleRun run) throws Exception {
    Path data = Files.createDirectories(folder.resolve(name));
    TestPlant test = new TestPlant(database, data, NOW);
    test.plant().learnStructures("structures.yaml", run.files().get("structures.yaml"));
    return test;
  }

  private static List<String> pieces(SampleRun run, Random random) {
    String text = new String(run.files().get("readings.csv"), StandardCharsets.UTF_8);
    List<String> lines = text.lines().toList();
    int rowsInSample = (lines.size() - 1) / run.samples().size();
    List<String> pieces = new ArrayList<>();
    int to = 1 + 25 * rowsInSample;
    for (int from = 1; from < lines.size(); from = to, to = next(to, lines, random)) {
      pieces.add(lines.get(0) + "\n" + String.join("\n", lines.subList(from, to)) + "\n");
    }
    return pieces;
  }

  private static int next(int to, List<String> lines, Random random) {
    return Math.min(lines.size(), to + 1 + random.nextInt(200));
  }

  private static SampleRun run(String name) {
    return SampleRuns.all().stream()
        .filter(run -> run.folder().equals(name))
        .findFirst()
        .orElseThrow();
  }
}
