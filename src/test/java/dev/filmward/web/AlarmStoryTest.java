package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.people.Role;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From a layer that thins to an alarm that is closed, over HTTP. */
class AlarmStoryTest {
  /** More than 4 sigma of the mean: 4 x 0.8 um / 2.326 / sqrt(5) = 0.62 um. */
  private static final double GROSS_UM = 1;

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
  void aThinnerLayerSignalsAndRaisesOneAlarm() {
    thinSkin(25, 27);
    JsonNode series = api.series(1);
    assertThat(series.get("stable").asBoolean()).isFalse();
    List<JsonNode> beyond =
        series.get("signals").findParents("index").stream()
            .filter(signal -> signal.get("test").asText().equals("beyond-limit"))
            .toList();
    assertThat(beyond).extracting(signal -> signal.get("index").asInt()).containsExactly(25, 26);
    assertThat(beyond).allMatch(signal -> signal.get("side").asText().equals("low"));
    JsonNode alarms = api.get("/api/v1/alarms").json().get("alarms");
    assertThat(alarms).hasSize(1);
    JsonNode alarm = alarms.get(0);
    assertThat(alarm.get("line").asText()).isEqualTo("Blown 1");
    assertThat(alarm.get("state").asText()).isEqualTo("unacknowledged");
    assertThat(alarm.get("sample").asText()).isEqualTo("S00025");
    assertThat(alarm.get("title").asText()).contains("Skin").contains("thinner");
    assertThat(alarm.get("outOfSpec").asBoolean()).isFalse();
    assertThat(alarm.get("historical").asBoolean()).isFalse();
    assertThat(alarm.get("checks")).isNotEmpty();
    assertThat(api.get("/api/v1/alarms/" + alarm.get("id")).json()).isEqualTo(alarm);
    JsonNode line = api.get("/api/v1/board").json().get("lines").get(0);
    assertThat(line.get("state").asText()).isEqualTo("act");
    assertThat(line.get("unacknowledged").asInt()).isEqualTo(1);
  }

  @Test
  void seenReturnedAndExplainedItIsClosed() {
    thinSkin(25, 26);
    String alarm = "/api/v1/alarms/" + onlyAlarm().get("id");
    JsonNode seen = api.post(alarm + "/acknowledge", "{}").json();
    assertThat(seen.get("state").asText()).isEqualTo("acknowledged");
    assertThat(seen.get("acknowledged").get("by").asText()).isEqualTo("Kim");
    assertThat(seen.get("acknowledged").get("at").asText()).isEqualTo("2026-11-20T13:00:00+01:00");
    served.api().upload("quiet again.csv", ServedPlant.FILM.usual(26, 27));
    assertThat(api.get(alarm).json().get("state").asText()).isEqualTo("normal");
    assertThat(api.get(alarm).json().get("closed").asBoolean()).isFalse();
    JsonNode closed = explain(alarm, "screen pack blinded").json();
    assertThat(closed.get("closed").asBoolean()).isTrue();
    assertThat(closed.get("finding").get("action").asText()).isEqualTo("changed it");
    assertThat(closed.get("history")).extracting(entry -> entry.get("by").asText()).contains("Kim");
    assertThat(api.get("/api/v1/alarms").json().get("alarms")).isEmpty();
    assertThat(api.get("/api/v1/alarms?state=all").json().get("alarms")).hasSize(1);
  }

  @Test
  void aCauseThatIsNotFoundYetKeepsItOpen() {
    thinSkin(25, 26);
    String alarm = "/api/v1/alarms/" + onlyAlarm().get("id");
    api.post(alarm + "/acknowledge", "{}");
    served.api().upload("quiet again.csv", ServedPlant.FILM.usual(26, 27));
    assertThat(explain(alarm, "not found yet").json().get("closed").asBoolean()).isFalse();
    assertThat(api.get("/api/v1/alarms").json().get("alarms")).hasSize(1);
    assertThat(explain(alarm, "feeder or hopper").json().get("closed").asBoolean()).isTrue();
    assertThat(api.get("/api/v1/alarms").json().get("alarms")).isEmpty();
  }

  @Test
  void theSecondToAcknowledgeHearsWhoWasFirstAndWhen() {
    thinSkin(25, 26);
    String alarm = "/api/v1/alarms/" + onlyAlarm().get("id");
    api.post(alarm + "/acknowledge", "{}");
    Answer late = served.as("Ali", Role.SHIFT_LEAD).post(alarm + "/acknowledge", "{}");
    assertThat(late.status()).isEqualTo(409);
    assertThat(late.json().get("error").get("what").asText()).contains("Kim").contains("13:00");
    assertThat(late.json().get("error").get("instead").asText()).isNotBlank();
    assertThat(onlyAlarm().get("acknowledged").get("by").asText()).isEqualTo("Kim");
  }

  @Test
  void samplesThatComeLateRaiseNoHorn() {
    SmallFilm before = SmallFilm.withSampleAt(40, ServedPlant.FILM.takenAt(25).minusSeconds(7200));
    String old = before.thinnerSkin(30, 32, GROSS_UM);
    api.upload("late.csv", old);
    assertThat(api.get("/api/v1/alarms?state=all").json().get("alarms"))
        .allMatch(alarm -> alarm.get("historical").asBoolean());
  }

  private void thinSkin(int from, int to) {
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(from, to, GROSS_UM));
  }

  private JsonNode onlyAlarm() {
    JsonNode alarms = api.get("/api/v1/alarms?state=all").json().get("alarms");
    assertThat(alarms).hasSize(1);
    return alarms.get(0);
  }

  private Answer explain(String alarm, String cause) {
    return api.post(
        alarm + "/finding", "{\"cause\": \"" + cause + "\", \"action\": \"changed it\"}");
  }
}
