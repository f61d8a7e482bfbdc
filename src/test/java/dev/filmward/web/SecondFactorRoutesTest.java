package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.access.MovedClock;
import dev.filmward.access.PeopleDesk;
import dev.filmward.access.TestCodes;
import dev.filmward.access.TestPeople;
import dev.filmward.people.PersonName;
import dev.filmward.people.Role;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A code besides the password, and the password once more, asked for by the real server. */
class SecondFactorRoutesTest {
  private static final String CURRENT = "{\"current\": \"" + TestPeople.PASSWORD + "\"}";
  private static final String WRONG = "{\"current\": \"not the password\"}";

  @TempDir private Path folder;
  private final MovedClock clock = new MovedClock(ServedPlant.NOW);
  private ServedPlant served;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder, clock, DoorOptions.SHUT.withCodesFor(Set.of(Role.QUALITY)));
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void aPersonTurnsItOnSignsInWithACodeAndTurnsItOff() {
    Api lee = in("Lee", Role.VIEWER);
    Api elsewhere = served.as("Lee", Role.VIEWER);
    assertThat(lee.post("/api/v1/me/second-factor", WRONG).status()).isEqualTo(401);
    JsonNode key = lee.post("/api/v1/me/second-factor", CURRENT).json();
    assertThat(key.get("key").asText()).matches("([A-Z2-7]{4} ){7}[A-Z2-7]{4}");
    assertThat(key.get("address").asText()).startsWith("otpauth://totp/Filmward:Lee?secret=");
    Answer on = lee.post("/api/v1/me/second-factor/on", "{\"code\": \"" + code(key) + "\"}");
    assertThat(on.status()).as(on.text()).isEqualTo(200);
    assertThat(on.json().get("recoveryCodes")).hasSize(10);
    assertThat(on.json().get("secondFactor").asBoolean()).isTrue();
    assertThat(elsewhere.get("/api/v1/board").status()).as("other sessions end").isEqualTo(401);
    assertThat(lee.get("/api/v1/me").json().get("recoveryCodesLeft").asInt()).isEqualTo(10);

    clock.pass(Duration.ofSeconds(30));
    Answer first = signIn("Lee", "");
    assertThat(first.status()).isEqualTo(401);
    assertThat(first.header("Set-Cookie")).isEmpty();
    assertThat(first.json().at("/error/asks").asText()).isEqualTo("code");
    assertThat(signIn("Lee", code(key)).status()).isEqualTo(200);
    assertThat(signIn("Lee", code(key)).json().at("/error/what").asText()).contains("used before");
    String recovery = on.json().get("recoveryCodes").get(4).asText();
    assertThat(signIn("Lee", recovery).json().get("recoveryCodesLeft").asInt()).isEqualTo(9);

    assertThat(lee.post("/api/v1/me/second-factor/off", WRONG).status()).isEqualTo(401);
    assertThat(lee.post("/api/v1/me/second-factor/off", CURRENT).status()).isEqualTo(200);
    assertThat(signIn("Lee", "").status()).isEqualTo(200);
  }

  @Test
  void theFirstStepTellsNothingWherePasswordAndNameDoNotBelongTogether() {
    Api lee = in("Lee", Role.VIEWER);
    JsonNode key = lee.post("/api/v1/me/second-factor", CURRENT).json();
    lee.post("/api/v1/me/second-factor/on", "{\"code\": \"" + code(key) + "\"}");
    TestPeople.add(served.plant().store(), clock, "Robin", Role.VIEWER);
    String wrong = "\", \"password\": \"not the password\"}";
    Answer with = served.nobody().post("/api/v1/session", "{\"name\": \"Lee" + wrong);
    Answer without = served.nobody().post("/api/v1/session", "{\"name\": \"Robin" + wrong);
    assertThat(with.text()).isEqualTo(without.text());
    assertThat(with.json().at("/error/asks").isMissingNode()).isTrue();
  }

  @Test
  void aRoleThatMustHaveOneDoesNothingBeforeAndEverythingAtOnceAfter() {
    Api sam = in("Sam", Role.QUALITY);
    assertThat(sam.get("/api/v1/me").json().get("mustSetUp").asBoolean()).isTrue();
    Answer refused = sam.get("/api/v1/board");
    assertThat(refused.status()).isEqualTo(403);
    assertThat(refused.json().at("/error/what").asText()).contains("second factor");
    JsonNode key = sam.post("/api/v1/me/second-factor", CURRENT).json();
    assertThat(sam.get("/api/v1/board").status()).as("offered is not on").isEqualTo(403);
    Answer on = sam.post("/api/v1/me/second-factor/on", "{\"code\": \"" + code(key) + "\"}");
    assertThat(on.json().get("may").toString()).contains("dispose");
    assertThat(sam.get("/api/v1/board").status()).isEqualTo(200);
    sam.post("/api/v1/me/second-factor/off", CURRENT);
    assertThat(sam.get("/api/v1/board").status()).isEqualTo(403);
  }

  @Test
  void anAdministratorFreesSomebodyWhoLostThePhone() {
    Api lee = in("Lee", Role.VIEWER);
    JsonNode key = lee.post("/api/v1/me/second-factor", CURRENT).json();
    lee.post("/api/v1/me/second-factor/on", "{\"code\": \"" + code(key) + "\"}");
    Api kim = served.api();
    assertThat(kim.get("/api/v1/people").text()).doesNotContain(key.get("key").asText());
    String path = path("Lee", "second-factor/off");
    assertThat(served.as("A viewer", Role.VIEWER).post(path, "{}").status()).isEqualTo(403);
    Answer freed = kim.post(path, "{}");
    assertThat(freed.status()).as(freed.text()).isEqualTo(200);
    assertThat(freed.json().get("secondFactor").asBoolean()).isFalse();
    assertThat(lee.get("/api/v1/board").status()).as("signed out").isEqualTo(401);
    assertThat(kim.post(path, "{}").status()).isEqualTo(409);
    assertThat(signIn("Lee", "").status()).isEqualTo(200);
  }

  @Test
  void guestsOfADemonstrationAreAskedForNothing() throws Exception {
    DoorOptions doors =
        DoorOptions.SHUT.withGuests(List.of("Jo")).withCodesFor(Set.of(Role.ADMINISTRATOR));
    try (ServedPlant demo = ServedPlant.in(folder.resolve("demo"), clock, doors)) {
      new PeopleDesk(demo.plant().store(), clock)
          .addWithoutPassword(new PersonName("Jo"), Role.ADMINISTRATOR, "test");
      Api jo = demo.nobody();
      jo.post("/api/v1/session/guest", "{\"name\": \"Jo\"}");
      clock.pass(Duration.ofHours(1));
      Answer added = jo.post("/api/v1/people", "{\"name\": \"Lee\", \"role\": \"viewer\"}");
      assertThat(added.status()).as(added.text()).isEqualTo(200);
      assertThat(demo.api().get("/api/v1/board").status()).as("Kim is no guest").isEqualTo(403);
    }
  }

  @Test
  void whatAdministratorsChangeWantsThePasswordOnceMoreAfterTenMinutes() {
    Api jo = in("Jo", Role.ADMINISTRATOR);
    String add = "{\"name\": \"%s\", \"role\": \"viewer\"}";
    assertThat(jo.post("/api/v1/people", add.formatted("A")).status()).isEqualTo(200);
    clock.pass(Duration.ofMinutes(10));
    for (String path :
        List.of(
            "/api/v1/people",
            "/api/v1/tokens",
            "/api/v1/telling/settings",
            "/api/v1/telling/rules",
            path("A", "disable"))) {
      Answer asked = jo.post(path, add.formatted("B"));
      assertThat(asked.status()).as(path).isEqualTo(403);
      assertThat(asked.json().at("/error/asks").asText()).isEqualTo("confirm");
    }
    assertThat(jo.get("/api/v1/people").text()).doesNotContain("\"B\"");
    assertThat(jo.post("/api/v1/me/confirm", WRONG).status()).isEqualTo(401);
    assertThat(jo.post("/api/v1/people", add.formatted("B")).status()).isEqualTo(403);
    assertThat(jo.post("/api/v1/me/confirm", CURRENT).status()).isEqualTo(200);
    assertThat(jo.post("/api/v1/people", add.formatted("B")).status()).isEqualTo(200);
    assertThat(served.as("Lee", Role.VIEWER).post("/api/v1/people", "{}").text())
        .as("who may not is told that, and not asked")
        .contains("administer")
        .doesNotContain("confirm");
  }

  @Test
  void whoComesInIsToldOfTheSignInBefore() {
    TestPeople.add(served.plant().store(), clock, "Lee", Role.VIEWER);
    assertThat(signIn("Lee", "").json().get("earlier").isNull()).isTrue();
    clock.pass(Duration.ofHours(24));
    Api lee = served.nobody().signIn("Lee");
    JsonNode earlier = lee.get("/api/v1/me").json().get("earlier");
    assertThat(earlier.get("at").asText()).isEqualTo("2026-11-20T13:00:00+01:00");
    assertThat(earlier.get("from").asText()).isEqualTo("127.0.0.1");
    lee.post(
        "/api/v1/me/password",
        "{\"current\": \"" + TestPeople.PASSWORD + "\", \"new\": \"gauge, die and winder\"}");
    assertThat(lee.get("/api/v1/me").json().get("earlier")).isEqualTo(earlier);
  }

  /** Somebody with a password who signs in with it. */
  private Api in(String name, Role role) {
    TestPeople.add(served.plant().store(), clock, name, role);
    return served.nobody().signIn(name);
  }

  private String code(JsonNode key) {
    return TestCodes.now(key.get("key").asText(), clock);
  }

  private Answer signIn(String name, String code) {
    return served
        .nobody()
        .post(
            "/api/v1/session",
            "{\"name\": \"%s\", \"password\": \"%s\", \"code\": \"%s\"}"
                .formatted(name, TestPeople.PASSWORD, code));
  }

  private String path(String name, String act) {
    long id = new PeopleDesk(served.plant().store(), clock).named(name).orElseThrow().id();
    return "/api/v1/people/" + id + "/" + act;
  }
}
