package dev.filmward.telling;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.filmward.alarm.Priority;
import dev.filmward.telling.AlarmFacts.Made;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What people and programs read. */
class WordingTest {
  private static final Instant AT = Instant.parse("2026-11-20T12:05:00Z");
  private final Wording wording = new Wording(ZoneId.of("Europe/Berlin"));

  @Test
  void anEmailSaysAllThatAPersonNeedsToStart() {
    Message message = wording.message(Channel.EMAIL, "key", news(Happening.OPENED, "Blown 1"));
    assertThat(message.subject())
        .isEqualTo("Alarm: Skin: thinner than usual, Blown 1, high priority");
    assertThat(message.body())
        .isEqualTo(
            """
            Alarm: Skin: thinner than usual.
            It signals again.

            Line:      Blown 1
            Film:      DUO-50
            Layers:    Skin
            Since:     2026-11-20 13:00 (+01:00), the time of the sample
            Priority:  high, out of spec
            Alarm:     7, unacknowledged

            Check first:
              1. Look into the hopper
              2. Read the spot again

            """
                + Wording.CAUTIONS
                + """


            See and take it: https://filmward.plant.example/alarms.html#7
            """);
  }

  @Test
  void theCautionsGoWithEveryListOfChecks() {
    assertThat(Wording.CAUTIONS)
        .contains("not a safety interlock", "lock-out", "responsible person");
    assertThat(wording.message(Channel.EMAIL, "k", news(Happening.CLOSED, "Blown 1")).body())
        .doesNotContain("Check first");
  }

  @Test
  void aWebhooksBodyCarriesItsVersionKeyAndAlarm() throws Exception {
    Message message = wording.message(Channel.WEBHOOK, "key", news(Happening.ESCALATED, "Blown 1"));
    JsonNode body = new ObjectMapper().readTree(message.body());
    assertThat(body.get("version").asInt()).isEqualTo(1);
    assertThat(body.get("id").asText()).isEqualTo("key");
    assertThat(body.get("event").asText()).isEqualTo("escalated");
    assertThat(body.get("at").asText()).isEqualTo("2026-11-20T12:05:00Z");
    JsonNode alarm = body.get("alarm");
    assertThat(alarm.get("id").asLong()).isEqualTo(7);
    assertThat(alarm.get("layers").get(0).asText()).isEqualTo("Skin");
    assertThat(alarm.get("priority").asText()).isEqualTo("high");
    assertThat(alarm.get("caution").asText()).isEqualTo(Wording.CAUTIONS);
  }

  @Test
  void namesFromFilesStayInTheirLine() {
    Message message =
        wording.message(Channel.EMAIL, "key", news(Happening.OPENED, "B\r\nBcc: x\u202e1"));
    assertThat(message.subject()).contains("B  Bcc: x 1").doesNotContain("\n").doesNotContain("\r");
    assertThat(message.body().lines()).contains("Line:      B  Bcc: x 1");
  }

  @Test
  void aSummaryNamesEachMessageAndGivesTheNewestInFull() throws Exception {
    List<Message> held =
        List.of(
            wording.message(Channel.EMAIL, "1", news(Happening.OPENED, "Blown 1")),
            wording.message(Channel.EMAIL, "2", news(Happening.RETURNED, "Blown 2")));
    Message summary = wording.summary(Channel.EMAIL, "key", held);
    assertThat(summary.subject()).isEqualTo("2 messages about alarms that were held back");
    assertThat(summary.body())
        .contains("- " + held.get(0).subject(), "- " + held.get(1).subject())
        .endsWith(held.get(1).body());
    List<Message> bodies =
        List.of(wording.message(Channel.WEBHOOK, "1", news(Happening.OPENED, "Blown 1")));
    JsonNode json =
        new ObjectMapper().readTree(wording.summary(Channel.WEBHOOK, "key", bodies).body());
    assertThat(json.get("event").asText()).isEqualTo("summary");
    assertThat(json.get("messages").get(0).get("id").asText()).isEqualTo("1");
  }

  private static News news(Happening happening, String line) {
    AlarmFacts alarm =
        new AlarmFacts(
            7,
            new Made(line, "DUO-50"),
            "Skin: thinner than usual",
            List.of("Skin"),
            Priority.HIGH,
            true,
            "unacknowledged",
            Instant.parse("2026-11-20T12:00:00Z"),
            List.of("Look into the hopper", "Read the spot again"),
            Optional.of("https://filmward.plant.example/alarms.html#7"));
    return new News(happening, alarm, "It signals again.", AT);
  }
}
