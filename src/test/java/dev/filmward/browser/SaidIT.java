package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.web.SmallFilm;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;

/**
 * What the server composes is said in the language, the unit and with the decimal sign that were
 * chosen, and goes back to it as it came.
 */
class SaidIT {
  private static final String CHECK =
      "Compare the line speed log with the time of the first sample";

  @TempDir private static Path folder;
  private static Chromium browser;
  private static ServedJar served;

  @BeforeAll
  static void raiseAnAlarm() throws Exception {
    browser = Chromium.start();
    served = RunningJar.serve(folder, folder.resolve("data"), 0);
    browser.resize(1440, 900);
    browser.signIn(served);
    SmallFilm film = SmallFilm.withSampleAt(26, Instant.now());
    served.api().upload("baseline.csv", film.usual(0, 25));
    served.api().freeze();
    served.api().upload("thin.csv", film.thinnerSkin(25, 27, 1));
  }

  @AfterAll
  static void stop() throws Exception {
    Chromium.closeAll(served, browser);
  }

  @AfterEach
  void forgetTheChoices() {
    browser.script("localStorage.clear()");
  }

  @Test
  void anAlarmIsSaidInGermanAndTickedAsTheServerKnowsIt() {
    choose("language", "de");
    browser.open(served.address("/alarms.html#1"));
    browser.awaitText(".alarm-detail h2, main h2", "dünner als sonst");
    browser.awaitText(".history", "ausgelöst bei Probe");
    assertThat(browser.text(".finding")).contains("Siebpaket zugesetzt", "Dosierung oder Trichter");
    assertThat(browser.text(".checks")).doesNotContain("Compare", "Look");
    browser.tap(".check [data-action='check']");
    browser.tap(".check input[value='found']");
    browser.tap(".check form button[type='submit']");
    browser.awaitText(".check .done", "Kim");
    JsonNode first = served.api().get("/api/v1/alarms/1").json().get("checks").get(0);
    assertThat(first.get("done")).hasSize(1);
    assertThat(first.get("words").asText()).matches("(Compare|Look|Measure|Read) .*");
    assertThat(browser.problems()).isEmpty();
  }

  @Test
  void aRefusalSaysInGermanWhatIsWrongAndWhatToDo() {
    choose("language", "de");
    browser.open(served.address("/help.html"));
    assertThat(asked("getJson('/api/v1/alarms/4711')"))
        .isEqualTo("Kein Alarm 4711. Die Tafel zeigt, was es gibt");
    assertThat(browser.problems()).allMatch(said -> said.contains("404"));
  }

  /** Names that a plant gave stay, lists and sentences are said part by part. */
  @Test
  void formsAreFoundAndTheirPlacesSaidAgain() {
    choose("language", "de");
    browser.open(served.address("/help.html"));
    assertThat(said("Outer tie, Seal: thinner than usual"))
        .isEqualTo("Outer tie, Seal: dünner als sonst");
    assertThat(said("All layers: thicker than usual"))
        .isEqualTo("Alle Schichten: dicker als sonst");
    assertThat(said("66.7 % explained by one layer alone (needed: at least 50 %)."))
        .isEqualTo("66,7 % erklärt durch eine Schicht allein (nötig: mindestens 50 %).");
    assertThat(
            said("How long the disturbance lasted: 3 samples (speaks for it: at most 3 samples)."))
        .isEqualTo("Wie lange die Störung dauerte: 3 Proben (spricht dafür: höchstens 3 Proben).");
    assertThat(said("a check read 51.25 um, beyond its limits"))
        .isEqualTo("eine Prüfung ergab 51,25\u202fµm, außerhalb ihrer Grenzen");
    assertThat(said("cause: screen pack blinded; action: changed it"))
        .isEqualTo("Ursache: Siebpaket zugesetzt; Maßnahme: changed it");
    assertThat(said(CHECK)).startsWith("Protokoll der Liniengeschwindigkeit");
    assertThat(said("what nobody ever said")).isEqualTo("what nobody ever said");
  }

  @Test
  void lengthsAreSaidInTheUnitThatWasChosen() {
    choose("unit", "mil");
    browser.open(served.address("/help.html"));
    // 25.4 um are one mil by definition (International yard and pound agreement, 1959)
    assertThat(said("a check read 50.8 um, beyond its limits"))
        .isEqualTo("a check read 2.00\u202fmil, beyond its limits");
  }

  @Test
  void whatIsTypedInMilIsKeptInMicrometres() {
    String plan =
        """
        {"gauge": "Gauge 1", "structure": "DUO-50", "purpose": "new probe", "trials": 2,
         "parts": ["1", "2"], "operators": ["Ann", "Ben"]}
        """;
    long id = served.api().post("/api/v1/gauge-studies", plan).json().get("id").asLong();
    choose("unit", "mil");
    browser.open(served.address("/study.html?id=" + id));
    browser.awaitText(".study-entry th:last-of-type, .study-entry thead", "mil");
    List<WebElement> inputs =
        browser.driver().findElements(By.cssSelector(".study-entry tbody tr:first-child input"));
    assertThat(inputs).hasSize(2);
    // 1 mil is 25.4 um by definition (international yard and pound agreement, 1959)
    inputs.get(0).sendKeys("0.8");
    inputs.get(1).sendKeys("1.2");
    browser.tap(".study-entry [data-action='keep-step']");
    browser.awaitText("main", "2 of 16");
    JsonNode steps = served.api().get("/api/v1/gauge-studies/" + id).json().get("steps");
    List<Double> um = new ArrayList<>();
    steps.forEach(step -> step.get("um").forEach(one -> um.add(one.asDouble())));
    assertThat(um).contains(20.32, 30.48);
    assertThat(um.stream().filter(one -> one > 0)).hasSize(2);
    assertThat(browser.problems()).isEmpty();
  }

  private static void choose(String what, String value) {
    browser.open(served.address("/help.html"));
    browser.script("localStorage.setItem('filmward.' + arguments[0], arguments[1])", what, value);
  }

  private static String said(String text) {
    return asynchronously(
        "import('/app/said.js').then((m) => m.sayings('alarms', 'diagnosis')).then((say) => done(say("
            + quoted(text)
            + ")))");
  }

  /** The sentence of what is refused. */
  private static String asked(String call) {
    return asynchronously(
        "import('/app/api.js').then(({ getJson }) => "
            + call
            + ").then(done, (error) => done(error.sentence))");
  }

  private static String asynchronously(String script) {
    return String.valueOf(
        browser.asyncScript("const done = arguments[arguments.length - 1]; " + script));
  }

  private static String quoted(String text) {
    return '"' + text.replace("\"", "\\\"") + '"';
  }
}
