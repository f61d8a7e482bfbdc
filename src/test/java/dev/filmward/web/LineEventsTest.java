package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.store.TestDatabase;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
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
            "limits frozen Kim",
            "log lot 7 Kim",
            "alarm Skin: thinner than usual",
            "roll R2",
            "mode down Kim",
            "taken Skin: thinner than usual Kim");
    assertThat(events.get(2).get("alarm").asLong()).isEqualTo(alarm);
    assertThat(events.get(2).get("at").asText())
        .as("when it opened")
        .isEqualTo(api.get("/api/v1/alarms/" + alarm).json().get("openedAt").asText());
    assertThat(events.get(3).get("at").asText()).contains(local(ServedPlant.FILM.takenAt(28)));
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

  private static String local(Instant moment) {
    return moment.atZone(ServedPlant.ZONE).toLocalTime().toString();
  }

  private static List<String> words(JsonNode events) {
    List<String> words = new ArrayList<>();
    for (JsonNode event : events) {
      StringBuilder said = new StringBuilder(event.get("kind").asText());
      for (String name : List.of("state", "words", "title", "mode", "by", "text")) {
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
