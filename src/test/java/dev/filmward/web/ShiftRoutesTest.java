package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The shift calendar over HTTP. It is 13:00 in the plant on 20 November 2026. */
class ShiftRoutesTest {
  private static final String SHIFTS = "/api/v1/shifts";

  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder);
    api = served.api();
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void untilSomebodySetsAnotherThereAreThreeShiftsOfEightHours() {
    JsonNode shifts = api.get(SHIFTS).json();
    assertThat(shifts.get("current").get("shift").asText()).isEqualTo("2026-11-20 Early");
    assertThat(shifts.get("calendar").get("shifts").findValuesAsText("startsAt"))
        .containsExactly("06:00", "14:00", "22:00");
    assertThat(shifts.get("versions")).isEmpty();
    assertThat(shifts.get("ahead").size()).isEqualTo(1 + 3 * 14);
  }

  @Test
  void aCalendarIsKeptWithWhoAndWhyAndTheDayFromWhichItHolds() {
    Answer set = set("2026-11-21", "07:00");
    assertThat(set.status()).as(set.text()).isEqualTo(200);
    JsonNode shifts = api.get(SHIFTS).json();
    assertThat(shifts.get("current").get("shift").asText()).isEqualTo("2026-11-20 Early");
    JsonNode version = shifts.get("versions").get(0);
    assertThat(version.get("by").asText()).isEqualTo("Kim");
    assertThat(version.get("reason").asText()).isEqualTo("as agreed");
    // 20 November ends with its night at 07:00; then A and B in turn
    JsonNode night = shifts.get("ahead").get(2);
    assertThat(night.get("name").asText()).isEqualTo("Night");
    assertThat(night.get("hours").asDouble()).isEqualTo(9);
    assertThat(shifts.get("ahead").get(3).get("crew").asText()).isEqualTo("A");
    assertThat(shifts.get("ahead").get(5).get("crew").asText()).isEqualTo("B");
    assertThat(served.plant().store().read(tables -> tables.audit().newest(1)).get(0).entry())
        .satisfies(
            entry -> {
              assertThat(entry.action()).isEqualTo("shifts");
              assertThat(entry.detail()).contains("Day 07:00 by A B").contains("before: Early");
            });
  }

  @Test
  void onlyTheFirstCalendarMayReachBack() {
    assertThat(set("2026-01-01", "07:00").status()).isEqualTo(200);
    assertThat(api.get(SHIFTS).json().get("current").get("name").asText()).isEqualTo("Day");
    Answer again = set("2026-11-20", "06:00");
    assertThat(again.status()).isEqualTo(400);
    assertThat(again.text()).contains("2026-11-21");
    assertThat(set("2026-11-21", "06:00").status()).isEqualTo(200);
  }

  @Test
  void whatIsNoCalendarIsRefusedWithWhatIsWrong() {
    assertThat(set("tomorrow", "07:00").text()).contains("2026-11-25");
    assertThat(set("2026-11-21", "7 am").text()).contains("06:00");
    assertThat(set("2026-11-21", "19:00").text()).contains("two that begin at 19:00");
  }

  private Answer set(String from, String firstStart) {
    return api.post(
        SHIFTS,
        """
        {"reason": "as agreed", "holdsFrom": "%s", "linesPerOperator": 3, "shifts": [
          {"name": "Day", "startsAt": "%s", "days": [1,2,3,4,5,6,7], "crews": ["A", "B"]},
          {"name": "Dark", "startsAt": "19:00", "days": [1,2,3,4,5,6,7], "crews": []}]}
        """
            .formatted(from, firstStart));
  }
}
