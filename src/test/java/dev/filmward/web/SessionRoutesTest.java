package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.access.MovedClock;
import dev.filmward.access.PeopleDesk;
import dev.filmward.access.TestPeople;
import dev.filmward.people.PersonName;
import dev.filmward.people.Role;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Signing in and out, and what happens to whoever loses an account or a role. */
@Tag("alone")
class SessionRoutesTest {
  private static final Duration PATIENCE = Duration.ofSeconds(20);
  private static final String FRESH = "gauge, die, nip and winder";

  @TempDir private Path folder;
  private final MovedClock clock = new MovedClock(ServedPlant.NOW);
  private ServedPlant served;
  private Api kim;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder, clock, DoorOptions.SHUT);
    kim = served.api();
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void theCookieCannotBeReadByScriptsOrSentByOtherSites() {
    TestPeople.add(served.plant().store(), clock, "Lee", Role.VIEWER);
    Answer answer = signIn(served.nobody(), "lee", TestPeople.PASSWORD);
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
    assertThat(answer.header("Set-Cookie"))
        .matches("filmward=[A-Za-z0-9_-]{43}; Path=/; HttpOnly; SameSite=Strict");
    assertThat(answer.json().get("name").asText()).isEqualTo("Lee");
    assertThat(answer.json().get("may").toString()).isEqualTo("[\"anybody\",\"read\"]");
  }

  @Test
  void aWrongPasswordAndAnUnknownNameAreAnsweredAlike() {
    TestPeople.add(served.plant().store(), clock, "Lee", Role.VIEWER);
    Answer wrong = signIn(served.nobody(), "Lee", "not the password");
    Answer unknown = signIn(served.nobody(), "Somebody", "not the password");
    assertThat(wrong.status()).isEqualTo(401);
    assertThat(wrong.header("Set-Cookie")).isEmpty();
    assertThat(unknown.status()).isEqualTo(401);
    assertThat(unknown.text()).isEqualTo(wrong.text());
  }

  /** Not a measurement: half of the time of a hash is far more than all the rest of an answer. */
  @Test
  void anUnknownNameTakesAsLongAsAKnownOne() {
    TestPeople.add(served.plant().store(), clock, "Lee", Role.VIEWER);
    signIn(served.nobody(), "Lee", "warm up");
    long known = leastNanos("Lee");
    long unknown = leastNanos("Somebody");
    assertThat((double) unknown / known).isBetween(0.4, 2.5);
  }

  private long leastNanos(String name) {
    long least = Long.MAX_VALUE;
    for (int i = 0; i < 5; i++) {
      clock.pass(Duration.ofMinutes(70));
      Api nobody = served.nobody();
      long start = System.nanoTime();
      assertThat(signIn(nobody, name, "not the password").status()).isEqualTo(401);
      least = Math.min(least, System.nanoTime() - start);
    }
    return least;
  }

  @Test
  void aOneTimePasswordOpensNothingButTheWayToAnOwnOne() {
    String once =
        kim.post("/api/v1/people", "{\"name\": \"Lee\", \"role\": \"engineer\"}")
            .json()
            .get("oneTimePassword")
            .asText();
    Api lee = served.nobody();
    JsonNode me = signIn(lee, "Lee", once).json();
    assertThat(me.get("mustChange").asBoolean()).isTrue();
    assertThat(lee.get("/api/v1/board").status()).isEqualTo(403);
    assertThat(choose(lee, once, "short").status()).isEqualTo(400);
    assertThat(choose(lee, once, once).status()).isEqualTo(400);
    assertThat(choose(lee, "wrong", FRESH).status()).isEqualTo(401);
    String before = lee.cookie();
    Answer chosen = choose(lee, once, FRESH);
    assertThat(chosen.status()).as(chosen.text()).isEqualTo(200);
    assertThat(lee.cookie()).as("renewed").isNotEqualTo(before);
    assertThat(lee.get("/api/v1/board").status()).isEqualTo(200);
    assertThat(signIn(served.nobody(), "Lee", once).status()).isEqualTo(401);
    assertThat(signIn(served.nobody(), "Lee", FRESH).status()).isEqualTo(200);
  }

  @Test
  void signingInAgainEndsTheSessionBefore() {
    TestPeople.add(served.plant().store(), clock, "Lee", Role.VIEWER);
    Api lee = served.nobody().signIn("Lee");
    Api copied = copyOf(lee);
    lee.signIn("Lee");
    assertThat(copied.get("/api/v1/board").status()).isEqualTo(401);
    assertThat(lee.get("/api/v1/board").status()).isEqualTo(200);
  }

  private Api copyOf(Api api) {
    return served.nobody().as(new dev.filmward.people.Secret(api.cookie().split("=", 2)[1]));
  }

  @Test
  void signingOutEndsThisSessionOrAllOfThem() {
    Api here = served.as("Lee", Role.VIEWER);
    Api there = served.as("Lee", Role.VIEWER);
    Api alsoHere = copyOf(here);
    here.post("/api/v1/session/end", "{}");
    assertThat(here.cookie()).isEmpty();
    assertThat(alsoHere.get("/api/v1/board").status()).isEqualTo(401);
    assertThat(there.get("/api/v1/board").status()).isEqualTo(200);
    Api third = served.as("Lee", Role.VIEWER);
    there.post("/api/v1/session/end-everywhere", "{}");
    assertThat(third.get("/api/v1/board").status()).isEqualTo(401);
  }

  @Test
  void whoChangesThePasswordIsSignedOutEverywhereElse() {
    TestPeople.add(served.plant().store(), clock, "Lee", Role.VIEWER);
    Api here = served.nobody().signIn("Lee");
    Api elsewhere = served.as("Lee", Role.VIEWER);
    assertThat(choose(here, TestPeople.PASSWORD, FRESH).status()).isEqualTo(200);
    assertThat(here.get("/api/v1/board").status()).isEqualTo(200);
    assertThat(elsewhere.get("/api/v1/board").status()).isEqualTo(401);
  }

  @Test
  void aDisabledPersonLosesSessionsAndOpenStreamsAtOnce() throws Exception {
    Api lee = served.as("Lee", Role.ENGINEER);
    try (EventClient page = EventClient.connect(lee);
        EventClient other = EventClient.connect(kim)) {
      page.next("hello", PATIENCE);
      other.next("hello", PATIENCE);
      assertThat(kim.post(path("Lee", "disable"), "{}").status()).isEqualTo(200);
      page.next(EventClient.END, Duration.ofSeconds(5));
      assertThat(lee.get("/api/v1/board").status()).isEqualTo(401);
      kim.upload("a.csv", ServedPlant.FILM.usual(0, 1));
      other.next("file", PATIENCE);
    }
  }

  @Test
  void anotherRoleHoldsAtOnceAndUnderANewSession() {
    Api lee = served.as("Lee", Role.ENGINEER);
    assertThat(kim.post(path("Lee", "role"), "{\"role\": \"viewer\"}").status()).isEqualTo(200);
    assertThat(lee.get("/api/v1/board").status()).isEqualTo(401);
    Api again = served.as("Lee", Role.VIEWER);
    assertThat(again.post("/api/v1/limits/freeze", "{}").status()).isEqualTo(403);
  }

  private String path(String name, String act) {
    long id = new PeopleDesk(served.plant().store(), clock).named(name).orElseThrow().id();
    return "/api/v1/people/" + id + "/" + act;
  }

  @Test
  void onlyWhatAPersonDoesKeepsASessionFromGettingIdle() {
    Api looking = served.as("Lee", Role.ENGINEER);
    Api acting = served.as("Lee", Role.ENGINEER);
    for (int hour = 1; hour < 12; hour++) {
      clock.pass(Duration.ofHours(1));
      looking.get("/api/v1/board");
      acting.get("/api/v1/me");
    }
    assertThat(looking.get("/api/v1/board").status()).isEqualTo(401);
    assertThat(acting.get("/api/v1/board").status()).isEqualTo(200);
    clock.pass(Duration.ofHours(1));
    assertThat(acting.get("/api/v1/board").status()).as("in any case").isEqualTo(401);
  }

  @Test
  void sessionsOutliveARestart() throws Exception {
    served.close();
    String cookie = kim.cookie();
    served = ServedPlant.in(folder, clock, DoorOptions.SHUT);
    Api again = served.nobody().as(new dev.filmward.people.Secret(cookie.split("=", 2)[1]));
    assertThat(again.get("/api/v1/me").json().get("name").asText()).isEqualTo("Kim");
  }

  @Test
  void tooManyFailuresAreToldToWaitAndLaterLetIn() {
    TestPeople.add(served.plant().store(), clock, "Lee", Role.VIEWER);
    for (int i = 0; i < 4; i++) {
      assertThat(signIn(served.nobody(), "Lee", "wrong").status()).isEqualTo(401);
    }
    Answer early = signIn(served.nobody(), "Lee", TestPeople.PASSWORD);
    assertThat(early.status()).isEqualTo(429);
    assertThat(early.header("Retry-After")).isEqualTo("2");
    assertThat(early.json().get("error").get("instead").asText()).contains("wait");
    clock.pass(Duration.ofSeconds(2));
    assertThat(signIn(served.nobody(), "Lee", TestPeople.PASSWORD).status()).isEqualTo(200);
  }

  @Test
  void whoActsIsWhoIsSignedInWhateverTheBodySays() {
    kim.upload("baseline.csv", ServedPlant.FILM.usual(0, 25));
    Api lee = served.as("Lee", Role.ENGINEER);
    lee.post(
        "/api/v1/limits/freeze",
        """
        {"line": "Blown 1", "structure": "DUO-50", "by": "Kim", "reason": "quiet"}
        """);
    JsonNode limits =
        kim.get("/api/v1/lines/Blown%201/limits?structure=DUO-50").json().get("limits").get(0);
    assertThat(limits.get("changes").get(0).get("by").asText()).isEqualTo("Lee");
    Answer file =
        lee.send(
            lee.change(
                "/api/v1/files?name=b.csv&by=Kim", "text/csv", ServedPlant.FILM.usual(25, 26)));
    assertThat(file.json().get("by").asText()).isEqualTo("Lee");
  }

  @Test
  void aTokenSendsFilesUnderItsNameUntilItIsRevoked() {
    Answer made =
        kim.post(
            "/api/v1/tokens",
            """
            {"name": "Gauge 3", "scope": ["send-files"], "lastDay": "2026-12-31"}
            """);
    assertThat(made.status()).as(made.text()).isEqualTo(200);
    assertThat(made.json().get("endsAt").asText()).isEqualTo("2027-01-01T00:00:00+01:00");
    String bearer = "Bearer " + made.json().get("secret").asText();
    assertThat(kim.get("/api/v1/tokens").text()).doesNotContain(bearer.substring(7));
    assertThat(send(bearer).json().get("by").asText()).isEqualTo("Gauge 3");
    assertThat(send(bearer + "x").status()).isEqualTo(401);
    long id = made.json().get("id").asLong();
    kim.post("/api/v1/tokens/" + id + "/revoke", "{}");
    assertThat(send(bearer).status()).isEqualTo(401);
  }

  private Answer send(String bearer) {
    Api machine = served.nobody();
    return machine.send(
        machine
            .change("/api/v1/files?name=g.csv", "text/csv", ServedPlant.FILM.usual(0, 1))
            .header("Authorization", bearer));
  }

  @Test
  void withoutGuestsNobodyIsLetInByANameAlone() {
    Answer answer = served.nobody().post("/api/v1/session/guest", "{\"name\": \"Kim\"}");
    assertThat(answer.status()).isEqualTo(401);
    assertThat(answer.header("Set-Cookie")).isEmpty();
  }

  @Test
  void aGuestOfADemonstrationIsLetInByName() throws Exception {
    Path other = folder.resolve("demo");
    try (ServedPlant demo =
        ServedPlant.in(other, clock, DoorOptions.SHUT.withGuests(List.of("Robin")))) {
      new PeopleDesk(demo.plant().store(), clock)
          .addWithoutPassword(new PersonName("Robin"), Role.VIEWER, "test");
      Api robin = demo.nobody();
      assertThat(robin.get("/api/v1/me").json().get("guests").get(0).get("role").asText())
          .isEqualTo("viewer");
      assertThat(robin.post("/api/v1/session/guest", "{\"name\": \"Kim\"}").status())
          .isEqualTo(401);
      robin.post("/api/v1/session/guest", "{\"name\": \"Robin\"}");
      assertThat(robin.get("/api/v1/board").status()).isEqualTo(200);
    }
  }

  private static Answer signIn(Api api, String name, String password) {
    return api.post(
        "/api/v1/session", "{\"name\": \"" + name + "\", \"password\": \"" + password + "\"}");
  }

  private static Answer choose(Api api, String current, String fresh) {
    return api.post(
        "/api/v1/me/password", "{\"current\": \"" + current + "\", \"new\": \"" + fresh + "\"}");
  }
}
