package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.people.Role;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tests are chosen, priced and kept over HTTP. */
class TestsRoutesTest {
  private static final String TESTS = "/api/v1/lines/Blown%201/tests?structure=DUO-50";
  private static final String LIMIT_ONLY =
      """
      [{"chart": "xbar", "test": "beyond-limit"}]""";

  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder).withFrozenLimits();
    api = served.api();
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void untilSomebodyChoosesTheStandardTestsRaiseAlarms() {
    JsonNode tests = api.get(TESTS).json();
    assertThat(tests.get("versions")).isEmpty();
    assertThat(tests.get("characteristics")).hasSize(2 + 1);
    JsonNode skin = tests.get("characteristics").get(0);
    assertThat(skin.get("alarming").findValuesAsText("test"))
        .containsExactly(
            "beyond-limit", "two-of-three", "four-of-five", "eight-in-a-row", "beyond-limit");
    assertThat(tests.get("size").asInt()).isEqualTo(SmallFilm.LANES);
    assertThat(tests.get("intervalSeconds").asDouble()).isEqualTo(60);
  }

  /** On three mean charts one of 370.4 means each; 480 samples a shift of one a minute. */
  @Test
  void aPriceIsAskedForAndNothingChanges() {
    JsonNode before = api.get(TESTS).json();
    JsonNode priced = api.post("/api/v1/tests/price", body(LIMIT_ONLY, "")).json();
    double p = 0.0026997960632601866;
    double any = 1 - Math.pow(1 - p, 3);
    JsonNode price = priced.get("price");
    assertThat(price.get("samplesToFalseAlarm").asDouble()).isCloseTo(1 / any, within(1e-6));
    assertThat(price.get("falseAlarmsPerShift").asDouble()).isCloseTo(480 * any, within(1e-6));
    // Champ and Woodall (1987) print 43.89 means until a shift of one sigma is seen
    assertThat(price.get("samplesToSeeOneSigma").asDouble()).isCloseTo(43.89, within(0.01));
    assertThat(price.get("secondsToSeeOneSigma").asDouble()).isCloseTo(60 * 43.89, within(1.0));
    assertThat(priced.get("exact").asBoolean()).isTrue();
    assertThat(priced.get("changes")).hasSize(8 + 2);
    assertThat(priced.get("changes").get(0).get("turn").asText()).isEqualTo("dropped");
    assertThat(priced.get("changes").get(9).get("turn").asText()).isEqualTo("added");
    double withShares = 1 - Math.pow(1 - p, 5);
    assertThat(priced.get("withShares").get("samplesToFalseAlarm").asDouble())
        .isCloseTo(1 / withShares, within(1e-6));
    assertThat(priced.get("family").get("reachOfMeans").asDouble()).isCloseTo(3.32, within(0.005));
    assertThat(priced.get("family").get("reachOfAverages").asDouble())
        .isCloseTo(3.22, within(0.01));
    assertThat(api.get(TESTS).json()).isEqualTo(before);
  }

  @Test
  void withoutTestsNothingIsEverSeen() {
    JsonNode price = api.post("/api/v1/tests/price", body("[]", "")).json().get("price");
    assertThat(price.get("falseAlarmsPerShift").asDouble()).isZero();
    assertThat(price.get("samplesToSeeOneSigma").isNull()).isTrue();
  }

  @Test
  void aChoiceIsKeptWithWhoAndWhyAndHoldsFromTheNextSampleOn() {
    Answer chosen = api.post("/api/v1/tests", body(LIMIT_ONLY, decided("calm")));
    assertThat(chosen.status()).as(chosen.text()).isEqualTo(200);
    served.as("Lee", Role.ENGINEER).post("/api/v1/tests", body("[]", decided("line trial")));
    JsonNode versions = api.get(TESTS).json().get("versions");
    assertThat(versions)
        .extracting(version -> version.get("by").asText())
        .containsExactly("Lee", "Kim");
    assertThat(versions.get(1).get("reason").asText()).isEqualTo("calm");
    // a microsecond after sample 24
    assertThat(versions.get(0).get("holdsFrom").asText())
        .isEqualTo("2026-11-20T12:54:00.000001+01:00");
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 28, 1));
    assertThat(api.get("/api/v1/alarms?state=all").json().get("alarms")).isEmpty();
    assertThat(api.series(1).get("signals")).isEmpty();
  }

  @Test
  void aTestThatIsOnlyShownRaisesNoAlarm() {
    String shown =
        """
        {"line": "Blown 1", "structure": "DUO-50", "reason": "calm",
         "characteristics": [{"position": 1, "alarming": [],
           "shown": [{"chart": "ewma", "test": "beyond-limit"}]},
           {"position": 0, "shown": [], "alarming": []}]}
        """;
    assertThat(api.post("/api/v1/tests", shown).status()).isEqualTo(200);
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 28, 1));
    assertThat(api.get("/api/v1/alarms?state=all").json().get("alarms")).isEmpty();
    assertThat(api.series(1).get("signals").findValuesAsText("chart")).containsOnly("ewma");
  }

  private static String decided(String reason) {
    return ", \"reason\": \"%s\"".formatted(reason);
  }

  private static String body(String alarming, String more) {
    StringBuilder characteristics = new StringBuilder();
    for (int position = 0; position <= 2; position++) {
      characteristics
          .append(position > 0 ? "," : "")
          .append(
              """
              {"position": %d, "shown": %s, "alarming": %s}"""
                  .formatted(position, alarming, alarming));
    }
    return """
        {"line": "Blown 1", "structure": "DUO-50", "characteristics": [%s] %s}
        """
        .formatted(characteristics, more);
  }
}
