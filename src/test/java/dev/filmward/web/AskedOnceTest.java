package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.alarm.Course;
import dev.filmward.people.Role;
import dev.filmward.store.StoreTally;
import dev.filmward.store.TestDatabase;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * How often the database is asked, which is the same on every machine; and that what is remembered
 * instead is never older than what has happened.
 */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class AskedOnceTest {
  private static final String SERIES =
      "/api/v1/series?line=Blown%201&structure=DUO-50&kind=layer&position=1&pixels=800";
  private static final List<String> SHOWN =
      List.of("/api/v1/board", "/api/v1/alarms?state=open", "/api/v1/alarms?state=all", SERIES);

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;
  private int next = 25;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(database, folder).withFrozenLimits();
    api = served.api();
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void aSampleThatIsSentIsOneTransaction() {
    usual(1);
    assertThat(asked(() -> usual(1)).transactions()).isEqualTo(1);
    assertThat(asked(this::thin).transactions()).isEqualTo(1);
  }

  @Test
  void aFileThatIsRefusedIsOneTransaction() {
    StoreTally asked = asked(() -> api.upload("x.csv", "no heading of ours\n"));
    assertThat(asked.transactions()).isEqualTo(1);
    JsonNode newest = api.get("/api/v1/files").json().get("files").get(0);
    assertThat(newest.get("name").asText()).isEqualTo("x.csv");
    assertThat(newest.get("refusal").asText()).isNotBlank();
  }

  @Test
  void aListOfManyAlarmsAsksNoMoreThanAListOfOne() {
    anAlarm();
    StoreTally one = asked(() -> api.get("/api/v1/alarms?state=all"));
    for (int more = 0; more < 4; more++) {
      anAlarm();
    }
    StoreTally five = asked(() -> assertThat(alarms()).hasSize(5));
    assertThat(five).isEqualTo(one);
  }

  @Test
  void aPageThatAsksAgainWhileNothingHappenedIsAnsweredWithoutTheDatabase() {
    anAlarm();
    for (String path : SHOWN) {
      Api.Answer first = api.get(path);
      StoreTally again = asked(() -> assertThat(api.get(path).text()).isEqualTo(first.text()));
      assertThat(again).as(path).isEqualTo(new StoreTally(0, 0));
    }
  }

  @Test
  void aBrowserThatHasTheAnswerIsNotSentItAgain() {
    for (String path : SHOWN) {
      String tag = api.get(path).header("ETag");
      assertThat(tag).as(path).isNotBlank();
      assertThat(api.send(api.request(path).header("If-None-Match", tag)).status())
          .as(path)
          .isEqualTo(304);
    }
    usual(1);
    thin();
    for (String path : SHOWN) {
      String old = api.get(path).header("ETag");
      thin();
      Api.Answer now = api.send(api.request(path).header("If-None-Match", old));
      assertThat(now.status()).as(path).isEqualTo(200);
    }
  }

  @Test
  void everythingThatIsShownIsNewAsSoonAsASampleIsStored() {
    for (int round = 0; round < 5; round++) {
      SHOWN.forEach(api::get);
      String name = SmallFilm.sample(next);
      thin();
      JsonNode line = api.get("/api/v1/board").json().get("lines").get(0);
      assertThat(line.get("lastSample").get("sample").asText()).isEqualTo(name);
      assertThat(line.get("openAlarms").asInt()).isEqualTo(1);
      JsonNode columns = api.get(SERIES).json().get("columns");
      assertThat(columns.get("sample").get(25 + round).asText()).isEqualTo(name);
      assertThat(alarms().get(0).get("signals").get(0).get("sample").asText()).isEqualTo(name);
    }
  }

  @Test
  void everythingThatIsShownIsNewAsSoonAsAPersonHasDoneIt() {
    thin();
    String alarm = "/api/v1/alarms/" + alarms().get(0).get("id");
    api.post(alarm + "/comments", "{\"words\": \"die cleaned\"}");
    assertThat(alarms().get(0).get("comments")).hasSize(1);
    api.post(alarm + "/acknowledge", "{}");
    assertThat(alarms().get(0).get("state").asText()).isEqualTo("acknowledged");
    api.post(alarm + "/shelve", "{\"minutes\": 60, \"reason\": \"trial\"}");
    assertThat(alarms().get(0).get("hold").isObject()).isTrue();
    assertThat(api.get("/api/v1/board").json().get("lines").get(0).get("held").asInt())
        .isEqualTo(1);
    api.freeze();
    assertThat(api.get(SERIES).json().get("limits")).hasSize(2);
    assertThat(
            api.get("/api/v1/board")
                .json()
                .get("lines")
                .get(0)
                .get("limits")
                .get("version")
                .asInt())
        .isEqualTo(2);
  }

  @Test
  void whoeverIsDisabledIsOutWithTheNextRequest() {
    Api lee = served.as("Lee", Role.VIEWER);
    assertThat(lee.get("/api/v1/alarms").status()).isEqualTo(200);
    assertThat(asked(() -> lee.get("/api/v1/alarms")).statements()).isZero();
    int id = -1;
    for (JsonNode person : api.get("/api/v1/people").json().get("people")) {
      id = person.get("name").asText().equals("Lee") ? person.get("id").asInt() : id;
    }
    assertThat(api.post("/api/v1/people/" + id + "/disable", "{}").status()).isEqualTo(200);
    assertThat(lee.get("/api/v1/alarms").status()).isEqualTo(401);
  }

  private void usual(int samples) {
    api.upload("usual.csv", ServedPlant.FILM.usual(next, next + samples));
    next += samples;
  }

  private void thin() {
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(next, next + 1, 1));
    next++;
  }

  /** One that is over when it comes back. */
  private void anAlarm() {
    thin();
    usual(Course.SAME_EXCURSION + 1);
  }

  private JsonNode alarms() {
    return api.get("/api/v1/alarms?state=all").json().get("alarms");
  }

  private StoreTally asked(Runnable work) {
    StoreTally before = served.plant().store().tally();
    work.run();
    return served.plant().store().tally().since(before);
  }
}
