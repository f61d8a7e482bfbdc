package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.access.MovedClock;
import dev.filmward.store.TestDatabase;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** What was made is judged by the specification that held then, and charts have both. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class EarlierSpecsTest {
  private static final String SERIES =
      "/api/v1/series?line=Blown%201&structure=DUO-50&kind=layer&position=1";

  /** Of the skin alone; it is made 2 um too thin, at 17.5 to 18.5 um. */
  private static final String TIGHTER =
      SmallFilm.STRUCTURES.replace(
          "lower: 17 um\n        upper: 23 um", "lower: 19 um\n        upper: 22 um");

  @Parameter private TestDatabase database;
  private final MovedClock clock = new MovedClock(ServedPlant.NOW);
  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(database, folder, clock).withFrozenLimits();
    api = served.api();
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 30, 2));
  }

  @AfterEach
  void stop() {
    served.close();
  }

  private void tighten() {
    api.send(api.change("/api/v1/structures?name=a.yaml&why=asked", "application/yaml", TIGHTER));
  }

  private void tightenAndWidenAgain() {
    tighten();
    api.upload("since.csv", ServedPlant.FILM.thinnerSkin(30, 50, 2));
    clock.pass(Duration.ofMinutes(25));
    api.send(
        api.change(
            "/api/v1/structures?name=a.yaml&why=asked", "application/yaml", SmallFilm.STRUCTURES));
    api.upload("wide.csv", ServedPlant.FILM.usual(56, 80));
  }

  @Test
  void aSeriesHasWhatWasAskedInTheOrderOfTime() {
    assertThat(api.get(SERIES).json().get("specs")).hasSize(1);
    tighten();
    JsonNode series = api.get(SERIES).json();
    JsonNode specs = series.get("specs");
    assertThat(specs).hasSize(2);
    assertThat(specs.get(0).get("from").isNull()).isTrue();
    assertThat(specs.get(0).at("/spec/lower").asDouble()).isEqualTo(17);
    assertThat(specs.get(1).get("from").asLong()).isEqualTo(ServedPlant.NOW.toEpochMilli());
    assertThat(specs.get(1).get("spec")).isEqualTo(series.get("spec"));
    assertThat(series.at("/spec/lower").asDouble()).isEqualTo(19);
    assertThat(api.get(SERIES.replace("position=1", "position=2")).json().get("specs")).hasSize(1);
  }

  private static List<Double> skins(int from, int to) {
    return ServedPlant.FILM
        .thinnerSkin(from, to, 2)
        .lines()
        .skip(1)
        .map(row -> Double.valueOf(row.split(",", -1)[6]))
        .toList();
  }

  /** As ISO 22514-2 has it: the nearer limit, over three standard deviations of all readings. */
  private static double ppk(List<Double> readings, double lower, double upper) {
    DescriptiveStatistics figures = new DescriptiveStatistics();
    readings.forEach(figures::addValue);
    double mean = figures.getMean();
    return Math.min(upper - mean, mean - lower) / (3 * figures.getStandardDeviation());
  }

  @Test
  void capabilityIsOfWhatWasMadeUnderTheLastSpecification() {
    tighten();
    JsonNode whole = api.get(SERIES).json();
    assertThat(whole.at("/capability/spec/lower").asDouble())
        .as("nothing was made since it changed")
        .isEqualTo(17);
    assertThat(whole.at("/capability/readings").asInt()).isEqualTo(30 * SmallFilm.LANES);
    api.upload("since.csv", ServedPlant.FILM.thinnerSkin(30, 50, 2));
    JsonNode since = api.get(SERIES).json();
    assertThat(since.get("readings").asInt()).isEqualTo(50 * SmallFilm.LANES);
    assertThat(since.at("/capability/readings").asInt()).isEqualTo(20 * SmallFilm.LANES);
    assertThat(since.at("/capability/from").asLong()).isEqualTo(ServedPlant.NOW.toEpochMilli());
    assertThat(since.at("/capability/spec")).isEqualTo(since.get("spec"));
    assertThat(since.at("/capability/ppk").asDouble())
        .isCloseTo(ppk(skins(30, 50), 19, 22), within(1e-6));
    JsonNode look = api.get(SERIES.replace("series?", "series/look?")).json();
    assertThat(look.at("/spread/readings").asInt()).isEqualTo(50 * SmallFilm.LANES);
    assertThat(look.at("/spread/below").asInt())
        .as("17.5 to 18.5 um are outside from 19 um on, and were inside from 17 um on")
        .isEqualTo(20 * SmallFilm.LANES);
  }

  @Test
  void aWeekIsJudgedInPartsByWhatWasAskedThen() {
    tighten();
    api.upload("since.csv", ServedPlant.FILM.thinnerSkin(30, 50, 2));
    JsonNode film =
        api.get("/api/v1/reports/week?week=2026-W47&line=Blown%201&structure=DUO-50")
            .json()
            .at("/report/films/0");
    JsonNode skin = film.at("/characteristics/0");
    assertThat(skin.get("since").asText()).isEqualTo(ServedPlant.NOW.toString());
    assertThat(skin.get("readings").asInt()).isEqualTo(20 * SmallFilm.LANES);
    assertThat(skin.at("/individual/lower").asDouble()).isEqualTo(19);
    assertThat(skin.get("observedPpm").asDouble()).isEqualTo(1e6);
    assertThat(skin.at("/index/ppk").asDouble())
        .isCloseTo(ppk(skins(30, 50), 19, 22), within(1e-6));
    assertThat(skin.get("chart")).as("the chart is of the whole week").hasSize(50);
    JsonNode earlier = skin.get("earlier");
    assertThat(earlier).hasSize(1);
    assertThat(earlier.at("/0/from").isNull()).isTrue();
    assertThat(earlier.at("/0/individual/lower").asDouble()).isEqualTo(17);
    assertThat(earlier.at("/0/readings").asInt()).isEqualTo(30 * SmallFilm.LANES);
    assertThat(earlier.at("/0/observedPpm").asDouble()).isZero();
    JsonNode seal = film.at("/characteristics/1");
    assertThat(seal.get("earlier")).as("of the seal the same is asked").isEmpty();
    assertThat(seal.get("readings").asInt()).isEqualTo(50 * SmallFilm.LANES);
    assertThat(film.get("verdict").asText()).isEqualTo("BELOW");
  }

  @Test
  void paperSaysBothPartsAndWhyTheVerdictIsWhatItIs() {
    tightenAndWidenAgain();
    String english = paper("en");
    assertThat(english)
        .contains("Before the specification changed", "19.00–22.00", "other specification")
        .containsPattern("Before the specification changed, Skin had a Ppk of [−-]?\\d");
    assertThat(paper("de")).contains("Bevor sich die Spezifikation änderte", "19,00–22,00");
  }

  private String paper(String language) {
    return api.get(
            "/api/v1/reports/file?week=2026-W47&line=Blown%201&structure=DUO-50&form=html&language="
                + language)
        .text();
  }

  @Test
  void aSpecificationThatWasWidenedDoesNotUndoWhatWasBelowIt() {
    tightenAndWidenAgain();
    JsonNode film =
        api.get("/api/v1/reports/week?week=2026-W47&line=Blown%201&structure=DUO-50")
            .json()
            .at("/report/films/0");
    JsonNode skin = film.at("/characteristics/0");
    assertThat(skin.get("earlier")).hasSize(2);
    assertThat(skin.at("/index/standing").asText()).isNotEqualTo("BELOW");
    assertThat(skin.at("/earlier/1/index/standing").asText()).isEqualTo("BELOW");
    assertThat(film.get("verdict").asText()).isEqualTo("BELOW");
    assertThat(film.get("acts").findValuesAsText("kind")).contains("BELOW", "OUT_OF_SPEC");
  }

  @Test
  void rollsThatWereMadeBeforeAreCountedByWhatHeldThen() {
    JsonNode before = api.get("/api/v1/alarms/1/rolls").json();
    assertThat(before.findValue("outOfSpec").asInt()).isZero();
    tighten();
    assertThat(api.get("/api/v1/alarms/1/rolls").json()).isEqualTo(before);
  }
}
