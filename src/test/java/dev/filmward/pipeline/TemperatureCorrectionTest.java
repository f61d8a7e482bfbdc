package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.gauge.Gauge;
import dev.filmward.gauge.calibration.Calibration.Subject;
import dev.filmward.gauge.calibration.PieceReadings;
import dev.filmward.gauge.calibration.PieceReadings.Kind;
import dev.filmward.gauge.calibration.ReferencePiece;
import dev.filmward.gauge.calibration.Scaling.Word;
import dev.filmward.gauge.calibration.TemperatureModel;
import dev.filmward.gauge.calibration.Velocity;
import dev.filmward.pipeline.GaugeDesk.Measured;
import dev.filmward.pipeline.Rescaling.LimitsToo;
import dev.filmward.pipeline.Rescaling.Temperature;
import dev.filmward.store.CorrectedReading;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.StoreLook;
import dev.filmward.store.TestDatabase;
import dev.filmward.subgroup.Subgroup;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * A gauge with one velocity reads warm film too thick, since sound is slower in it. Expectations
 * are arithmetic: thickness = velocity times time of flight / 2, the velocity linear in the
 * temperature.
 */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class TemperatureCorrectionTest {
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");
  private static final Instant FROM = Instant.parse("2026-11-18T00:00:00Z");
  private static final String LINE = "Blown 2";
  private static final String FILM = "SHR-60";
  private static final int CORE = 2;
  private static final String HEADER =
      "taken_at,line,structure,roll,sample,lane,layer,thickness_um,temperature_c\n";

  /** A piece of 51 um that reads 50 um at 23 degrees; 0.4 % less velocity by kelvin. */
  private static final double FACTOR = 51.0 / 50.0;

  private static final TemperatureModel MODEL = new TemperatureModel(23, -0.4);

  @Parameter private TestDatabase database;
  @TempDir private Path folder;

  /** At 33 degrees sound is 4 % slower than at 23. */
  @Test
  void eachLaneIsCorrectedByItsOwnTemperature() throws Exception {
    try (TestPlant test = plant("lanes")) {
      test.read("a.csv", HEADER + row("S1", 1, 24, "23") + row("S1", 2, 24, "33"));
      test.read("b.csv", HEADER + row("S2", 1, 24, "13") + row("S2", 2, 24, ""));
      Sample exported = sample(test, "S1");
      test.plant().rescaling().apply(order(test, Temperature.CORRECTS, LimitsToo.FLAG));
      assertThat(core(test, "S1").mean()).isCloseTo(24 * FACTOR * (1 + 0.96) / 2, within(1e-12));
      assertThat(core(test, "S2").mean())
          .as("13 degrees: 4 % faster; where it was not measured: as if at the calibration's")
          .isCloseTo(24 * FACTOR * (1.04 + 1) / 2, within(1e-12));
      assertThat(sample(test, "S1")).isEqualTo(exported);
      assertThat(exported.celsius(1)).hasValue(33);
      assertThat(faults("lanes")).isEmpty();
    }
  }

  @Test
  void temperaturesThatWereLeftOutChangeNothing() throws Exception {
    try (TestPlant test = plant("left")) {
      test.read("a.csv", HEADER + row("S1", 1, 24, "23") + row("S1", 2, 24, "33"));
      test.plant().rescaling().apply(order(test, Temperature.LEFT_OUT, LimitsToo.FLAG));
      assertThat(core(test, "S1").mean()).isCloseTo(24 * FACTOR, within(1e-12));
    }
  }

  /** Whether samples came before the decision or after it, and in what pieces, is no matter. */
  @Test
  void aStreamEqualsABatch() throws Exception {
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    StringBuilder all = new StringBuilder(HEADER);
    try (TestPlant stream = plant("stream");
        TestPlant batch = plant("batch")) {
      for (int i = 0; i < 40; i++) {
        StringBuilder lanes = new StringBuilder();
        for (int lane = 1; lane <= 3; lane++) {
          String degrees =
              random.nextInt(4) == 0 ? "" : String.valueOf(20 + random.nextInt(100) / 10.0);
          lanes.append(row("S" + i, lane, 23 + random.nextInt(200) / 100.0, degrees));
        }
        all.append(lanes);
        stream.read("piece.csv", HEADER + lanes);
        if (i == 20) {
          stream.plant().rescaling().apply(order(stream, Temperature.CORRECTS, LimitsToo.FLAG));
          stream.restart();
        }
      }
      batch.read("all.csv", all.toString());
      batch.plant().rescaling().apply(order(batch, Temperature.CORRECTS, LimitsToo.FLAG));
      assertThat(stream.picture()).as("seed %d", seed).isEqualTo(batch.picture());
      assertThat(faults("stream")).isEmpty();
    }
  }

  @Test
  void anotherTemperatureIsACorrectionAndTheSameFileTwiceIsNone() throws Exception {
    try (TestPlant test = plant("again")) {
      String file = HEADER + row("S1", 1, 24, "23") + row("S1", 2, 24, "");
      test.read("a.csv", file);
      test.read("a.csv", file);
      assertThat(corrections(test)).isEmpty();
      test.plant().rescaling().apply(order(test, Temperature.CORRECTS, LimitsToo.FLAG));
      var entry = test.read("edited.csv", HEADER + row("S1", 1, 24, "33") + row("S1", 2, 24, "23"));
      assertThat(entry.counts().arrivals().known()).as("the readings themselves").isEqualTo(2);
      assertThat(corrections(test)).hasSize(1);
      CorrectedReading one = corrections(test).get(0);
      assertThat(one.isOfTemperature()).isTrue();
      assertThat(one.place().lane()).isEqualTo(1);
      assertThat(one.oldUm()).isEqualTo(23);
      assertThat(one.newUm()).isEqualTo(33);
      assertThat(core(test, "S1").mean()).isCloseTo(24 * FACTOR * (0.96 + 1) / 2, within(1e-12));
    }
  }

  @Test
  void takenBackReadingsAreAsExported() throws Exception {
    try (TestPlant test = plant("back")) {
      test.read("a.csv", HEADER + row("S1", 1, 24, "23") + row("S1", 2, 25, "33"));
      List<String> before = test.picture();
      test.plant().rescaling().apply(order(test, Temperature.CORRECTS, LimitsToo.FLAG));
      assertThat(test.picture()).isNotEqualTo(before);
      test.plant()
          .rescaling()
          .takeBack(
              new Series(LINE, FILM, CORE), 1, LimitsToo.FLAG, word("the thermometer was off"));
      assertThat(test.picture()).isEqualTo(before);
    }
  }

  @Test
  void aPreviewSaysHowManySamplesHaveATemperature() throws Exception {
    try (TestPlant test = plant("preview")) {
      test.read("a.csv", HEADER + row("S1", 1, 24, "33") + row("S2", 1, 24, ""));
      RescalingPreview preview =
          test.plant().rescaling().preview(order(test, Temperature.CORRECTS, LimitsToo.FLAG));
      assertThat(preview.samples()).isEqualTo(2);
      assertThat(preview.withTemperature()).isEqualTo(1);
      assertThat(preview.means().get(0).after().orElseThrow())
          .isCloseTo(24 * FACTOR * (0.96 + 1) / 2, within(1e-12));
    }
  }

  @Test
  void limitsThatCannotBeCarriedAlongAreFlaggedOrTheOrderIsRefused() throws Exception {
    try (TestPlant test = plant("limits")) {
      StringBuilder csv = new StringBuilder(HEADER);
      for (int i = 0; i < 30; i++) {
        csv.append(row("S" + i, 1, 24 + i % 3 * 0.1, "33"));
        csv.append(row("S" + i, 2, 24 + i % 2 * 0.1, "33"));
      }
      test.read("a.csv", csv.toString());
      test.plant().rescaling().apply(order(test, Temperature.LEFT_OUT, LimitsToo.FLAG));
      test.clockAt(NOW.plusSeconds(60));
      test.freeze(LINE, FILM);
      test.clockAt(NOW.plusSeconds(120));
      assertThatThrownBy(
              () ->
                  test.plant()
                      .rescaling()
                      .apply(order(test, Temperature.CORRECTS, LimitsToo.CARRY)))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("cannot be carried along");
      Series core = new Series(LINE, FILM, CORE);
      assertThat(test.plant().rescaling().of(LINE, FILM).of(CORE).versions()).hasSize(1);
      test.plant().rescaling().apply(order(test, Temperature.CORRECTS, LimitsToo.FLAG));
      Set<Integer> otherwise =
          test.plant()
              .store()
              .read(tables -> ScaledLimits.of(tables, core).otherwise(tables.limits().of(core)));
      assertThat(otherwise)
          .as("the velocity is the same, the temperature is not")
          .containsExactly(1);
    }
  }

  @Test
  void aCalibrationWithoutItsTemperatureCannotCorrectByIt() throws Exception {
    try (TestPlant test = plant("without")) {
      test.read("a.csv", HEADER + row("S1", 1, 24, "33"));
      long id = calibrate(test, Optional.empty());
      Rescaling order =
          new Rescaling(
              LINE, FILM, CORE, id, FROM, Temperature.CORRECTS, LimitsToo.FLAG, word("warm film"));
      assertThatThrownBy(() -> test.plant().rescaling().apply(order))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("does not say at which temperature");
    }
  }

  private static String row(String sample, int lane, double um, String celsius) {
    int number = Integer.parseInt(sample.substring(1));
    Instant at = Instant.parse("2026-11-19T06:00:00Z").plusSeconds(600L * number);
    return at + "," + LINE + "," + FILM + ",R1," + sample + "," + lane + ",Core," + um + ","
        + celsius + "\n";
  }

  private Rescaling order(TestPlant test, Temperature temperature, LimitsToo limits) {
    long id = calibrate(test, Optional.of(MODEL));
    return new Rescaling(LINE, FILM, CORE, id, FROM, temperature, limits, word(test, "warm film"));
  }

  private static long calibrate(TestPlant test, Optional<TemperatureModel> model) {
    GaugeDesk desk = test.plant().gauges();
    desk.keep(new Gauge("G-1", 50, 0.6), word("new"));
    PieceReadings piece =
        new PieceReadings(
            new ReferencePiece("R-51", 51, 0.5, 2, "HDPE", "contact gauge"),
            Kind.THICKNESS,
            List.of(50.0, 50.0, 50.0));
    return desk.keep(
            new Measured(
                new Subject("G-1", FILM, "Core", "HDPE"), Velocity.of(2430), List.of(piece), model),
            word("reference piece"))
        .id();
  }

  private static Word word(TestPlant test, String reason) {
    return new Word("Kim", reason, test.plant().clock().instant());
  }

  private static Word word(String reason) {
    return new Word("Kim", reason, NOW);
  }

  private static Sample sample(TestPlant test, String name) {
    SampleKey key = new SampleKey(LINE, FILM, "R1", name);
    return test.plant().store().read(tables -> tables.samples().find(key).orElseThrow().sample());
  }

  private static Subgroup core(TestPlant test, String name) {
    Series series = new Series(LINE, FILM, CORE);
    return test
        .plant()
        .store()
        .read(tables -> tables.figures().within(series, Span.always()))
        .stream()
        .filter(row -> row.key().sample().equals(name))
        .findFirst()
        .flatMap(row -> row.subgroup())
        .orElseThrow();
  }

  private static List<CorrectedReading> corrections(TestPlant test) {
    return test.plant().store().read(tables -> tables.corrections().ofProduction(LINE, FILM, 100));
  }

  private List<String> faults(String name) {
    Path data = folder.resolve(name);
    try (StoreLook look = StoreLook.at(data, database.url(data))) {
      return StoredCheck.of(look).faults();
    }
  }

  private TestPlant plant(String name) throws Exception {
    Path data = Files.createDirectories(folder.resolve(name));
    TestPlant test = new TestPlant(database, data, NOW);
    Path structures = Path.of("sample-runs/shrink-in-control/structures.yaml");
    test.plant().learnStructures("structures.yaml", Files.readAllBytes(structures));
    return test;
  }
}
