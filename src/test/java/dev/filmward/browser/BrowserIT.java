package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.web.SmallFilm;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.opentest4j.TestAbortedException;

/**
 * A shift in front of the screen: an alarm comes, is taken, explained, outlives a restart, ends.
 */
class BrowserIT {
  private static final Duration APART = Duration.ofMinutes(2);
  private static final int BASELINE = 25;

  @TempDir private Path folder;
  private static Chromium browser;

  @BeforeAll
  static void startBrowser() throws Exception {
    browser = Chromium.start();
  }

  @AfterAll
  static void closeBrowser() throws Exception {
    Chromium.closeAll(browser);
  }

  @BeforeEach
  void leaveThePageBefore() {
    browser.leave();
  }

  @Test
  void anAlarmComesIsTakenExplainedOutlivesARestartAndCloses() throws Exception {
    Instant now = Instant.now();
    SmallFilm film = new SmallFilm(SmallFilm.LINE, now.minus(APART.multipliedBy(BASELINE)), APART);
    Path data = folder.resolve("data");
    try (ServedJar first = RunningJar.serve(folder, data, 0)) {
      first.api().upload("baseline.csv", film.usual(0, BASELINE));
      first.api().freeze();
      expectACalmBoard(first);
      dropIntoInbox(data, "thin.csv", film.thinnerSkin(BASELINE, BASELINE + 1, 1));
      expectTheAlarmWithoutReload();
      takeTheAlarm();
      explainTheAlarm();
      assertThat(browser.problems()).isEmpty();
      first.jar().stop();
      browser.await("html[data-connection='lost']");
      try (ServedJar second = RunningJar.serve(folder, data, first.port())) {
        expectThePageBack();
        second.api().upload("usual.csv", film.usual(BASELINE + 1, BASELINE + 2));
        browser.awaitText("h1", "No open alarms");
        expectNoReload();
        assertThat(browser.problems()).allMatch(problem -> problem.contains("net::ERR_"));
      }
    }
  }

  private static void expectACalmBoard(ServedJar served) {
    browser.signIn(served);
    browser.open(served.address("/"));
    browser.await("section.line[data-line='Blown 1'][data-state='calm']");
    assertThat(browser.text(".headline")).contains("All calm");
    browser.script("window.sameDocument = true");
  }

  private static void dropIntoInbox(Path data, String name, String csv) throws Exception {
    Path part = Files.writeString(data.resolve("inbox").resolve(name + ".part"), csv);
    Files.move(part, part.resolveSibling(name), StandardCopyOption.ATOMIC_MOVE);
  }

  private static void expectTheAlarmWithoutReload() {
    browser.await("section.line[data-line='Blown 1'][data-state='act']");
    browser.awaitText(".headline", "Nobody has taken this alarm yet");
    assertThat(browser.text(".headline")).contains("Blown 1").contains("Skin: thinner than usual");
    expectNoReload();
  }

  private static void expectNoReload() {
    assertThat(browser.script("return window.sameDocument === true")).isEqualTo(true);
  }

  private static void takeTheAlarm() {
    browser.tap(".headline-action a");
    browser.settle();
    browser.script("window.sameDocument = true");
    browser.tap(".alarm-detail [data-action='acknowledge']");
    browser.tap("[data-action='confirm-person']");
    browser.await(".alarm[data-state='acknowledged'][data-taken='true']");
    browser.awaitText(".alarm-detail", "Taken by Kim");
  }

  private static void explainTheAlarm() {
    Object causes =
        browser.script(
            "return [...document.querySelectorAll('input[name=cause]')].map((one) => one.value)");
    assertThat(causes)
        .asInstanceOf(InstanceOfAssertFactories.LIST)
        .doesNotHaveDuplicates()
        .contains("not-found-yet", "other", "screen-blinded");
    browser.script("document.querySelector('input[name=cause][value=\"screen-blinded\"]').click()");
    browser.await("#finding-action").sendKeys("changed the screen pack");
    browser.tap("form[data-action='finding'] button[type='submit']");
    browser.awaitText(".found", "screen pack blinded");
    assertThat(browser.text(".found")).contains("changed the screen pack", "Kim");
  }

