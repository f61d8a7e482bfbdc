package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the routes give, over HTTP, of a film whose figures are worked out by hand. */
class WebServerTest {
  /** Factor of the limits of the mean for five readings, printed in ASTM MNL 7 to three places. */
  private static final double A2 = 0.577;

  /** The same for the upper limit of the range. */
  private static final double D4 = 2.114;

  private static final double HALF_OF_LAST_PLACE = 0.0005 * SmallFilm.RANGE_UM;

  private static final String LINE =
      """
      {"line": "Blown 1", "structure": "DUO-50\"""";

  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder);
    api = served.api();
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void anEmptyPlantHasAnEmptyBoard() {
    JsonNode board = api.get("/api/v1/board").json();
    assertThat(board.get("zone").asText()).isEqualTo("Europe/Berlin");
    assertThat(board.get("now").asText()).isEqualTo("2026-11-20T13:00:00+01:00");
    assertThat(board.get("demo").asBoolean()).isFalse();
    assertThat(board.get("lines")).isEmpty();
    assertThat(api.get("/api/v1/alarms").json().get("alarms")).isEmpty();
    assertThat(api.get("/api/v1/files").json().get("files")).isEmpty();
  }

  @Test
  void uploadingCountsRowsReadingsAndWhatIsNew() {
    String csv = ServedPlant.FILM.usual(0, 2).replaceFirst("20\\.100", "20,1x");
    Answer answer = api.upload("first.csv", csv);
    assertThat(answer.status()).isEqualTo(200);
    // a comma in a cell makes a field too many, so that the row costs both of its readings
    expectCounts(answer.json(), 10, 20 - 2, 2);
    assertThat(answer.json().get("source").asText()).isEqualTo("upload");
    assertThat(api.get("/api/v1/files").json().get("files").get(0)).isEqualTo(answer.json());
  }

  private static void expectCounts(JsonNode file, int rows, int readings, int quarantined) {
    assertThat(file.get("rows").asInt()).isEqualTo(rows);
    assertThat(file.get("readings").asInt()).isEqualTo(readings);
    assertThat(file.get("new").asInt()).isEqualTo(readings);
    assertThat(file.get("missing").asInt()).isZero();
    assertThat(file.get("quarantined").asInt()).isEqualTo(quarantined);
  }

  @Test
  void theQuarantineShowsWhereWhatAndTheRawLine() {
    String csv = ServedPlant.FILM.usual(0, 1).replace("20.300", "thick");
    JsonNode file = api.upload("faulty.csv", csv).json();
    JsonNode quarantine = api.get("/api/v1/files/" + file.get("id") + "/quarantine").json();
    assertThat(quarantine.get("more").asInt()).isZero();
    assertThat(quarantine.get("rows")).hasSize(1);
    JsonNode row = quarantine.get("rows").get(0);
    assertThat(row.get("line").asInt()).isEqualTo(5);
    assertThat(row.get("column").asText()).isEqualTo("layer_1_um");
    assertThat(row.get("value").asText()).isEqualTo("thick");
    assertThat(row.get("reason").asText()).isNotBlank();
    assertThat(row.get("raw").asText()).endsWith(",4,thick,30.300");
  }

  @Test
  void theSameFileTwiceChangesNothing() {
    String csv = ServedPlant.FILM.usual(0, 25);
    api.upload("a.csv", csv);
    JsonNode before = api.series(1);
    JsonNode again = api.upload("copy of a.csv", csv).json();
    assertThat(again.get("new").asInt()).isZero();
    assertThat(again.get("corrected").asInt()).isZero();
    assertThat(again.get("known").asInt()).isEqualTo(25 * SmallFilm.LANES * 2);
    assertThat(api.series(1)).isEqualTo(before);
  }

  @Test
  void theBoardTellsHowALineIs() {
    served.withFrozenLimits();
    JsonNode line = api.get("/api/v1/board").json().get("lines").get(0);
    assertThat(line.get("line").asText()).isEqualTo("Blown 1");
    assertThat(line.get("structure").get("code").asText()).isEqualTo("DUO-50");
    assertThat(line.get("expectedEverySeconds").asDouble()).isEqualTo(60);
    // sample 24 of one a minute, of which sample 30 would be now
    assertThat(line.get("ageSeconds").asInt()).isEqualTo(6 * 60);
    assertThat(line.get("state").asText()).isEqualTo("stale");
    assertThat(line.get("limits").get("state").asText()).isEqualTo("frozen");
    assertThat(line.get("layers")).hasSize(2);
    JsonNode skin = line.get("layers").get(0);
    assertThat(skin.get("name").asText()).isEqualTo("Skin");
    assertThat(skin.get("mean").asDouble()).isCloseTo(20.1, within(1e-9));
    assertThat(skin.get("deviation").asDouble()).isCloseTo(0.1 / 20, within(1e-9));
    assertThat(skin.get("thinnest").get("lane").asInt()).isEqualTo(1);
    assertThat(skin.get("thinnest").get("um").asDouble()).isEqualTo(19.7);
    assertThat(skin.get("recent").get("mean")).hasSize(25);
    assertThat(line.get("total").get("mean").asDouble()).isCloseTo(50.2, within(1e-9));
  }

  @Test
  void limitsComeFromTheBaselineAndAreOnTrialUntilFrozen() {
    api.upload("baseline.csv", ServedPlant.FILM.usual(0, 25));
    expectLimits(api.series(1), "trial");
    Answer frozen = api.freeze();
    assertThat(frozen.json().get("version").asInt()).isEqualTo(1);
    assertThat(frozen.json().get("characteristics").asInt()).isEqualTo(2 + 1);
    expectLimits(api.series(1), "frozen");
    JsonNode listed =
        api.get("/api/v1/lines/Blown%201/limits?structure=DUO-50").json().get("limits");
    assertThat(listed).hasSize(3);
    assertThat(listed.findValuesAsText("author")).containsOnly("Kim");
    assertThat(listed.findValuesAsText("reason")).containsOnly("quiet start");
  }

  /** Thirteen means lie 0.1 um above the target and twelve as much below. */
  private static void expectLimits(JsonNode series, String state) {
    double centre = 20 + 0.1 / 25;
    JsonNode columns = series.get("columns");
    assertThat(columns.get("meanCentre").get(7).asDouble()).isCloseTo(centre, within(1e-9));
    assertThat(columns.get("meanUpper").get(7).asDouble())
        .isCloseTo(centre + A2 * SmallFilm.RANGE_UM, within(HALF_OF_LAST_PLACE));
    assertThat(columns.get("meanLower").get(7).asDouble())
        .isCloseTo(centre - A2 * SmallFilm.RANGE_UM, within(HALF_OF_LAST_PLACE));
    assertThat(columns.get("rangeUpper").get(7).asDouble())
        .isCloseTo(D4 * SmallFilm.RANGE_UM, within(HALF_OF_LAST_PLACE));
    assertThat(series.get("limits")).hasSize(1);
    assertThat(series.get("limits").get(0).get("state").asText()).isEqualTo(state);
    assertThat(series.get("stable").asBoolean()).isTrue();
  }

  @Test
  void aSeriesHasColumnsOfOneLengthWithNullForWhatWasNotMeasured() {
    api.upload("a.csv", ServedPlant.FILM.usual(0, 3));
    api.upload("b.csv", ServedPlant.FILM.withoutSkin(3));
    JsonNode columns = api.series(1).get("columns");
    columns.forEach(column -> assertThat(column).hasSize(4));
    assertThat(columns.get("mean").get(3).isNull()).isTrue();
    assertThat(columns.get("size").get(3).asInt()).isZero();
    assertThat(columns.get("takenAt").get(3).asLong())
        .isEqualTo(ServedPlant.FILM.takenAt(3).toEpochMilli());
    assertThat(columns.get("sample").get(3).asText()).isEqualTo("S00003");
  }

  @Test
  void aSpanOfTimeHasBothItsEnds() {
    api.upload("a.csv", ServedPlant.FILM.usual(0, 10));
    String span =
        "&from=%d&to=%d"
            .formatted(
                ServedPlant.FILM.takenAt(2).toEpochMilli(),
                ServedPlant.FILM.takenAt(5).toEpochMilli());
    String address = "/api/v1/series?line=Blown%201&structure=DUO-50&kind=layer&position=2" + span;
    JsonNode samples = api.get(address).json().get("columns").get("sample");
    assertThat(samples)
        .extracting(JsonNode::asText)
        .containsExactly("S00002", "S00003", "S00004", "S00005");
  }

  @Test
  void aProposalShowsOldAgainstNewAndChangesNothing() {
    served.withFrozenLimits();
    JsonNode before = api.get("/api/v1/lines/Blown%201/limits?structure=DUO-50").json();
    JsonNode proposal = api.post("/api/v1/limits/proposal", LINE + "}").json();
    JsonNode skin = proposal.get("characteristics").get(0);
    assertThat(skin.get("current").get("version").asInt()).isEqualTo(1);
    assertThat(skin.get("proposed").get("centre").asDouble())
        .isCloseTo(20 + 0.1 / 25, within(1e-9));
    assertThat(skin.get("autocorrelation").get("lag1").asDouble()).isNegative();
    assertThat(skin.get("autocorrelation").get("residuals")).hasSize(25);
    assertThat(proposal.get("alarmsUnderCurrent")).isEmpty();
    assertThat(api.get("/api/v1/lines/Blown%201/limits?structure=DUO-50").json()).isEqualTo(before);
  }

  @Test
  void aVersionTellsWhichSamplesWereLeftOutAndWhy() {
    api.upload("baseline.csv", ServedPlant.FILM.usual(0, 25));
    String excluded =
        """
        , "reason": "quiet", "excluded":
          [{"roll": "R1", "sample": "S00003", "cause": "probe lifted off"}]}""";
    assertThat(api.post("/api/v1/limits/freeze", LINE + excluded).status()).isEqualTo(200);
    JsonNode version =
        api.get("/api/v1/lines/Blown%201/limits?structure=DUO-50").json().get("limits").get(0);
    assertThat(version.get("excluded").asInt()).isEqualTo(1);
    assertThat(version.get("exclusions")).hasSize(1);
    assertThat(version.get("exclusions").get(0).get("sample").asText()).isEqualTo("S00003");
    assertThat(version.get("exclusions").get(0).get("cause").asText())
        .isEqualTo("probe lifted off");
  }

  @Test
  void limitsThatWereRetiredAfterTheLastSampleAreNotShownAsLimitsOfNow() {
    served.withFrozenLimits();
    String retire =
        """
        , "version": 1, "state": "retired", "reason": "new die"}""";
    assertThat(api.post("/api/v1/limits/state", LINE + retire).status()).isEqualTo(200);
    JsonNode line = api.get("/api/v1/board").json().get("lines").get(0);
    assertThat(line.get("limits").get("state").asText()).isEqualTo("retired");
    assertThat(line.get("layers").get(0).get("limits").isNull()).isTrue();
    JsonNode series = api.series(1);
    assertThat(series.get("limits").get(0).get("retiredAt").asText())
        .isEqualTo("2026-11-20T13:00:00+01:00");
    // the samples before it were judged by them
    assertThat(series.get("columns").get("meanUpper").get(24).isNull()).isFalse();
  }

  @Test
  void aDatabaseThatIsGoneIsAnsweredWithWords() {
    served.withFrozenLimits().loseTheDatabase();
    Answer answer = api.get("/api/v1/board");
    assertThat(answer.status()).isEqualTo(503);
    assertThat(answer.json().get("error").get("what").asText()).contains("database");
    assertThat(api.upload("more.csv", ServedPlant.FILM.usual(25, 26)).status()).isEqualTo(503);
  }

  @Test
  void causesAreThereToChooseFrom() {
    JsonNode causes = api.get("/api/v1/causes").json().get("causes");
    assertThat(causes.findValuesAsText("words")).doesNotHaveDuplicates().hasSizeGreaterThan(5);
    assertThat(causes.findValuesAsText("standing")).containsOnly("active");
  }

  @Test
  void structuresAreLearntOverTheWire() {
    String yaml = SmallFilm.STRUCTURES.replace("DUO-50", "DUO-51");
    Answer answer = api.send(api.change("/api/v1/structures?name=more.yaml", "text/yaml", yaml));
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.json().get("structures"))
        .extracting(JsonNode::asText)
        .containsExactlyInAnyOrder("DUO-50", "DUO-51");
  }
}
