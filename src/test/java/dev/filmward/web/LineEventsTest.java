package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** What happened at a line, in the order of time. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class LineEventsTest {
  private static final String EVENTS = "/api/v1/lines/Blown%201/events";

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(database, folder).withFrozenLimits();
    api = served.api();
  }

  @AfterEach
  void stop() {
    served.close();
  }

  /** Sample 30 is taken now; 25 to 29 are of a thin skin; from 28 on it is another roll. */
  @Test
  void alarmsRollsModesAndNotesStandInTheirOrder() {
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 28, 1.5));
    api.upload("thin-2.csv", ServedPlant.FILM.thinnerSkin(28, 30, 1.5).replace(",R1,", ",R2,"));
    long alarm = api.get("/api/v1/alarms").json().at("/alarms/0/id").asLong();
    api.post("/api/v1/alarms/" + alarm + "/acknowledge", "{}");
    String since = ServedPlant.NOW.minusSeconds(30).toString();
    api.post(
        "/api/v1/lines/Blown%201/mode",
        "{\"mode\": \"down\", \"since\": \"" + since + "\", \"reason\": \"die cleaned\"}");
    api.post(
        "/api/v1/lines/Blown%201/log",
        "{\"kind\": \"resin-lot\", \"words\": \"lot 7\", \"at\": \""
            + ServedPlant.FILM.takenAt(10)
            + "\"}");
    JsonNode events = api.get(EVENTS).json().get("events");
    assertThat(words(events))
        .containsExactly(
            "shift Early",
            "limits frozen Kim",
            "log lot 7 Kim",
            "alarm Skin: thinner than usual",
            "roll R2",
            "mode down Kim",
            "taken Skin: thinner than usual Kim");
    assertThat(events.get(3).get("alarm").asLong()).isEqualTo(alarm);
    assertThat(events.get(3).get("at").asText())
        .as("when it opened")
        .isEqualTo(api.get("/api/v1/alarms/" + alarm).json().get("openedAt").asText());
    assertThat(events.get(4).get("at").asText()).contains(local(ServedPlant.FILM.takenAt(28)));
    assertThat(events.findValuesAsText("shift"))
        .as("the handover that tells of it")
        .containsExactly("2026-11-20 Early", "2026-11-20 Early", "2026-11-20 Early");
  }

  @Test
  void onlyTheTimeThatIsAskedFor() {
    api.upload("next.csv", ServedPlant.FILM.usual(25, 30).replace(",R1,", ",R2,"));
    long from = ServedPlant.FILM.takenAt(20).toEpochMilli();
    long to = ServedPlant.FILM.takenAt(27).toEpochMilli();
    assertThat(words(api.get(EVENTS + "?from=" + from + "&to=" + to).json().get("events")))
        .containsExactly("roll R2");
    long early = ServedPlant.NOW.minus(Duration.ofDays(3)).toEpochMilli();
    assertThat(api.get(EVENTS + "?from=" + early + "&to=" + (early + 1000)).json().get("events"))
        .isEmpty();
    assertThat(api.get("/api/v1/lines/None/events").status()).isEqualTo(404);
  }

  /** The usual calendar; clocks of the plant are an hour ahead of UTC. */
  @Test
  void shiftsBeginSinceThatOfTheFirstSample() {
    Instant evening = Instant.parse("2026-11-19T20:30:00Z");
    SmallFilm earlier = SmallFilm.withSampleAt(0, evening);
    api.upload("evening.csv", earlier.usual(0, 1));
    String until = "&to=" + ServedPlant.NOW.plus(Duration.ofHours(3)).toEpochMilli();
    JsonNode since = events("?from=" + evening.minusSeconds(1800).toEpochMilli() + until);
    assertThat(of("shift", since).findValuesAsText("shift"))
        .as("neither the late one that had begun, nor the one that is to come")
        .containsExactly("2026-11-19 Night", "2026-11-20 Early");
    assertThat(of("shift", since).findValuesAsText("at"))
        .containsExactly("2026-11-19T22:00:00+01:00", "2026-11-20T06:00:00+01:00");
    JsonNode late = events("?from=" + ServedPlant.FILM.takenAt(10).toEpochMilli() + until);
    assertThat(of("shift", late)).isEmpty();
    api.upload(
        "old.csv",
        SmallFilm.withSampleAt(0, ServedPlant.NOW.minus(Duration.ofDays(9))).usual(0, 1));
    assertThat(of("shift", events("?from=0"))).isEmpty();
  }

  /** The skin is thin at sample 25 only. */
  @Test
  void anAlarmThatNobodyTookInTimeReturnsByItself() {
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 26, 3));
    assertThat(of("returned", events(""))).isEmpty();
    api.upload("usual.csv", ServedPlant.FILM.usual(26, 31));
    JsonNode alarm = api.get("/api/v1/alarms?state=all").json().at("/alarms/0");
    assertThat(alarm.get("returnedAt").isNull()).isFalse();
    JsonNode returned = of("returned", events(""));
    assertThat(returned.findValuesAsText("at")).containsExactly(alarm.get("returnedAt").asText());
    assertThat(returned.get(0).get("alarm")).isEqualTo(alarm.get("id"));
    long from = Instant.from(OffsetDateTime.parse(alarm.get("returnedAt").asText())).toEpochMilli();
    assertThat(words(events("?from=" + from)))
        .as("it opened before the time that is asked for")
        .containsExactly("returned Skin: thinner than usual");
    api.post("/api/v1/alarms/" + alarm.get("id").asLong() + "/acknowledge", "{}");
    assertThat(words(events("?from=" + from)))
        .containsExactly("returned Skin: thinner than usual", "taken Skin: thinner than usual Kim");
  }

  /** Taken at sample 30; the skin is as usual from sample 31 on. */
  @Test
  void anAlarmThatSomebodyHasTakenDoesNotReturnByItself() {
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 31, 3));
    long alarm = api.get("/api/v1/alarms").json().at("/alarms/0/id").asLong();
    api.post("/api/v1/alarms/" + alarm + "/acknowledge", "{}");
    api.upload("usual.csv", ServedPlant.FILM.usual(31, 45));
    assertThat(api.get("/api/v1/alarms/" + alarm).json().get("returnedAt").isNull()).isFalse();
    String all = "?to=" + ServedPlant.FILM.takenAt(45).toEpochMilli();
    assertThat(of("taken", events(all))).hasSize(1);
    assertThat(of("returned", events(all))).isEmpty();
  }

  @Test
  void versionsOfTheStructureOnceTheyHold() {
    assertThat(of("structure", events(""))).as("the first one changes nothing").isEmpty();
    String wider = SmallFilm.STRUCTURES.replace("upper: 23 um", "upper: 23.5 um");
    String wide = SmallFilm.STRUCTURES.replace("upper: 23 um", "upper: 24 um");
    give("?name=wider.yaml&why=agreed", wider);
    give("?name=wide.yaml&holdsFrom=2026-11-20T15:00:00%2B01:00", wide);
    JsonNode versions =
        of("structure", events("?to=" + ServedPlant.NOW.plusSeconds(9_000).toEpochMilli()));
    assertThat(versions).hasSize(1);
    assertThat(versions.get(0).get("version").asText()).isEqualTo("2");
    assertThat(versions.get(0).get("structure").asText()).isEqualTo(SmallFilm.CODE);
    assertThat(versions.get(0).get("by").asText()).isEqualTo("Kim");
    assertThat(versions.get(0).get("reason").asText()).isEqualTo("agreed");
  }

  private void give(String query, String yaml) {
    Answer answer = api.send(api.change("/api/v1/structures" + query, "application/yaml", yaml));
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
  }

  @Test
  void calibrationsOfItsGaugeAndReadingsThatAreShownOtherwise() {
    done("/api/v1/gauges", "{'name': 'G1', 'centreMhz': 100, 'bandwidth': 0.6, 'reason': 'new'}");
    done("/api/v1/gauges", "{'name': 'G2', 'centreMhz': 100, 'bandwidth': 0.6, 'reason': 'new'}");
    String measures = "{'gauge': 'G1', 'line': 'Blown 1', 'since': '%s', 'reason': 'as built'}";
    done("/api/v1/gauges/use", measures.formatted(ServedPlant.FILM.takenAt(0)));
    long calibration = done("/api/v1/calibrations", calibration("G1")).get("id").asLong();
    done("/api/v1/calibrations", calibration("G2"));
    String order =
        "'line': 'Blown 1', 'structure': 'DUO-50', 'position': 1, 'reason': 'reference piece'";
    done(
        "/api/v1/calibrations/rescale",
        "{%s, 'calibration': %d, 'from': '%s'}"
            .formatted(order, calibration, ServedPlant.FILM.takenAt(20)));
    JsonNode made = events("");
    assertThat(of("calibrated", made).findValuesAsText("gauge")).containsExactly("G1");
    assertThat(of("calibrated", made).get(0).get("layer").asText()).isEqualTo("Skin");
    assertThat(of("calibrated", made).get(0).get("calibration").asLong()).isEqualTo(calibration);
    assertThat(of("rescaled", made).get(0).get("position").asText()).isEqualTo("1");
    assertThat(of("rescaled", made).get(0).get("at").asText())
        .contains(local(ServedPlant.FILM.takenAt(20)));
    done("/api/v1/calibrations/take-back", "{%s, 'version': 1}".formatted(order));
    JsonNode back = of("rescaled", events(""));
    assertThat(back).hasSize(1);
    assertThat(back.get(0).get("takesBack").asText()).isEqualTo("1");
    assertThat(back.get(0).get("at").asText()).isEqualTo("2026-11-20T13:00:00+01:00");
  }

  /** A piece of 50.5 um that reads 50 um. */
  private static String calibration(String gauge) {
    return """
        {'gauge': '%s', 'structure': 'DUO-50', 'layer': 'Skin', 'reason': 'monthly',
         'before': {'velocityMps': 2000},
         'pieces': [{'name': 'P1', 'thicknessUm': 50.5, 'readings': [50, 50, 50]}]}
        """
        .formatted(gauge);
  }

  private JsonNode done(String path, String json) {
    Answer answer = api.post(path, json.replace('\'', '"'));
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
    return answer.json();
  }

  private JsonNode events(String query) {
    return api.get(EVENTS + query).json().get("events");
  }

  private static ArrayNode of(String kind, JsonNode events) {
    ArrayNode found = JsonNodeFactory.instance.arrayNode();
    for (JsonNode event : events) {
      if (event.get("kind").asText().equals(kind)) {
        found.add(event);
      }
    }
    return found;
  }

  private static String local(Instant moment) {
    return moment.atZone(ServedPlant.ZONE).toLocalTime().toString();
  }

  private static List<String> words(JsonNode events) {
    List<String> words = new ArrayList<>();
    for (JsonNode event : events) {
      StringBuilder said = new StringBuilder(event.get("kind").asText());
      for (String name : List.of("state", "name", "words", "title", "mode", "by", "text")) {
        if (event.has(name)) {
          said.append(' ').append(event.get(name).asText());
        }
      }
      words.add(
          event.get("kind").asText().equals("roll")
              ? said.append(' ').append(event.get("roll").asText()).toString()
              : said.toString());
    }
    return words;
  }
}