  private static void expectThePageBack() {
    browser.await("html[data-connection='live']");
    browser.await(".alarm[data-state='acknowledged'][data-taken='true']");
    assertThat(browser.text(".alarm-detail")).contains("Taken by Kim", "screen pack blinded");
    expectNoReload();
  }

  @Test
  void theLayerPageShowsSignalsInWordsAndMissingReadingsAsGaps() throws Exception {
    SmallFilm film = SmallFilm.withSampleAt(BASELINE + 1, Instant.now());
    try (ServedJar served = RunningJar.serve(folder, folder.resolve("data"), 0)) {
      browser.signIn(served);
      served.api().upload("baseline.csv", film.usual(0, BASELINE));
      served.api().freeze();
      served.api().upload("gap.csv", film.withoutSkin(BASELINE));
      served.api().upload("thin.csv", film.thinnerSkin(BASELINE + 1, BASELINE + 2, 1));
      browser.open(
          served.address("/layer.html?line=Blown%201&structure=DUO-50&kind=layer&position=1"));
      expectPointsAndRings("xbar", BASELINE + 1, 1);
      expectPointsAndRings("range", BASELINE + 1, 0);
      expectAGapAt(BASELINE);
      assertThat(browser.await("[data-chart='xbar']").getDomAttribute("data-limits"))
          .contains("LCL 19.54", "centre 20.00", "UCL 20.47");
      assertThat(browser.text(".reader")).contains("S00026", "below the lower control limit");
      browser.await("[data-chart='xbar']").sendKeys(Keys.ARROW_LEFT);
      assertThat(browser.text(".reader")).contains("S00025", "not measured");
      assertThat(browser.problems()).isEmpty();
    }
  }

  private static void expectPointsAndRings(String chart, int points, int rings) {
    var panel = browser.await("[data-chart='" + chart + "']");
    assertThat(panel.getDomAttribute("data-points")).isEqualTo(String.valueOf(points));
    assertThat(panel.getDomAttribute("data-signals")).isEqualTo(String.valueOf(rings));
  }

  private static void expectAGapAt(int index) {
    Object isGap =
        browser.script(
            "const { datasets } ="
                + " Chart.getChart(document.querySelector('[data-chart=xbar] canvas')).data;"
                + "const means = datasets.at(-1);"
                + "return means.data[arguments[0]].y === null && means.spanGaps === false",
            index);
    assertThat(isGap).isEqualTo(true);
  }

  /** A browser has six connections to a server, for all its tabs and for pages that it left. */
  @Test
  void neitherPagesLeftBehindNorTabsInTheBackgroundHoldUpTheNextPage() throws Exception {
    int more = 8;
    try (ServedJar served = RunningJar.serve(folder, folder.resolve("data"), 0)) {
      browser.signIn(served);
      String first = browser.driver().getWindowHandle();
      long start = System.nanoTime();
      for (int i = 0; i < more; i++) {
        browser.open(served.address(i % 2 == 0 ? "/help.html" : "/intake.html"));
      }
      for (int i = 0; i < more; i++) {
        browser.openInTab(served.address("/alarms.html"));
      }
      browser.closeTabs(first);
      browser.driver().navigate().back();
      browser.settle();
      assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(20));
      assertThat(browser.problems()).isEmpty();
    }
  }

  @Test
  void aMachineThatIntegratesMustHaveABrowserAndOthersMayGoWithout() {
    Path none = folder.resolve("none");
    assertThatThrownBy(() -> Chromium.require(none, Chromium.DRIVER, "true"))
        .isInstanceOf(AssertionError.class)
        .hasMessageContaining("chromium-driver");
    for (String elsewhere : List.of("", "false")) {
      assertThatThrownBy(() -> Chromium.require(Chromium.BROWSER, none, elsewhere))
          .isInstanceOf(TestAbortedException.class)
          .hasMessageContaining("chromium-driver");
    }
  }
}
