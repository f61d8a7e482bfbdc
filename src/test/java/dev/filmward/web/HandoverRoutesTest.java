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

/**
 * A shift is handed over by HTTP. It is 13:00 in the plant on a Friday: the early shift, which ends
 * at 14:00; the first samples were taken at 12:30.
 */
class HandoverRoutesTest {
  private static final String HANDOVER = "/api/v1/handover";
  private static final String EARLY = "2026-11-20 Early";

  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;
  private Api lee;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder).withFrozenLimits();
    api = served.api();
    lee = served.as("Lee", Role.SHIFT_LEAD);
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void theShiftThatGoesOnIsShownWithAllItsParts() {
    JsonNode page = api.get(HANDOVER).json();
    JsonNode shift = page.get("handover").get("shift");
    assertThat(shift.get("shift").asText()).isEqualTo(EARLY);
    assertThat(shift.get("from").asText()).isEqualTo("2026-11-20T06:00:00+01:00");
    assertThat(page.get("previous").get("shift").asText()).isEqualTo("2026-11-19 Night");
    assertThat(page.get("next").get("shift").asText()).isEqualTo("2026-11-20 Late");
    assertThat(page.get("signed").isNull()).isTrue();
    JsonNode line = items("lines").get(0);
    assertThat(line.get("title").asText()).isEqualTo("DUO-50, Two-layer film, 50 um");
    assertThat(line.get("detail").asText()).startsWith("25 samples in the shift");
    assertThat(items("settings")).hasSize(2);
    assertThat(items("settings").get(0).get("detail").asText()).isEqualTo("Kim: quiet start");
  }

  @Test
  void everyPartIsRecorded() {
    JsonNode sections = api.get(HANDOVER).json().get("handover").get("sections");
    assertThat(sections).isNotEmpty().allMatch(section -> section.get("kept").asBoolean());
  }

  @Test
  void whatIsPutAsideAndWhichRollsAreHeldIsTold() {
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 26, 1));
    lee.post("/api/v1/alarms/1/shelve", "{\"minutes\": 30, \"reason\": \"known\"}");
    lee.post(
        "/api/v1/rolls/hold",
        """
        {"reason": "thin", "rolls":
          [{"line": "Blown 1", "structure": "DUO-50", "roll": "R1", "version": 0}]}
        """);
    JsonNode aside = items("set-aside").get(0);
    assertThat(aside.get("state").asText()).isEqualTo("shelved");
    assertThat(aside.get("detail").asText()).isEqualTo("until 2026-11-20 13:30, Lee: known");
    JsonNode roll = items("rolls").get(0);
    assertThat(roll.get("title").asText()).isEqualTo("Roll R1 of DUO-50");
    assertThat(roll.get("detail").asText()).isEqualTo("Lee: thin");
  }

  /** Samples came from 12:30 to 12:54, one a minute; it is 13:00. */
  @Test
  void timesWithoutSamplesAreTold() {
    JsonNode gaps = items("gaps");
    assertThat(gaps).hasSize(2);
    assertThat(gaps.get(0).get("at").asText()).isEqualTo("2026-11-20T06:00:00+01:00");
    assertThat(gaps.get(0).get("detail").asText()).isEqualTo("for 6 h 30 min");
    assertThat(gaps.get(1).get("at").asText()).isEqualTo("2026-11-20T12:54:00+01:00");
    assertThat(gaps.get(1).get("state").asText()).isEqualTo("to the end");
  }

  @Test
  void alarmsAreToldWhileTheyAreOpenWithoutACauseAndWhenTheyAreClosed() {
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 26, 1));
    assertThat(items("open-alarms").get(0).get("title").asText())
        .isEqualTo("Skin: thinner than usual");
    assertThat(items("no-cause")).isEmpty();
    String alarm = "/api/v1/alarms/1";
    api.post(alarm + "/acknowledge", "{}");
    assertThat(items("no-cause").get(0).get("detail").asText()).contains("taken by Kim");
    api.upload("quiet.csv", ServedPlant.FILM.usual(26, 27));
    api.post(alarm + "/finding", "{\"cause\": \"screen-blinded\", \"action\": \"new\"}");
    assertThat(items("open-alarms")).isEmpty();
    assertThat(items("closed").get(0).get("detail").asText())
        .contains("screen pack blinded; new (Kim)");
  }

  @Test
  void refusedFilesAndRowsInQuarantineAreTold() {
    api.upload("letter.csv", "Dear all,\nthe film is good.\n");
    api.upload("odd.csv", ServedPlant.FILM.usual(25, 26).replaceFirst("20\\.[0-9]+", "twelve"));
    assertThat(items("files"))
        .extracting(item -> item.get("state").asText())
        .containsExactly("refused", "in quarantine");
  }

  @Test
  void aThingToDoIsCarriedOverUntilSomebodySettlesIt() {
    Answer written =
        api.post(
            HANDOVER + "/notes",
            """
            {"line": "Blown 1", "text": "Die bolt 7 SQUEAKS", "roll": "R1",
             "at": "2026-11-19T23:00:00+01:00", "kind": "follow-up"}
            """);
    assertThat(written.status()).as(written.text()).isEqualTo(200);
    assertThat(items("notes")).isEmpty();
    JsonNode carried = items("carried-over").get(0);
    assertThat(carried.get("title").asText()).isEqualTo("Die bolt 7 SQUEAKS");
    assertThat(carried.get("state").asText()).isEqualTo("to do");
    String note = HANDOVER + "/notes/" + written.json().get("id") + "/settle";
    String outcome = "{\"outcome\": \"greased\"}";
    assertThat(lee.post(note, outcome).status()).isEqualTo(200);
    assertThat(items("carried-over").get(0).get("state").asText()).isEqualTo("settled");
    assertThat(api.post(note, outcome).status()).isEqualTo(409);
    // settled in the early shift, so that the late one has nothing to do with it
    JsonNode late = api.get(HANDOVER + "?shift=2026-11-20%20Late").json();
    assertThat(part(late, "carried-over")).isEmpty();
    assertThat(part(api.get(HANDOVER + "?line=Other").json(), "carried-over")).isEmpty();
  }

  @Test
  void notesAreFoundByAllTheirWordsInAnyCase() {
    note("Bolt 7 squeaks");
    note("bolt 8 is new, 100 %");
    assertThat(found("BOLT")).hasSize(2);
    assertThat(found("bolt%20squeak")).hasSize(1);
    assertThat(found("kim%208")).hasSize(1);
    assertThat(found("%25")).hasSize(1);
    assertThat(found("")).hasSize(2);
    assertThat(api.get(HANDOVER + "/notes?line=Blown%201").json().get("notes")).isEmpty();
  }

  @Test
  void twoPeopleSignWhatTheySawAndItStaysAsItWas() {
    note("Die is warm");
    JsonNode page = api.get(HANDOVER).json();
    String digest = page.get("digest").asText();
    note("written after the look");
    JsonNode given = sign(api, "outgoing", digest).json();
    assertThat(given.get("digest").asText()).isEqualTo(digest);
    assertThat(given.get("handover")).isEqualTo(page.get("handover"));
    assertThat(given.get("signatures").get(0).get("by").asText()).isEqualTo("Kim");
    assertThat(given.get("signatures").get(0).get("meaning").asText()).contains("hand over");
    assertThat(given.get("changes").findValuesAsText("title"))
        .containsExactly("written after the look");
    assertThat(sign(api, "incoming", digest).status()).isEqualTo(400);
    assertThat(sign(lee, "incoming", "0".repeat(64)).status()).isEqualTo(409);
    JsonNode taken = sign(lee, "incoming", digest).json();
    assertThat(taken.get("signatures").findValuesAsText("by")).containsExactly("Kim", "Lee");
    assertThat(sign(served.as("Ali", Role.ENGINEER), "incoming", digest).status()).isEqualTo(409);
    assertThat(sign(api, "outgoing", digest).status()).isEqualTo(409);
    JsonNode kept = api.get(HANDOVER).json().get("signed");
    assertThat(kept.get("handover")).isEqualTo(page.get("handover"));
    assertThat(audited("handover"))
        .hasSize(2)
        .allSatisfy(detail -> assertThat(detail).contains(digest));
  }

  @Test
  void beforeTheOtherSignsItMayBeHandedOverAnew() {
    sign(api, "outgoing", api.get(HANDOVER).json().get("digest").asText());
    note("forgot to say");
    String second = api.get(HANDOVER).json().get("digest").asText();
    assertThat(sign(api, "outgoing", second).status()).isEqualTo(200);
    JsonNode signed = api.get(HANDOVER).json().get("signed");
    assertThat(signed.get("digest").asText()).isEqualTo(second);
    assertThat(signed.get("changes")).isEmpty();
  }

  @Test
  void whatNobodySawOrHasNotBegunCannotBeSigned() {
    assertThat(sign(api, "outgoing", "f".repeat(64)).status()).isEqualTo(409);
    assertThat(sign(api, "incoming", "f".repeat(64)).status()).isEqualTo(409);
    String other = api.get(HANDOVER + "?line=Blown%201").json().get("digest").asText();
    assertThat(sign(api, "outgoing", other).status()).isEqualTo(400);
    String late = api.get(HANDOVER + "?shift=2026-11-20%20Late").json().get("digest").asText();
    String body = "{\"line\": \"\", \"shift\": \"2026-11-20 Late\", \"side\": \"outgoing\",";
    assertThat(api.post(HANDOVER + "/sign", body + "\"digest\": \"" + late + "\"}").status())
        .isEqualTo(409);
    assertThat(api.get(HANDOVER + "?shift=Early").status()).isEqualTo(400);
    assertThat(api.get(HANDOVER + "?shift=2026-11-20%20Tea").status()).isEqualTo(404);
  }

  private static Answer sign(Api who, String side, String digest) {
    return who.post(
        HANDOVER + "/sign",
        """
        {"line": "", "shift": "%s", "side": "%s", "digest": "%s"}
        """
            .formatted(EARLY, side, digest));
  }

  private void note(String text) {
    api.post(HANDOVER + "/notes", "{\"text\": \"%s\"}".formatted(text));
  }

  private JsonNode found(String words) {
    return api.get(HANDOVER + "/notes?text=" + words).json().get("notes");
  }

  private JsonNode items(String part) {
    return part(api.get(HANDOVER).json(), part);
  }

  private static JsonNode part(JsonNode page, String part) {
    for (JsonNode section : page.get("handover").get("sections")) {
      if (section.get("part").asText().equals(part)) {
        return section.get("items");
      }
    }
    throw new AssertionError("no part " + part);
  }

  private List<String> audited(String action) {
    return served.plant().store().read(tables -> tables.audit().newest(100)).stream()
        .filter(link -> link.entry().action().equals(action))
        .map(link -> link.entry().detail())
        .toList();
  }
}
