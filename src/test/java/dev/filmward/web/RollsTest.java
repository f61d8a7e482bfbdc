package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.people.Role;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Rolls since the last good sample, over HTTP. The skin of the small film is 20 um, 17 to 23
 * allowed, its lanes lie 0.4, 0.2, 0, -0.2 and -0.4 um off, means go up and down by 0.1 um.
 */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class RollsTest {
  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;
  private Api lead;
  private Api quality;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(database, folder).withFrozenLimits();
    api = served.api();
    lead = served.as("Lee", Role.SHIFT_LEAD);
    quality = served.as("Qu", Role.QUALITY);
  }

  @AfterEach
  void stop() {
    served.close();
  }

  /**
   * Sample 24 on R1 is the last good one; 25 and 26 lie on R1, 27 to 29 on R2, 30 is usual again.
   */
  private String thinThenUsual() {
    api.upload("a.csv", ServedPlant.FILM.thinnerSkin(25, 27, 1));
    api.upload("b.csv", onRoll("R2", ServedPlant.FILM.thinnerSkin(27, 30, 2.8)));
    api.upload("c.csv", onRoll("R3", ServedPlant.FILM.usual(30, 31)));
    return "/api/v1/alarms/" + api.get("/api/v1/alarms").json().get("alarms").get(0).get("id");
  }

  private static String onRoll(String roll, String csv) {
    return csv.replace(",R1,", "," + roll + ",");
  }

  @Test
  void theyReachFromTheLastGoodSampleToTheFirstUsualOne() {
    JsonNode suspect = api.get(thinThenUsual() + "/rolls").json();
    assertThat(suspect.get("lastGood").get("sample").asText()).isEqualTo(SmallFilm.sample(24));
    assertThat(suspect.get("lastGood").get("roll").asText()).isEqualTo("R1");
    assertThat(suspect.get("over").asBoolean()).isTrue();
    assertThat(suspect.get("rolls").findValuesAsText("roll")).containsExactly("R1", "R2", "R3");
    assertThat(suspect.get("rolls"))
        .extracting(roll -> roll.get("samples").asInt())
        .as("the good one is not counted")
        .containsExactly(2, 3, 1);
    // five lanes of two layers and the total
    assertThat(suspect.get("rolls"))
        .extracting(roll -> roll.get("readings").asInt())
        .containsExactly(2 * 15, 3 * 15, 15);
    // 20 - 2.8 = 17.2: odd samples (-0.1) have lanes 16.7, 16.9, 17.1 ...; the even one 16.9, 17.1
    // ...
    assertThat(suspect.get("rolls"))
        .extracting(roll -> roll.get("outOfSpec").asInt())
        .containsExactly(0, 2 + 1 + 2, 0);
    assertThat(suspect.get("rolls")).allMatch(roll -> roll.get("state").isNull());
  }

  @Test
  void whileItGoesOnTheyReachToTheNewestSample() {
    api.upload("a.csv", ServedPlant.FILM.thinnerSkin(25, 27, 1));
    api.upload("b.csv", onRoll("R2", ServedPlant.FILM.thinnerSkin(27, 30, 1)));
    JsonNode suspect = api.get("/api/v1/alarms/1/rolls").json();
    assertThat(suspect.get("over").asBoolean()).isFalse();
    assertThat(suspect.get("until").isNull()).isTrue();
    assertThat(suspect.get("rolls").findValuesAsText("roll")).containsExactly("R1", "R2");
  }

  /**
   * One lane of sample 24 is out of specification, and its mean 0.7 um low is no signal by itself.
   */
  @Test
  void aSampleWithAReadingOutOfSpecificationIsNotGood() {
    String spoilt = ServedPlant.FILM.usual(24, 25).replaceFirst(",19.700,", ",16.900,");
    assertThat(spoilt).contains("16.900");
    assertThat(api.upload("spoilt.csv", spoilt).status()).isEqualTo(200);
    api.upload("a.csv", ServedPlant.FILM.thinnerSkin(25, 27, 1));
    JsonNode alarms = api.get("/api/v1/alarms?state=all").json().get("alarms");
    JsonNode thin =
        java.util.stream.StreamSupport.stream(alarms.spliterator(), false)
            .filter(alarm -> alarm.get("title").asText().contains("thinner"))
            .findFirst()
            .orElseThrow();
    JsonNode suspect = api.get("/api/v1/alarms/" + thin.get("id") + "/rolls").json();
    assertThat(suspect.get("lastGood").get("sample").asText()).isEqualTo(SmallFilm.sample(23));
  }

  @Test
  void aRollIsHeldThenReleasedAndEachDecisionStays() {
    String alarm = thinThenUsual();
    JsonNode held = hold("R2", 0, "\"alarm\": " + alarm.replaceAll("\\D+1/\\D+", "") + ",").json();
    assertThat(held.get("rolls").get(0).get("state").asText()).isEqualTo("held");
    assertThat(api.get("/api/v1/rolls").json().get("rolls").findValuesAsText("roll"))
        .containsExactly("R2");
    Answer again = hold("R2", 1, "");
    assertThat(again.status()).isEqualTo(409);
    assertThat(again.text()).contains("R2").contains("held by Lee already");
    Answer blind = dispose("R2", 0, "released");
    assertThat(blind.status()).isEqualTo(409);
    assertThat(blind.text()).contains("held by Lee");
    assertThat(dispose("R2", 1, "released").status()).isEqualTo(200);
    assertThat(api.get("/api/v1/rolls?state=held").json().get("rolls")).isEmpty();
    JsonNode released = api.get("/api/v1/rolls?state=released").json().get("rolls").get(0);
    assertThat(released.get("decisions").findValuesAsText("by")).containsExactly("Qu", "Lee");
    assertThat(released.get("decisions").findValuesAsText("alarm"))
        .as("the release is for the same alarm")
        .containsOnly(alarm.replaceAll("\\D+1/\\D+", ""));
    assertThat(api.get(alarm).json().get("history").findValuesAsText("what"))
        .contains("roll R2 held: thin skin", "roll R2 released: thin skin");
    JsonNode ofAlarm = api.get(alarm + "/rolls").json().get("rolls").get(1);
    assertThat(ofAlarm.get("state").asText()).isEqualTo("released");
    assertThat(ofAlarm.get("version").asInt()).isEqualTo(2);
  }

  @Test
  void holdingDoesNotUndoScrappingButARollThatWasReleasedMayBeHeld() {
    thinThenUsual();
    dispose("R2", 0, "scrapped");
    Answer hold = hold("R2", 1, "");
    assertThat(hold.status()).isEqualTo(409);
    assertThat(hold.text()).contains("scrapped by Qu");
    dispose("R1", 0, "released");
    assertThat(hold("R1", 1, "").status()).isEqualTo(200);
    assertThat(dispose("R2", 1, "held").status()).as("who may decide may").isEqualTo(200);
  }

  @Test
  void ofSeveralRollsAllAreDecidedOrNone() {
    thinThenUsual();
    dispose("R2", 0, "scrapped");
    Answer both =
        api.post(
            "/api/v1/rolls/hold",
            """
            {"reason": "thin", "rolls": [
              {"line": "Blown 1", "structure": "DUO-50", "roll": "R1", "version": 0},
              {"line": "Blown 1", "structure": "DUO-50", "roll": "R2", "version": 0}]}
            """);
    assertThat(both.status()).isEqualTo(409);
    assertThat(api.get("/api/v1/rolls?state=held").json().get("rolls")).isEmpty();
  }

  @Test
  void oneDecisionAboutSeveralRollsIsOneLineInTheHistoryOfTheAlarm() {
    String alarm = thinThenUsual();
    Answer both =
        api.post(
            "/api/v1/rolls/hold",
            """
            {"reason": "thin", "alarm": 1, "rolls": [
              {"line": "Blown 1", "structure": "DUO-50", "roll": "R2", "version": 0},
              {"line": "Blown 1", "structure": "DUO-50", "roll": "R1", "version": 0}]}
            """);
    assertThat(both.status()).as(both.text()).isEqualTo(200);
    assertThat(api.get(alarm).json().get("history").findValuesAsText("what"))
        .filteredOn(what -> what.contains("held"))
        .containsExactly("rolls R1, R2 held: thin");
  }

  private Answer hold(String roll, int version, String more) {
    return lead.post("/api/v1/rolls/hold", decision(roll, version, more));
  }

  private Answer dispose(String roll, int version, String state) {
    String more = "\"state\": \"" + state + "\",";
    return quality.post("/api/v1/rolls/disposition", decision(roll, version, more));
  }

  private static String decision(String roll, int version, String more) {
    return """
        {"reason": "thin skin", %s "rolls":
          [{"line": "Blown 1", "structure": "DUO-50", "roll": "%s", "version": %d}]}
        """
        .formatted(more, roll, version);
  }
}
