package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.access.TestPeople;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.people.Role;
import dev.filmward.store.Store;
import dev.filmward.web.SmallFilm;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/**
 * A day with an alarm, through the pages alone: Lee leads the shift, Alex is engineer, Sam is of
 * quality, and Uma takes over. Each act stands under the name of who was signed in.
 */
class AlarmDayIT {
  private static final String DETAIL = ".alarm-detail ";

  @TempDir private static Path folder;
  private static Chromium browser;
  private static ServedJar served;

  @BeforeAll
  static void startAPlant() throws Exception {
    browser = Chromium.start();
    Path data = folder.resolve("data");
    try (Store store = Store.open(data)) {
      Clock clock = Clock.systemUTC();
      TestPeople.add(store, clock, "Lee", Role.SHIFT_LEAD);
      TestPeople.add(store, clock, "Uma", Role.SHIFT_LEAD);
      TestPeople.add(store, clock, "Alex", Role.ENGINEER);
      TestPeople.add(store, clock, "Sam", Role.QUALITY);
    }
    served = RunningJar.serve(folder, data, 0);
    SmallFilm film = SmallFilm.withSampleAt(26, Instant.now());
    served.api().upload("baseline.csv", film.usual(0, 25));
    served.api().freeze();
    served.api().upload("thin.csv", film.thinnerSkin(25, 27, 1));
    browser.resize(1440, 900);
  }

  @AfterAll
  static void stop() throws Exception {
    Chromium.closeAll(served, browser);
  }

  @Test
  void anAlarmIsTendedByItsShiftDecidedAboutByOthersAndHandedOver() throws Exception {
    comesIn("Lee", "/alarms.html");
    takesTheAlarmWithTwoTaps();
    ticksACheck();
    shelvesItAndTakesItOff();
    saysThatTheLineIsDownAndRunsAgain();
    takesTheAlarmWithTwoTaps();
    commentsAndHandsItOn();
    writesCauseAndAction();
    holdsTheRoll();
    comesIn("Alex", "/alarms.html?state=all");
    takesTheLayersOutOfServiceAndPutsThemBack();
    comesIn("Sam", "/rolls.html");
    releasesTheRoll();
    comesIn("Lee", "/handover.html");
    signs("outgoing", "Lee has handed over");
    comesIn("Uma", "/handover.html");
    signs("incoming", "Uma has taken over");
    assertThat(browser.problems()).isEmpty();
    everyActIsInTheHistory();
  }

  private static void comesIn(String name, String page) {
    browser.driver().get(served.address("/signin.html?to=" + page));
    browser.await("#signin-name").sendKeys(name);
    browser.await("#signin-password").sendKeys(TestPeople.PASSWORD + Keys.ENTER);
    browser.await("html:not([data-view='signin'])[data-view]");
    browser.settle();
    assertThat(browser.text(".who-am-i")).startsWith(name);
  }

  private static void takesTheAlarmWithTwoTaps() {
    browser.tap(DETAIL + "[data-action='acknowledge']");
    browser.tap(DETAIL + "[data-action='confirm-person'][data-person='Lee']");
    browser.awaitText(DETAIL + ".lead", "Taken by Lee");
  }

  private static void ticksACheck() {
    browser.tap(DETAIL + "[data-action='check']");
    browser.await("form[data-action='check-1']");
    press(".check input[value='not-found']");
    browser.await("#check-note-1").sendKeys("feeder as set" + Keys.ENTER);
    browser.awaitText(".check .done", "not this, Lee");
    assertThat(browser.text(".check .done")).contains("feeder as set");
  }

  private static void shelvesItAndTakesItOff() {
    opens("shelve");
    press(DETAIL + "input[name='minutes'][value='30']");
    does("shelve", "screen is being changed");
    browser.awaitText(DETAIL + ".lead", "by Lee: screen is being changed");
    assertThat(browser.text(DETAIL + ".lead")).startsWith("Shelved until");
    opens("end-hold");
    does("end-hold", "screen is changed");
    browser.awaitText(DETAIL + ".lead", "Nobody has taken it yet");
  }

  private static void opens(String action) {
    browser.tap(DETAIL + "details[data-action='" + action + "'] summary");
  }

