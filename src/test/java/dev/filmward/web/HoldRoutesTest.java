package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.people.Role;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Alarms are held back, and lines said to be down, over HTTP. */
class HoldRoutesTest {
  private static final double GROSS_UM = 1;

  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;
  private Api ali;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder).withFrozenLimits();
    api = served.api();
    ali = served.as("Ali", Role.SHIFT_LEAD);
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void anAlarmIsShelvedAndTakenOffTheShelf() {
    thinSkin();
    String alarm = "/api/v1/alarms/" + onlyAlarm().get("id");
    JsonNode hold = api.post(alarm + "/shelve", "{\"minutes\": 30, \"reason\": \"known\"}").json();
    assertThat(hold.get("until").asText()).isEqualTo("2026-11-20T13:30:00+01:00");
    assertThat(api.get(alarm).json().get("state").asText()).isEqualTo("shelved");
    assertThat(api.get(alarm).json().get("hold")).isEqualTo(hold);
    assertThat(api.get("/api/v1/holds").json().get("holds")).containsExactly(hold);
    assertThat(board().get("unacknowledged").asInt()).isZero();
    assertThat(board().get("held").asInt()).isEqualTo(1);
    Answer taken = ali.post(alarm + "/acknowledge", "{}");
    assertThat(taken.status()).isEqualTo(409);
    String end = "/api/v1/shelves/" + hold.get("id") + "/end";
    JsonNode left = api.post(end, "{\"reason\": \"done\"}").json();
    assertThat(left.get("holds")).isEmpty();
    assertThat(api.get(alarm).json().get("state").asText()).isEqualTo("unacknowledged");
    assertThat(ali.post(end, "{\"reason\": \"too\"}").status()).isEqualTo(409);
  }

  @Test
  void aShelfWithoutEndOrReasonIsRefused() {
    thinSkin();
    String shelve = "/api/v1/alarms/" + onlyAlarm().get("id") + "/shelve";
    assertThat(refusal(shelve, "{\"minutes\": 30}")).contains("reason");
    assertThat(refusal(shelve, "{\"reason\": \"x\"}")).contains("how long");
    assertThat(refusal(shelve, "{\"reason\": \"x\", \"minutes\": 721}")).contains("12 hours");
    assertThat(refusal(shelve, "{\"reason\": \"x\", \"minutes\": -1}")).contains("12 hours");
  }

  @Test
  void layersAreTakenOutOfServiceAndPutBack() {
    String body =
        "{\"line\": \"Blown 1\", \"positions\": [0, 1]," + " \"reason\": \"gauge under repair\"}";
    JsonNode hold = api.post("/api/v1/out-of-service", body).json();
    thinSkin();
    assertThat(onlyAlarm().get("state").asText()).isEqualTo("out-of-service");
    String shelf = "/api/v1/shelves/" + hold.get("id") + "/end";
    String back = "{\"reason\": \"repaired\"}";
    assertThat(api.post(shelf, back).status()).as("it is no shelf").isEqualTo(404);
    api.post("/api/v1/out-of-service/" + hold.get("id") + "/end", back);
    assertThat(onlyAlarm().get("state").asText()).isEqualTo("unacknowledged");
  }

  @Test
  void scopesThatMeanNothingAreRefused() {
    String line = "{\"reason\": \"x\", \"line\": \"Blown 1\", ";
    assertThat(refusal("/api/v1/out-of-service", line + "\"deviation\": \"odd\"}"))
        .contains("thicker, thinner");
    assertThat(refusal("/api/v1/out-of-service", line + "\"positions\": [\"skin\"]}"))
        .contains("numbers of layers");
    Answer unknown = api.post("/api/v1/out-of-service", "{\"reason\": \"x\", \"line\": \"Cast\"}");
    assertThat(unknown.status()).isEqualTo(404);
  }

  @Test
  void aLineThatIsSaidToBeDownRaisesNoAlarm() {
    JsonNode said = api.post("/api/v1/lines/Blown%201/mode", "{\"mode\": \"down\"}").json();
    assertThat(said.get("mode").asText()).isEqualTo("down");
    assertThat(said.get("said").get(0).get("reason").asText()).isEqualTo("not given");
    assertThat(board().get("state").asText()).isEqualTo("not_running");
    assertThat(board().get("mode").asText()).isEqualTo("down");
    thinSkin();
    assertThat(onlyAlarm().get("state").asText()).isEqualTo("suppressed");
    api.post("/api/v1/lines/Blown%201/mode", "{\"mode\": \"running\"}");
    assertThat(onlyAlarm().get("state").asText()).isEqualTo("unacknowledged");
    assertThat(api.get("/api/v1/lines/Blown%201/modes").json().get("said"))
        .extracting(change -> change.get("mode").asText())
        .containsExactly("running", "down");
  }

  @Test
  void modesThatAreNoneAreRefused() {
    String path = "/api/v1/lines/Blown%201/mode";
    assertThat(refusal(path, "{\"mode\": \"asleep\"}")).contains("running");
    assertThat(refusal(path, "{\"mode\": \"down\", \"since\": \"8 o'clock\"}")).contains("offset");
    assertThat(refusal(path, "{\"mode\": \"starting\", \"samples\": 51}")).contains("0 to 50");
    assertThat(refusal(path, "{\"mode\": \"down\", \"since\": \"2036-11-20T13:00:00Z\"}"))
        .contains("not what it will be doing");
  }

  @Test
  void delaysOfTestsAreChosenWithThem() {
    String delay =
        "{\"chart\": \"xbar\", \"test\": \"trend\", \"opensAfter\": 3, \"returnsAfter\": 4}";
    String body =
        "{\"reason\": \"it chatters\", \"line\": \"Blown 1\", \"structure\":"
            + " \"DUO-50\", \"delays\": ["
            + delay
            + "]}";
    JsonNode chosen = api.post("/api/v1/tests", body).json();
    assertThat(chosen.get("delays").toString()).contains(delay.replace(" ", ""));
    assertThat(refusal("/api/v1/tests", body.replace("\"opensAfter\": 3", "\"opensAfter\": 9")))
        .contains("1 to 8");
  }

  private String refusal(String path, String body) {
    Answer answer = api.post(path, body);
    assertThat(answer.status()).as(answer.text()).isEqualTo(400);
    return answer.json().get("error").get("what").asText();
  }

  private JsonNode board() {
    return api.get("/api/v1/board").json().get("lines").get(0);
  }

  private void thinSkin() {
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 27, GROSS_UM));
  }

  private JsonNode onlyAlarm() {
    JsonNode alarms = api.get("/api/v1/alarms?state=all").json().get("alarms");
    assertThat(alarms).hasSize(1);
    return alarms.get(0);
  }
}
