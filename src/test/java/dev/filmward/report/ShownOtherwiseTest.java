package dev.filmward.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.gauge.Gauge;
import dev.filmward.gauge.calibration.Calibration.Subject;
import dev.filmward.gauge.calibration.PieceReadings;
import dev.filmward.gauge.calibration.PieceReadings.Kind;
import dev.filmward.gauge.calibration.ReferencePiece;
import dev.filmward.gauge.calibration.Scaling.Word;
import dev.filmward.gauge.calibration.TemperatureModel;
import dev.filmward.gauge.calibration.Velocity;
import dev.filmward.pipeline.GaugeDesk.Measured;
import dev.filmward.pipeline.Rescaling;
import dev.filmward.pipeline.Rescaling.LimitsToo;
import dev.filmward.pipeline.Rescaling.Temperature;
import dev.filmward.pipeline.TestPlant;
import dev.filmward.report.FilmWeek.ScalingWeek;
import dev.filmward.report.WeekReader.Scope;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A report says at which velocity readings are shown, since when, and which limits do not fit. */
class ShownOtherwiseTest {
  private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
  private static final Path RUN = Path.of("sample-runs/shrink-in-control");
  private static final Instant FROM = Instant.parse("2026-11-19T00:00:00Z");

  /** A piece of 51 um that reads 50 um. */
  private static final double FACTOR = 51.0 / 50.0;

  @TempDir private Path folder;

  @Test
  void theWeekInWhichReadingsWereGivenAnotherVelocityAndTheOneAfterSaySo() throws Exception {
    try (TestPlant plant = new TestPlant(folder, Instant.parse("2026-11-30T12:00:00Z"))) {
      plant.plant().learnStructures("s.yaml", Files.readAllBytes(RUN.resolve("structures.yaml")));
      plant.read("readings.csv", Files.readString(RUN.resolve("readings.csv")));
      plant.freeze("Blown 2", "SHR-60");
      FilmWeek before = film(plant, "2026-W47");
      assertThat(before.gauge().scalings()).isEmpty();
      assertThat(before.gauge().limitsOtherwise()).isEmpty();
      plant.clockAt(Instant.parse("2026-11-30T12:01:00Z"));
      rescale(plant);

      FilmWeek now = film(plant, "2026-W47");
      assertThat(now.gauge().scalings()).hasSize(1);
      ScalingWeek shown = now.gauge().scalings().get(0);
      assertThat(shown.from()).isEqualTo(FROM);
      assertThat(shown.layer()).isEqualTo("Core");
      assertThat(shown.position()).isEqualTo(2);
      assertThat(shown.factor()).isCloseTo(FACTOR, within(1e-12));
      assertThat(shown.velocityMps()).isCloseTo(2430 * FACTOR, within(1e-9));
      assertThat(shown.percentPerKelvin()).hasValue(-0.4);
      assertThat(shown.atC()).hasValue(23);
      assertThat(shown.reason()).isEqualTo("reference piece");
      assertThat(now.gauge().limitsOtherwise()).containsExactly(1);
      List<ReportChange> changes = ReportDiff.of(fromBefore(plant), report(plant, "2026-W47"));
      assertThat(changes).extracting(ReportChange::figure).contains("scalings");

      plant.read(
          "next.csv",
          Files.readString(RUN.resolve("readings.csv")).replace("2026-11-1", "2026-11-2"));
      assertThat(film(plant, "2026-W48").gauge().scalings())
          .as("what holds when a week begins is its first")
          .extracting(ScalingWeek::from)
          .containsExactly(FROM);
    }
  }

  /** Reports that were issued before this was kept must still open. */
  @Test
  void aReportFromBeforeHasNone() throws Exception {
    try (TestPlant plant = new TestPlant(folder, Instant.parse("2026-11-30T12:00:00Z"))) {
      plant.plant().learnStructures("s.yaml", Files.readAllBytes(RUN.resolve("structures.yaml")));
      plant.read("readings.csv", Files.readString(RUN.resolve("readings.csv")));
      WeeklyReport back = fromBefore(plant);
      assertThat(back.films().get(0).gauge().scalings()).isEmpty();
      assertThat(back.films().get(0).gauge().limitsOtherwise()).isEmpty();
      assertThat(back.films().get(0).characteristics())
          .isNotEmpty()
          .allMatch(each -> each.since().isEmpty() && each.earlier().isEmpty())
          .allMatch(each -> each.specSteps().isEmpty())
          .flatExtracting(CharacteristicWeek::trend)
          .allMatch(week -> week.individual().isEmpty());
    }
  }

  /** Without what later versions keep besides. */
  private static WeeklyReport fromBefore(TestPlant plant) throws IOException {
    ObjectNode json = (ObjectNode) ReportJson.tree(report(plant, "2026-W47"));
    ObjectNode gauge = (ObjectNode) json.at("/films/0/gauge");
    gauge.remove(List.of("scalings", "limitsOtherwise"));
    for (JsonNode characteristic : json.at("/films/0/characteristics")) {
      ((ObjectNode) characteristic).remove(List.of("since", "earlier"));
      characteristic.get("trend").forEach(week -> ((ObjectNode) week).remove("individual"));
    }
    return ReportJson.read(json.toString().getBytes(StandardCharsets.UTF_8));
  }

  private static void rescale(TestPlant plant) {
    Word word = new Word("Kim", "reference piece", plant.plant().clock().instant());
    plant.plant().gauges().keep(new Gauge("G-1", 50, 0.6), word);
    long id =
        plant
            .plant()
            .gauges()
            .keep(
                new Measured(
                    new Subject("G-1", "SHR-60", "Core", "HDPE"),
                    Velocity.of(2430),
                    List.of(
                        new PieceReadings(
                            new ReferencePiece("R-51", 51, 0.5, 2, "HDPE", "contact gauge"),
                            Kind.THICKNESS,
                            List.of(50.0, 50.0, 50.0))),
                    Optional.of(new TemperatureModel(23, -0.4))),
                word)
            .id();
    plant
        .plant()
        .rescaling()
        .apply(
            new Rescaling(
                "Blown 2", "SHR-60", 2, id, FROM, Temperature.CORRECTS, LimitsToo.FLAG, word));
  }

  private static FilmWeek film(TestPlant plant, String week) {
    return report(plant, week).films().get(0);
  }

  private static WeeklyReport report(TestPlant plant, String week) {
    return new WeekReader(plant.plant(), "test")
        .read(ReportWeek.parse(week, ZONE), Scope.ALL, ReportSettings.USUAL);
  }
}