  private static void does(String action, String reason) {
    browser.await("#" + action + "-reason").sendKeys(reason);
    browser.tap(DETAIL + "details[data-action='" + action + "'] [data-action='confirm-person']");
  }

  private static void saysThatTheLineIsDownAndRunsAgain() {
    browser.open(served.address("/"));
    says("down");
    browser.await("section.line[data-line='Blown 1'][data-state='not_running']");
    browser.awaitText("[data-action='line-mode']", "Line down");
    says("running");
    browser.awaitText("[data-action='line-mode']", "Line running");
    browser.await("section.line[data-line='Blown 1']:not([data-state='not_running'])");
    browser.open(served.address("/alarms.html"));
  }

  private static void says(String mode) {
    browser.tap("[data-action='line-mode']");
    press(".line-mode input[value='" + mode + "']");
    browser.tap(".line-mode [data-action='confirm-person']");
  }

  private static void commentsAndHandsItOn() {
    browser.tap(DETAIL + "[data-fold='comment'] summary");
    browser.await("#comment-words").sendKeys("pressure rose since noon");
    browser.tap("form[data-action='comment'] button[type='submit']");
    browser.awaitText(".history", "pressure rose since noon");
    browser.tap(DETAIL + "[data-fold='hand-on'] summary");
    browser.await("#hand-on-to").sendKeys("Uma");
    browser.await("#hand-on-why").sendKeys("watch it" + Keys.ENTER);
    browser.awaitText(DETAIL + ".owner", "Handed on to Uma by Lee");
    assertThat(browser.text(DETAIL + ".lead")).contains("now with Uma");
  }

  private static void writesCauseAndAction() {
    press(DETAIL + "input[name='cause'][value='screen-blinded']");
    browser.await("#finding-action").sendKeys("changed the screen pack");
    browser.tap("form[data-action='finding'] button[type='submit']");
    browser.awaitText(".found", "screen pack blinded");
    assertThat(browser.text(".found")).contains("changed the screen pack", "Lee");
  }

  /** Release and the like are not among what a shift lead may say. */
  private static void holdsTheRoll() {
    press(".roll input[type='checkbox']");
    assertThat(browser.script("return document.querySelectorAll(\"[value=released]\").length"))
        .isEqualTo(0L);
    decides("held", "thin skin");
    browser.awaitText(".roll-decisions", "held by Lee");
  }

  private static void decides(String state, String reason) {
    press("input[name='roll-state'][value='" + state + "']");
    browser.await("#roll-reason").sendKeys(reason);
    browser.tap("form[data-action='roll'] button[type='submit']");
  }

  private static void takesTheLayersOutOfServiceAndPutsThemBack() {
    opens("take-out");
    does("take-out", "gauge head is repaired");
    browser.awaitText(DETAIL + ".lead", "Out of service by Alex: gauge head is repaired");
    opens("put-back");
    does("put-back", "gauge head is back");
    browser.awaitText(DETAIL + ".lead", "With Uma, but not taken yet");
  }

  private static void releasesTheRoll() {
    browser.awaitText("h1", "One roll held");
    press(".roll input[type='checkbox']");
    decides("released", "within what the customer allows");
    browser.awaitText("h1", "No rolls held");
    browser.open(served.address("/rolls.html?state=released"));
    browser.awaitText(".roll-decisions", "released by Sam");
  }

  private static void signs(String side, String said) {
    browser.tap("button[data-action='" + side + "']");
    browser.tap("dialog [data-action='confirm-person']");
    browser.awaitText(".handover-said", said);
    browser.await(".signed-side[data-side='" + side + "'] .signed-by");
  }

  private static void everyActIsInTheHistory() {
    JsonNode history =
        served.api().get("/api/v1/alarms?state=all").json().get("alarms").get(0).get("history");
    List<String> acts =
        StreamSupport.stream(history.spliterator(), false)
            .map(entry -> entry.get("by").asText() + ": " + entry.get("what").asText())
            .toList();
    assertThat(String.join("\n", acts))
        .contains("Lee: now shelved: screen is being changed")
        .contains("Lee: comment: pressure rose since noon")
        .contains("Alex: now out-of-service: gauge head is repaired");
  }

  /** Chips and ticks hide their input behind what one sees, so it is pressed without aiming. */
  private static void press(String css) {
    browser.await(css);
    browser.script("document.querySelector(arguments[0]).click()", css);
  }
}
