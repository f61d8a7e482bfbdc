package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.store.TestDatabase;
import java.nio.file.Path;
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
  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(database, folder).withFrozenLimits();
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

  @Test
  void rollsThatWereMadeBeforeAreCountedByWhatHeldThen() {
    JsonNode before = api.get("/api/v1/alarms/1/rolls").json();
    assertThat(before.findValue("outOfSpec").asInt()).isZero();
    tighten();
    assertThat(api.get("/api/v1/alarms/1/rolls").json()).isEqualTo(before);
  }
}
