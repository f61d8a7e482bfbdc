package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.people.Role;
import dev.filmward.store.AuditTable;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** What people do about an alarm after they took it, over HTTP: Kim, Lee, and Eva the engineer. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class CareStoryTest {
  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;
  private Api lee;
  private Api eva;
  private String alarm;

  @BeforeEach
  void anAlarmThatIsOverAndTaken() throws Exception {
    served = ServedPlant.in(database, folder).withFrozenLimits();
    api = served.api();
    lee = served.as("Lee", Role.SHIFT_LEAD);
    eva = served.as("Eva", Role.ENGINEER);
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 26, 1));
    alarm = "/api/v1/alarms/" + api.get("/api/v1/alarms").json().get("alarms").get(0).get("id");
    post("/acknowledge", "{}");
    api.upload("quiet.csv", ServedPlant.FILM.usual(26, 27));
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void aCauseWithoutAnActionKeepsItOpenUntilTheActionComes() {
    JsonNode half = post("/finding", "{'cause': 'screen-blinded'}").json();
    assertThat(half.get("closed").asBoolean()).isFalse();
    assertThat(half.get("finding").get("cause").asText()).isEqualTo("screen pack blinded");
    assertThat(openAlarms()).hasSize(1);
    assertThat(counted()).as("alarms that are told to machines").isEqualTo(1);
    String whole = "{'cause': 'screen-blinded', 'action': 'changed it'}";
    assertThat(post(lee, "/finding", whole).json().get("closed").asBoolean()).isTrue();
    assertThat(openAlarms()).isEmpty();
    assertThat(counted()).isZero();
  }

  @Test
  void anActionWithoutACauseKeepsItOpen() {
    String action = "{'cause': 'not-found-yet', 'action': 'watched it'}";
    JsonNode half = post("/finding", action).json();
    assertThat(half.get("closed").asBoolean()).isFalse();
    assertThat(half.get("finding").get("code").asText()).isEqualTo("not-found-yet");
    assertThat(openAlarms()).hasSize(1);
  }

  @Test
  void freeTextStandsBesideTheCause() {
    JsonNode found =
        post("/finding", "{'cause': 'resin-lot', 'note': 'silo 4', 'action': 'told them'}").json();
    assertThat(found.get("finding").get("code").asText()).isEqualTo("resin-lot");
    assertThat(found.get("finding").get("note").asText()).isEqualTo("silo 4");
    assertThat(history(found))
        .contains("cause: resin lot or silo changed (silo 4); action: told them");
  }

  @Test
  void anotherCauseNeedsWords() {
    String other = "{'cause': 'other', 'action': 'waited', 'note': '%s'}";
    Answer without = post("/finding", other.formatted(" "));
    assertThat(without.status()).isEqualTo(400);
    assertThat(what(without)).contains("which one");
    JsonNode with = post("/finding", other.formatted("power dip")).json();
    assertThat(with.get("finding").get("cause").asText()).isEqualTo("power dip");
    assertThat(with.get("finding").get("code").asText()).isEqualTo("other");
    assertThat(with.get("closed").asBoolean()).isTrue();
  }

  @Test
  void aCauseThatIsNotInTheListIsRefused() {
    Answer answer = post("/finding", "{'cause': 'bad luck', 'action': 'none'}");
    assertThat(answer.status()).isEqualTo(400);
    assertThat(what(answer)).contains("bad luck").contains("other");
  }

  @Test
  void commentsAreKeptAndFoundWhateverTheirCase() {
    post("/comments", "{'words': 'Düse ÜBER Nacht kalt, 100% sicher'}");
    JsonNode now = post(lee, "/comments", "{'words': 'hopper was low'}").json();
    assertThat(now.get("comments").findValuesAsText("by")).containsExactly("Kim", "Lee");
    assertThat(history(now)).contains("comment: hopper was low");
    assertThat(search("düse über")).hasSize(1);
    assertThat(search("100%")).hasSize(1);
    assertThat(search("100_")).as("no wildcards").isEmpty();
    assertThat(search("1%sicher")).as("no wildcards").isEmpty();
    assertThat(search("screen")).isEmpty();
    post("/finding", "{'cause': 'screen-blinded', 'action': 'changed it'}");
    assertThat(search("SCREEN pack")).hasSize(1);
  }

  @Test
  void whoDidItIsWhoIsSignedInWhateverTheBodySays() {
    JsonNode now = post(lee, "/comments", "{'by': 'Kim', 'words': 'not by Kim'}").json();
    assertThat(now.get("comments").findValuesAsText("by")).containsExactly("Lee");
    Answer nobody = post(served.nobody(), "/comments", "{'by': 'Kim', 'words': 'by nobody'}");
    assertThat(nobody.status()).isEqualTo(401);
    assertThat(api.get(alarm).json().get("comments")).hasSize(1);
  }

  @Test
  void itIsWithWhoTookItUntilItIsHandedOn() {
    assertThat(api.get(alarm).json().get("owner").get("name").asText()).isEqualTo("Kim");
    JsonNode now = post("/owner", "{'to': 'Lee', 'from': 'Kim', 'why': 'shift ends'}").json();
    assertThat(now.get("owner").get("name").asText()).isEqualTo("Lee");
    assertThat(now.get("owner").get("by").asText()).isEqualTo("Kim");
    assertThat(now.get("acknowledged").get("by").asText()).isEqualTo("Kim");
    assertThat(history(now)).contains("handed on to Lee, before with Kim: shift ends");
  }

  @Test
  void handingOnWhatIsWithSomebodyElseByNowIsRefusedAndSaysByWhom() {
    post("/owner", "{'to': 'Lee', 'from': 'Kim'}");
    Answer late = post(lee, "/owner", "{'to': 'Ali', 'from': 'Kim'}");
    assertThat(late.status()).isEqualTo(409);
    assertThat(what(late)).contains("with Lee").contains("by Kim").contains("13:00");
    assertThat(api.get(alarm).json().get("owner").get("name").asText()).isEqualTo("Lee");
    Answer nobody = post(lee, "/owner", "{'to': 'Ali', 'from': null}");
    assertThat(nobody.status()).isEqualTo(409);
    Answer same = post(lee, "/owner", "{'to': 'Lee', 'from': 'Lee'}");
    assertThat(same.status()).isEqualTo(409);
    assertThat(what(same)).contains("Lee has this alarm already");
  }

  @Test
  void whatIsReopenedWantsACauseAgainAndKeepsTheOldOneInItsHistory() {
    post("/finding", "{'cause': 'screen-blinded', 'action': 'changed it'}");
    JsonNode open = post(lee, "/reopen", "{'reason': 'it came back'}").json();
    assertThat(open.get("closed").asBoolean()).isFalse();
    assertThat(open.get("finding").isNull()).isTrue();
    assertThat(history(open))
        .contains("reopened: it came back; before, cause: screen pack blinded; action: changed it");
    assertThat(openAlarms()).hasSize(1);
    assertThat(search("screen pack")).as("the old finding is still found").hasSize(1);
    Answer again = post(lee, "/reopen", "{'reason': 'once more'}");
    assertThat(again.status()).isEqualTo(409);
    assertThat(what(again)).contains("open already");
    post(lee, "/finding", "{'cause': 'feeder-hopper', 'action': 'cleaned it'}");
    assertThat(openAlarms()).isEmpty();
  }

  @Test
  void aCheckOfThePlanIsTickedWithWhatWasSeen() {
    JsonNode planned = api.get(alarm).json().get("checks");
    assertThat(planned.size()).isGreaterThan(2);
    String check = planned.get(1).get("words").asText();
    String body = "{'check': '" + check + "', 'outcome': '%s', 'note': '%s'}";
    post("/checks", body.formatted("not-found", ""));
    JsonNode now = post("/checks", body.formatted("found", "40 bar up")).json();
    assertThat(now.get("checks").get(1).get("done").findValuesAsText("outcome"))
        .containsExactly("not-found", "found");
    assertThat(now.get("checks").get(0).get("done")).isEmpty();
    assertThat(history(now)).contains("check \"" + check + "\": found: 40 bar up");
    Answer odd = post("/checks", "{'check': 'ask a friend', 'outcome': 'found'}");
    assertThat(odd.status()).isEqualTo(400);
    assertThat(what(odd)).contains("ask a friend");
  }

  @Test
  void whatTheEngineersPutInThePlanIsAskedForAndWhatTheyTookOutStaysReadable() {
    String check = api.get(alarm).json().get("checks").get(1).get("words").asText();
    post("/checks", "{'check': '" + check + "', 'outcome': 'not-found'}");
    Answer kept =
        eva.post(
            "/api/v1/checks",
            json(
                "{'reason': 'shorter', 'version': 0, 'patterns': ["
                    + "{'pattern': 'all-layers', 'checks': ['look at the speed']},"
                    + "{'pattern': 'some-layers', 'checks': ['look at the feeder']},"
                    + "{'pattern': 'across-the-web', 'checks': ['look at the die']}],"
                    + "'causes': [{'code': 'screen-blinded', 'checks': ['read the pressure']}]}"));
    assertThat(kept.status()).as(kept.text()).isEqualTo(200);
    assertThat(kept.json().get("version").asInt()).isEqualTo(1);
    JsonNode now = api.get(alarm).json();
    assertThat(now.get("checks").findValuesAsText("words")).containsExactly("look at the feeder");
    assertThat(now.get("causeChecks").get(0).get("cause").asText())
        .isEqualTo("screen pack blinded");
    assertThat(now.get("formerChecks").get(0).get("words").asText()).isEqualTo(check);
    assertThat(now.get("formerChecks").get(0).get("done").get(0).get("by").asText())
        .isEqualTo("Kim");
    String byCause = "{'check': 'read the pressure', 'outcome': 'found'}";
    assertThat(post("/checks", byCause).status()).isEqualTo(200);
    assertThat(post("/checks", "{'check':'look at the speed','outcome':'found'}").status())
        .as("of another pattern")
        .isEqualTo(400);
  }

  @Test
  void aRetiredCauseStaysReadableAndIsNotChosenAgain() {
    post("/finding", "{'cause': 'start-up', 'action': 'waited'}");
    assertThat(keepCauses(0, "'retired'").status()).isEqualTo(200);
    JsonNode causes = api.get("/api/v1/causes").json();
    assertThat(causes.get("version").asInt()).isEqualTo(1);
    assertThat(causes.get("versions").get(0).get("by").asText()).isEqualTo("Eva");
    assertThat(api.get(alarm).json().get("finding").get("cause").asText())
        .isEqualTo("start-up or change-over");
    String more = "{'cause': 'start-up', 'action': 'waited longer'}";
    assertThat(post("/finding", more).status()).as("it is this alarm's cause").isEqualTo(200);
    post(lee, "/reopen", "{'reason': 'no'}");
    Answer again = post("/finding", more);
    assertThat(again.status()).isEqualTo(400);
    assertThat(what(again)).contains("retired");
  }

  @Test
  void whoLookedAtAnOldListIsToldWhoChangedIt() {
    keepCauses(0, "'active'");
    Answer late = keepCauses(0, "'retired'");
    assertThat(late.status()).isEqualTo(409);
    assertThat(what(late)).contains("Eva").contains("version 0");
    assertThat(keepCauses(1, "'retired'").status()).isEqualTo(200);
  }

  /** The built-in list, in which the cause start-up has another standing. */
  private Answer keepCauses(int version, String standing) {
    String causes = api.get("/api/v1/causes").json().get("causes").toString();
    String changed =
        causes.replaceAll(
            "(\"code\":\"start-up\",\"words\":\"[^\"]+\",\"standing\":)\"\\w+\"", "$1" + standing);
    return eva.post(
        "/api/v1/causes",
        json("{'reason': 'tidy', 'version': " + version + ", 'causes': ") + json(changed) + "}");
  }

  @Test
  void everyActStandsInTheAuditChain() {
    post("/comments", "{'words': 'hopper was low'}");
    post("/owner", "{'to': 'Lee', 'from': 'Kim'}");
    keepCauses(0, "'retired'");
    List<AuditTable.Link> newest = served.plant().store().read(tables -> tables.audit().newest(3));
    assertThat(newest)
        .extracting(link -> link.entry().by() + " " + link.entry().action())
        .containsExactly("Eva causes", "Kim alarm", "Kim alarm");
    assertThat(newest.get(0).entry().detail()).startsWith("tidy").contains("start-up or change");
    assertThat(newest.get(1).entry().detail()).isEqualTo("handed on to Lee, before with Kim");
  }

  private Answer post(String act, String body) {
    return post(api, act, body);
  }

  private Answer post(Api who, String act, String body) {
    return who.post(alarm + act, json(body));
  }

  private static String json(String singleQuoted) {
    return singleQuoted.replace('\'', '"');
  }

  private JsonNode openAlarms() {
    return api.get("/api/v1/alarms").json().get("alarms");
  }

  private long counted() {
    return served.plant().store().read(tables -> tables.alarmTally().standings()).stream()
        .mapToLong(standing -> standing.alarms())
        .sum();
  }

  private JsonNode search(String words) {
    return api.get("/api/v1/alarms/search?words=" + Api.encoded(words)).json().get("alarms");
  }

  private static List<String> history(JsonNode alarm) {
    return StreamSupport.stream(alarm.get("history").spliterator(), false)
        .map(entry -> entry.get("what").asText())
        .toList();
  }

  private static String what(Answer answer) {
    return answer.json().get("error").get("what").asText();
  }
}
