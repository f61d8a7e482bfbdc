package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.people.Role;
import dev.filmward.store.TestDatabase;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** What changed and why, asked over HTTP of both databases. */
@ParameterizedClass
@EnumSource(TestDatabase.class)
class DiagnosisRoutesTest {
  @Parameter TestDatabase database;
  @TempDir Path folder;

  private ServedPlant served;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(database, folder).withFrozenLimits();
    served.api().upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 30, 3));
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void showsBothSidesOfWhatChanged() {
    JsonNode diagnosis = served.api().get("/api/v1/alarms/" + alarm() + "/diagnosis").json();

    assertThat(diagnosis.get("limitsVersion").asInt()).isEqualTo(1);
    assertThat(diagnosis.get("samples").asInt()).isEqualTo(30);
    JsonNode sides = diagnosis.get("sides");
    assertThat(sides.get("samplesBefore").asInt()).isEqualTo(25);
    assertThat(sides.get("samplesAfter").asInt()).isEqualTo(5);
    JsonNode skin = row(sides, 1);
    double moved = skin.at("/after/mean").asDouble() - skin.at("/before/mean").asDouble();
    assertThat(moved).isBetween(-3.3, -2.7);
  }

  @Test
  void anAlarmIsExplainedAlsoWhenItsStructureHasOtherLayersByNow() throws Exception {
    String alarm = "/api/v1/alarms/" + alarm();
    String more =
        """
        structures:
          - code: %s
            name: with another layer
            layers:
              - {name: One, role: skin, target: 20 um}
              - {name: Two, role: core, target: 20 um}
              - {name: Three, role: seal, target: 10 um}
        """
            .formatted(SmallFilm.CODE);
    served.plant().learnStructures("more.yaml", more.getBytes(StandardCharsets.UTF_8));

    assertThat(served.api().get(alarm + "/diagnosis").status()).isEqualTo(200);
    assertThat(
            served
                .api()
                .post(
                    alarm + "/finding",
                    "{\"cause\": \"resin-lot\", \"note\": \"\", \"action\": \"\"}")
                .status())
        .isEqualTo(200);
  }

  @Test
  void anAlarmThatThereIsNotIsNotFound() {
    assertThat(served.api().get("/api/v1/alarms/999/diagnosis").status()).isEqualTo(404);
  }

  @Test
  void theTrueCauseIsCountedOnceAnAlarmHoweverOftenItIsSaid() {
    String finding = "/api/v1/alarms/" + alarm() + "/finding";
    served.api().post(finding, "{\"cause\": \"resin-lot\", \"note\": \"\", \"action\": \"\"}");
    served.api().post(finding, "{\"cause\": \"feeder-hopper\", \"note\": \"\", \"action\": \"\"}");

    JsonNode rate = served.api().get("/api/v1/diagnosis/hit-rate").json();
    assertThat(rate.at("/all/alarms").asInt()).isEqualTo(1);
    assertThat(rate.get("byCause")).hasSize(1);
    assertThat(rate.at("/byCause/0/code").asText()).isEqualTo("feeder-hopper");
    assertThat(rate.at("/byCause/0/cause").asText()).isEqualTo("feeder or hopper");
  }

  @Test
  void whatHappenedAtTheLineIsWrittenDownAndWithdrawnButNeverLost() {
    String log = "/api/v1/lines/Blown%201/log";
    served.api().post(log, "{\"kind\": \"resin-lot\", \"words\": \"lot 7\", \"positions\": [1]}");
    JsonNode entry = served.api().get(log).json().at("/entries/0");
    assertThat(entry.get("words").asText()).isEqualTo("lot 7");
    assertThat(entry.at("/positions/0").asInt()).isEqualTo(1);

    String withdraw = "/api/v1/line-log/" + entry.get("id") + "/withdraw";
    assertThat(served.api().post(withdraw, "{\"reason\": \"other line\"}").status()).isEqualTo(200);
    assertThat(served.api().post(withdraw, "{\"reason\": \"again\"}").status()).isEqualTo(409);
    JsonNode kept = served.api().get(log).json().at("/entries/0");
    assertThat(kept.get("words").asText()).isEqualTo("lot 7");
    assertThat(kept.at("/withdrawn/why").asText()).isEqualTo("other line");
  }

  @Test
  void whatIsSeenFromElsewhereOrIsYetToComeIsNotWrittenDown() {
    String log = "/api/v1/lines/Blown%201/log";
    assertThat(served.api().post(log, "{\"kind\": \"roll\"}").status()).isEqualTo(400);
    assertThat(
            served
                .api()
                .post(log, "{\"kind\": \"resin-lot\", \"at\": \"2031-01-01T00:00:00Z\"}")
                .status())
        .isEqualTo(400);
    assertThat(served.api().post("/api/v1/lines/Nowhere/log", "{\"kind\": \"resin-lot\"}").status())
        .isEqualTo(404);
  }

  @Test
  void signaturesAreKeptInVersionsToTheLetter() {
    ObjectNode seen = (ObjectNode) served.api().get("/api/v1/signatures").json();
    assertThat(seen.get("version").asInt()).isZero();
    ObjectNode change = seen.deepCopy().put("reason", "our own");
    ObjectNode own = (ObjectNode) change.at("/signatures/0");
    own.put("name", "as we call it");

    Api engineer = served.as("Alex", Role.ENGINEER);
    JsonNode kept = engineer.post("/api/v1/signatures", change.toString()).json();

    assertThat(kept.get("version").asInt()).isEqualTo(1);
    assertThat(kept.get("signatures")).isEqualTo(change.get("signatures"));
    assertThat(engineer.post("/api/v1/signatures", change.toString()).status()).isEqualTo(409);
  }

  @Test
  void aSignatureOfNoKnownStatisticIsRefusedWithThoseThereAre() {
    ObjectNode change = (ObjectNode) served.api().get("/api/v1/signatures").json();
    change.put("reason", "a slip");
    ((ObjectNode) change.at("/signatures/0/conditions/0")).put("statistic", "moon");

    var answer = served.api().post("/api/v1/signatures", change.toString());

    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.json().at("/error/what").asText()).contains("moon").contains("level-z");
  }

  private long alarm() {
    return served.api().get("/api/v1/alarms").json().at("/alarms/0/id").asLong();
  }

  private static JsonNode row(JsonNode sides, int position) {
    for (JsonNode row : sides.get("rows")) {
      if (row.get("position").asInt() == position) {
        return row;
      }
    }
    throw new AssertionError("no row of layer " + position);
  }
}
