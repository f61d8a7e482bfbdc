package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import com.sun.net.httpserver.HttpServer;
import dev.filmward.people.Role;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.AuditTable;
import dev.filmward.web.Api.Answer;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** An administrator says who is told of what, over HTTP, and nobody reads a password back. */
class TellingRoutesTest {
  private static final String RULES = "/api/v1/telling/rules";
  private static final String SETTINGS = "/api/v1/telling/settings";
  private static final String SECRET = "open sesame 4711";

  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;
  private GreenMail mail;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder);
    api = served.as("Ada", Role.ADMINISTRATOR);
    mail = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
    mail.start();
  }

  @AfterEach
  void stop() {
    mail.stop();
    served.close();
  }

  @Test
  void aRuleIsKeptChangedAndRemovedAsVersions() {
    assertThat(api.get(RULES).json().get("rules")).isEmpty();
    JsonNode first = api.post(RULES, rule(0, "on", "kim@plant.example")).json();
    assertThat(first.get("version").asInt()).isEqualTo(1);
    assertThat(first.get("quiet").get("from").asText()).isEqualTo("22:00");
    assertThat(first.get("decided").get("by").asText()).isEqualTo("Ada");
    JsonNode changed = api.post(RULES, rule(1, "off", "jo@plant.example")).json();
    assertThat(changed.get("version").asInt()).isEqualTo(2);
    JsonNode kept = api.get(RULES).json().get("rules");
    assertThat(kept).hasSize(1);
    assertThat(kept.get(0)).isEqualTo(changed);
    assertThat(kept.get(0).get("lines").get(0).asText()).isEqualTo("Blown 1");
    api.post(RULES, rule(1, "removed", "jo@plant.example"));
    assertThat(api.get(RULES).json().get("rules")).isEmpty();
    assertThat(api.post(RULES, rule(1, "on", "jo@plant.example")).status()).isEqualTo(404);
    assertThat(audit())
        .extracting(AuditEntry::subject)
        .containsExactly("rule 1, version 3", "rule 1, version 2", "rule 1, version 1");
    assertThat(audit().get(1).detail())
        .contains("before: on; Kim (engineer); email kim@plant.example")
        .contains("now: off; Kim (engineer); email jo@plant.example")
        .endsWith("as agreed");
  }

  @ParameterizedTest
  @CsvSource({
    "\"email\", \"fax\"",
    "\"medium\", \"urgent\"",
    "\"opened\", \"exploded\"",
    "\"Kim\", \"Ki\\nm\"",
    "\"kim@plant.example\", \"kim\"",
    "\"22:00\", \"25:00\"",
    "\"22:00\", \"06:00\"",
    "\"mostAnHour\": 6, \"mostAnHour\": -1",
    "\"as agreed\", \"\"",
    "\"engineer\", \"king\""
  })
  void whatCannotHoldIsRefusedInWords(String instead, String by) {
    String good = rule(0, "on", "kim@plant.example");
    assertThat(good).contains(instead);
    Answer answer = api.post(RULES, good.replace(instead, by));
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.json().get("error").get("what").asText()).isNotBlank();
    assertThat(api.get(RULES).json().get("rules")).isEmpty();
  }

  @Test
  void theSettingsBeginWithUsualTimesAndAreKept() {
    JsonNode beginning = api.get(SETTINGS).json();
    assertThat(beginning.get("mail").isNull()).isTrue();
    assertThat(beginning.get("escalation").toString())
        .isEqualTo(
            "{\"lowMinutes\":null,\"mediumMinutes\":30,\"highMinutes\":10,\"againMinutes\":60}");
    assertThat(api.post(SETTINGS, settings(2525, "")).status()).isEqualTo(200);
    JsonNode kept = api.get(SETTINGS).json();
    assertThat(kept.get("mail").get("port").asInt()).isEqualTo(2525);
    assertThat(kept.get("publicAddress").asText()).isEqualTo("https://filmward.plant.example");
    assertThat(kept.get("escalation").get("mediumMinutes").isNull()).isTrue();
    assertThat(kept.get("version").asInt()).isEqualTo(1);
  }

  @Test
  void aPasswordIsNeverReadBackAndStandsInNoAuditEntry() {
    Answer kept = api.post(SETTINGS, settings(2525, ", \"password\": \"" + SECRET + "\""));
    assertThat(kept.json().get("password").asText()).isEqualTo("set");
    Answer rule =
        api.post(
            RULES,
            rule(0, "on", "https://plant.example/told")
                .replace("\"email\"", "\"webhook\"")
                .replace("{\"id\"", "{\"secret\": \"" + SECRET + "\", \"id\""));
    assertThat(rule.json().get("signed").asBoolean()).isTrue();
    for (Answer answer : List.of(kept, rule, api.get(SETTINGS), api.get(RULES))) {
      assertThat(answer.text()).doesNotContain(SECRET);
    }
    assertThat(audit())
        .hasSize(2)
        .allMatch(entry -> entry.detail().contains("password set"))
        .noneMatch(entry -> entry.toString().contains(SECRET));
  }

  @Test
  void aPasswordIsForgottenWhereItsServerBecomesAnotherOne() {
    api.post(SETTINGS, settings(2525, ", \"password\": \"" + SECRET + "\""));
    api.post(SETTINGS, settings(2525, ""));
    assertThat(api.get(SETTINGS).json().get("password").asText()).isEqualTo("set");
    api.post(SETTINGS, settings(2526, ""));
    assertThat(api.get(SETTINGS).json().get("password").asText()).isEqualTo("none");
  }

  @Test
  void aTestMailGoesAtOnceOrSaysWhatKeptIt() throws Exception {
    String test = "{\"email\": \"kim@plant.example\"}";
    JsonNode before = api.post("/api/v1/telling/test", test).json();
    assertThat(before.get("sent").asBoolean()).isFalse();
    assertThat(before.get("words").asText()).contains("no mail server is set up");
    api.post(SETTINGS, settings(mail.getSmtp().getPort(), ""));
    JsonNode after = api.post("/api/v1/telling/test", test).json();
    assertThat(after.get("sent").asBoolean()).as(after.toString()).isTrue();
    assertThat(mail.getReceivedMessages()).hasSize(1);
    assertThat(mail.getReceivedMessages()[0].getSubject()).startsWith("Test message");
    assertThat(audit().get(0).subject()).isEqualTo("test to kim@plant.example");
  }

  @Test
  void aTestOfAWebhookSaysWhatItAnswered() throws Exception {
    HttpServer web =
        HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    web.createContext(
        "/",
        exchange -> {
          exchange.sendResponseHeaders(503, -1);
          exchange.close();
        });
    web.start();
    String address = "http://127.0.0.1:" + web.getAddress().getPort() + "/told";
    api.post(RULES, rule(0, "on", address).replace("\"email\"", "\"webhook\""));
    JsonNode answer = api.post("/api/v1/telling/test", "{\"rule\": 1}").json();
    web.stop(0);
    assertThat(answer.get("sent").asBoolean()).isFalse();
    assertThat(answer.get("words").asText()).isEqualTo("it answered with status 503");
    assertThat(api.post("/api/v1/telling/test", "{\"rule\": 9}").status()).isEqualTo(404);
  }

  @Test
  void theOutboxShowsWhatWaitsForWhomWithoutItsText() {
    api.post(RULES, rule(0, "on", "kim@plant.example").replace("\"medium\"", "\"low\""));
    served.withFrozenLimits();
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 27, 1));
    Answer outbox = api.get("/api/v1/telling/outbox");
    JsonNode messages = outbox.json().get("messages");
    assertThat(messages).hasSize(1);
    assertThat(messages.get(0).get("name").asText()).isEqualTo("Kim");
    assertThat(messages.get(0).get("state").asText()).isEqualTo("waiting");
    assertThat(messages.get(0).get("alarm").asLong()).isEqualTo(1);
    assertThat(outbox.text()).doesNotContain("Check first");
    assertThat(api.get("/api/v1/alarms/1").json().get("escalatedAt").isNull()).isTrue();
  }

  private List<AuditEntry> audit() {
    return served.plant().store().read(tables -> tables.audit().newest(20)).stream()
        .map(AuditTable.Link::entry)
        .filter(entry -> entry.action().equals("telling"))
        .toList();
  }

  private static String rule(long id, String state, String address) {
    return """
        {"id": %d, "state": "%s", "name": "Kim", "role": "engineer", "channel": "email",
         "address": "%s", "lines": ["Blown 1"], "priority": "medium", "events": ["opened"],
         "quiet": {"from": "22:00", "to": "06:00", "highGoesThrough": false, "mostAnHour": 6,
                   "sameAgainAfterMinutes": 60},
         "reason": "as agreed"}
        """
        .formatted(id, state, address);
  }

  private static String settings(int port, String more) {
    return """
        {"mail": {"host": "127.0.0.1", "port": %d, "security": "none", "user": "",
                  "from": "alarms@plant.example"},
         "publicAddress": "https://filmward.plant.example", "escalation": {"highMinutes": 5},
         "reason": "as agreed"%s}
        """
        .formatted(port, more);
  }
}
