package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.web.Api.Answer;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What cannot be done is answered with what is wrong and what to do instead. */
class RefusalsTest {
  @TempDir private static Path folder;
  private static ServedPlant served;

  @BeforeAll
  static void serve() throws Exception {
    served = ServedPlant.in(folder).withFrozenLimits();
    served.api().upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 26, 1));
  }

  @AfterAll
  static void stop() {
    served.close();
  }

  @ParameterizedTest(name = "GET {0} is {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          /api/v1/series                                                          | 400 | line
          /api/v1/series?line=Blown%201                                           | 400 | structure
          /api/v1/series?line=Blown%201&structure=DUO-50                          | 400 | kind
          /api/v1/series?line=Blown%201&structure=DUO-50&kind=web&position=1      | 400 | layer or total
          /api/v1/series?line=Blown%201&structure=DUO-50&kind=layer&position=x    | 400 | whole number
          /api/v1/series?line=Blown%201&structure=DUO-50&kind=layer&position=1e99 | 400 | whole number
          /api/v1/series?line=Blown%201&structure=DUO-50&kind=layer&position=9999999999 | 400 | position
          /api/v1/series?line=Blown%201&structure=DUO-50&kind=total&from=monday   | 400 | whole number
          /api/v1/series?line=Blown%201&structure=DUO-50&kind=total&pixels=0      | 400 | pixels
          /api/v1/series?line=Blown%201&structure=DUO-50&kind=layer&position=3    | 404 | layer 3
          /api/v1/series?line=Blown%201&structure=DUO-50&kind=layer&position=0    | 404 | layer 0
          /api/v1/series?line=Blown%201&structure=NONE&kind=layer&position=1      | 404 | NONE
          /api/v1/alarms?state=mine                                               | 400 | open or all
          /api/v1/alarms/99                                                       | 404 | alarm 99
          /api/v1/alarms/99/rolls                                                 | 404 | alarm 99
          /api/v1/alarms/search                                                   | 400 | words
          /api/v1/alarms/search?words=%20                                         | 400 | words
          /api/v1/rolls?state=lost                                                | 400 | lost
          /api/v1/alarms/first                                                    | 404 | nothing
          /api/v1/files/99/quarantine                                             | 404 | file 99
          /api/v1/files/x/quarantine                                              | 404 | nothing
          /api/v1/lines/Blown%201/limits                                          | 400 | structure
          /api/v1/lines/Blown%201/limits?structure=NONE                           | 404 | NONE
          /api/v1/lines/Blown%201/tests                                           | 400 | structure
          /api/v1/lines/Blown%201/tests?structure=NONE                            | 404 | NONE
          /api/v1/nothing                                                         | 404 | nothing
          /nothing.html                                                        | 404 | nothing
          """)
  void lookingIsRefused(String path, int status, String what) {
    expectRefusal(served.api().get(path), status, what);
  }

  @ParameterizedTest(name = "POST {0} {1} is {2}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          /api/v1/alarms/1/acknowledge  | {                     | 400 | JSON
          /api/v1/alarms/1/acknowledge  | Kim                              | 400 | JSON
          /api/v1/alarms/1/acknowledge  | ["Kim"]                          | 400 | JSON
          /api/v1/alarms/99/acknowledge | {}                    | 404 | alarm 99
          /api/v1/alarms/x/acknowledge  | {}                    | 404 | nothing
          /api/v1/alarms/1/finding      | {"action": "a"}     | 400 | "cause"
          /api/v1/alarms/99/finding     | {"cause":"c","action":"a"} | 404 | alarm 99
          /api/v1/alarms/99/comments    | {"words":"w"}           | 404 | alarm 99
          /api/v1/alarms/1/comments     | {"words":" "}           | 400 | "words"
          /api/v1/alarms/99/owner       | {"to":"Lee","from":null} | 404 | alarm 99
          /api/v1/alarms/1/owner        | {"to":"Lee"}            | 400 | "from"
          /api/v1/alarms/1/owner        | {"from":null}           | 400 | "to"
          /api/v1/alarms/99/reopen      | {"reason":"r"}          | 404 | alarm 99
          /api/v1/alarms/1/reopen       | {}                       | 400 | "reason"
          /api/v1/alarms/99/checks      | {"check":"c","outcome":"found"} | 404 | alarm 99
          /api/v1/alarms/1/checks       | {"check":"c","outcome":"maybe"} | 400 | maybe
          /api/v1/causes                | {"reason":"r","version":0,"causes":[]} | 400 | at least one
          /api/v1/causes                | {"reason":"r","version":0} | 400 | "causes"
          /api/v1/causes                | {"reason":"r","version":0,"causes":[{"code":"Screen","words":"w","standing":"active"}]} | 400 | Screen
          /api/v1/causes                | {"reason":"r","version":0,"causes":[{"code":"other","words":"w","standing":"active"}]} | 400 | taken
          /api/v1/causes                | {"reason":"r","version":0,"causes":[{"code":"c","words":"w","standing":"gone"}]} | 400 | gone
          /api/v1/causes                | {"reason":"r","version":0,"causes":[{"code":"c","words":"w","standing":"active"}]} | 400 | not removed
          /api/v1/causes                | {"version":0,"causes":[{"code":"c","words":"w","standing":"active"}]} | 400 | "reason"
          /api/v1/checks                | {"reason":"r","version":0,"patterns":[],"causes":[]} | 400 | all layers
          /api/v1/checks                | {"reason":"r","version":0,"patterns":[{"pattern":"odd","checks":["c"]}],"causes":[]} | 400 | odd
          /api/v1/rolls/hold            | {"reason":"r","rolls":[]} | 400 | name the rolls
          /api/v1/rolls/hold            | {"reason":"r","rolls":[{"line":"Blown 1","structure":"DUO-50","roll":"R77","version":0}]} | 404 | R77
          /api/v1/rolls/hold            | {"rolls":[{"line":"Blown 1","structure":"DUO-50","roll":"R1","version":0}]} | 400 | "reason"
          /api/v1/rolls/disposition     | {"reason":"r","state":"lost","rolls":[{"line":"Blown 1","structure":"DUO-50","roll":"R1","version":0}]} | 400 | lost
          /api/v1/limits/freeze         | {"line": "Blown 1", "structure": "DUO-50"}   | 400 | "reason"
          /api/v1/limits/freeze         | {"line":"Blown 1","structure":"NONE","reason":"r"} | 404 | NONE
          /api/v1/limits/freeze         | {"line":"Blown 9","structure":"DUO-50","reason":"r"} | 409 | 20
          /api/v1/limits/freeze         | {"line":"Blown 1","structure":"DUO-50","reason":"r","subgroups":5} | 409 | 20
          /api/v1/limits/freeze         | {"line":"Blown 1","structure":"DUO-50","reason":"r","subgroups":-5} | 400 | subgroups
          /api/v1/limits/freeze         | {"line":"Blown 1","structure":"DUO-50","reason":"r","subgroups":"many"} | 400 | subgroups
          /api/v1/limits/freeze         | {"line":"Blown 1","structure":"DUO-50","reason":"r","state":"suspect"} | 400 | suspect
          /api/v1/limits/freeze         | {"line":"Blown 1","structure":"DUO-50","reason":"r","state":"cold"} | 400 | cold
          /api/v1/limits/freeze         | {"line":"Blown 1","structure":"DUO-50","reason":"r","autocorrelation":"hope"} | 400 | hope
          /api/v1/limits/freeze         | {"line":"Blown 1","structure":"DUO-50","reason":"r","excluded":[{"roll":"R1","sample":"S00001"}]} | 400 | for what cause
          /api/v1/limits/proposal       | {"structure":"DUO-50"}           | 400 | "line"
          /api/v1/limits/proposal       | {"line":"Blown 1","structure":"NONE"} | 404 | NONE
          /api/v1/limits/proposal       | {"line":"Blown 1","structure":"DUO-50","baseline":"best"} | 400 | best
          /api/v1/limits/proposal       | {"line":"Blown 1","structure":"DUO-50","baseline":"between","from":"now"} | 400 | from
          /api/v1/limits/proposal       | {"line":"Blown 1","structure":"DUO-50","excluded":[{"cause":"c"}]} | 400 | "sample"
          /api/v1/limits/state          | {"line":"Blown 1","structure":"DUO-50","version":1,"reason":"r"} | 400 | "state"
          /api/v1/limits/state          | {"line":"Blown 1","structure":"DUO-50","version":9,"state":"retired","reason":"r"} | 404 | version 9
          /api/v1/limits/state          | {"line":"Blown 1","structure":"DUO-50","version":1,"state":"frozen","reason":"r"} | 409 | frozen
          /api/v1/limits/state          | {"line":"Blown 1","structure":"DUO-50","version":1,"state":"retired"} | 400 | "reason"
          /api/v1/tests/price           | {"line":"Blown 1","structure":"DUO-50"} | 400 | characteristics
          /api/v1/tests/price           | {"line":"Blown 1","structure":"NONE","characteristics":[{"position":1,"shown":[],"alarming":[]}]} | 404 | NONE
          /api/v1/tests/price           | {"line":"Blown 1","structure":"DUO-50","characteristics":[{"position":7,"shown":[],"alarming":[]}]} | 400 | position 7
          /api/v1/tests/price           | {"line":"Blown 1","structure":"DUO-50","characteristics":[{"shown":[],"alarming":[]}]} | 400 | position
          /api/v1/tests/price           | {"line":"Blown 1","structure":"DUO-50","characteristics":[{"position":1,"shown":[]}]} | 400 | "alarming"
          /api/v1/tests/price           | {"line":"Blown 1","structure":"DUO-50","characteristics":[{"position":1,"shown":[],"alarming":[{"chart":"xbar","test":"trend"}]}]} | 400 | shown too
          /api/v1/tests/price           | {"line":"Blown 1","structure":"DUO-50","characteristics":[{"position":1,"shown":[{"chart":"range","test":"trend"}],"alarming":[]}]} | 400 | mean chart only
          /api/v1/tests/price           | {"line":"Blown 1","structure":"DUO-50","characteristics":[{"position":1,"shown":[{"chart":"cusum","test":"beyond-limit"}],"alarming":[]}]} | 400 | cusum
          /api/v1/tests                 | {"line":"Blown 1","structure":"DUO-50","characteristics":[{"position":1,"shown":[],"alarming":[]}]} | 400 | "reason"
          """)
  void changingIsRefused(String path, String body, int status, String what) {
    expectRefusal(served.api().post(path, body), status, what);
  }

  @ParameterizedTest(name = "{0} {1} is no way to ask")
  @CsvSource({
    "DELETE, /api/v1/files",
    "PUT, /api/v1/alarms/1/acknowledge",
    "POST, /api/v1/board",
    "GET, /api/v1/limits/freeze",
    "GET, /api/v1/limits/proposal",
    "GET, /api/v1/limits/state",
    "GET, /api/v1/tests/price"
  })
  void anotherMethodIsRefused(String method, String path) {
    Answer answer =
        served
            .api()
            .send(
                served
                    .api()
                    .request(path)
                    .header("X-Filmward", "1")
                    .method(method, BodyPublishers.noBody()));
    assertThat(answer.status()).isIn(404, 405);
    expectRefusal(answer, answer.status(), "");
  }

  @Test
  void aFileWithoutANameIsRefused() {
    Answer answer =
        served.api().send(served.api().change("/api/v1/files", "text/csv", SmallFilm.HEADER));
    expectRefusal(answer, 400, "name");
  }

  @Test
  void aFileThatIsNoTableOfReadingsIsListedWithTheReason() {
    Answer answer = served.api().upload("note.csv", "Dear colleague,\nno readings today\n");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.json().get("refusal").asText()).isNotBlank();
    assertThat(answer.json().get("readings").asInt()).isZero();
  }

  @Test
  void faultyStructuresAreRefusedWithTheLine() {
    String yaml = SmallFilm.STRUCTURES.replace("target: 20 um", "target: 20 furlongs");
    Answer answer =
        served.api().send(served.api().change("/api/v1/structures?name=s.yaml", "text/yaml", yaml));
    expectRefusal(answer, 400, "furlongs");
    assertThat(answer.json().get("error").get("what").asText()).contains("line 8");
  }

  private static void expectRefusal(Answer answer, int status, String what) {
    assertThat(answer.status()).as(answer.text()).isEqualTo(status);
    assertThat(answer.json().get("error").get("what").asText())
        .isNotBlank()
        .containsIgnoringCase(what);
    assertThat(answer.json().get("error").get("instead").asText()).isNotBlank();
    assertThat(answer.text()).doesNotContain("java.").doesNotContain("Exception");
  }
}
