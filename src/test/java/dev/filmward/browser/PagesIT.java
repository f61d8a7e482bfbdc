package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.report.ReportWeek;
import dev.filmward.web.SmallFilm;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every page on every screen, in light and dark: fits, is accessible, and complains of nothing. */
class PagesIT {
  private static final Path SCREENSHOTS = Path.of("target", "screenshots");
  private static final String HOSTILE =
      "<img src=x onerror=\"window.foreignCode = true\"> & 'line' of quite some length";
  private static final Map<String, String> PAGES =
      Map.ofEntries(
          Map.entry("board", "/"),
          Map.entry("wall", "/?wall"),
          Map.entry("capability", "/capability.html?line=Blown%201&structure=DUO-50"),
          Map.entry("line", "/line.html?line=Blown%201"),
          Map.entry("layer", "/layer.html?line=Blown%201&structure=DUO-50&kind=layer&position=1"),
          Map.entry(
              "layer-average",
              "/layer.html?line=Blown%201&structure=DUO-50&kind=layer&position=1&average=shown"),
          Map.entry("limits", "/limits.html?line=Blown%201&structure=DUO-50"),
          Map.entry("tests", "/tests.html?line=Blown%201&structure=DUO-50"),
          Map.entry("alarms", "/alarms.html"),
          Map.entry("rolls", "/rolls.html"),
          Map.entry("causes", "/causes.html"),
          Map.entry("figures", "/figures.html"),
          Map.entry("film-check", "/film-check.html?structure=DUO-50&frequency=100&line=Blown%201"),
          Map.entry("gauge", "/gauge.html"),
          Map.entry("screening", "/screening.html?state=all"),
          Map.entry("change", "/change.html?alarm=1"),
          Map.entry("signatures", "/signatures.html"),
          Map.entry("handover", "/handover.html"),
          Map.entry("shifts", "/shifts.html"),
          Map.entry(
              "report",
              "/report.html?week="
                  + ReportWeek.of(Instant.now(), ZoneId.of("Europe/Berlin")).word()),
          Map.entry("intake", "/intake.html"),
          Map.entry("structures", "/structures.html?structure=DUO-50"),
          Map.entry("study", "/study.html?id=1"),
          Map.entry("telling", "/telling.html"),
          Map.entry("people", "/people.html"),
          Map.entry("signin", "/signin.html"),
          Map.entry("help", "/help.html"));
  private static final Map<Integer, Integer> HEIGHT_OF_WIDTH =
      Map.of(390, 844, 1440, 900, 1920, 1080);

  @TempDir private static Path folder;
  private static ServedJar served;
  private static Chromium browser;

  @BeforeAll
  static void fillAPlant() throws Exception {
    browser = Chromium.start();
    served = RunningJar.serve(folder, folder.resolve("data"), 0);
    browser.signIn(served);
    SmallFilm film = SmallFilm.withSampleAt(26, Instant.now());
    served.api().upload("baseline.csv", film.usual(0, 25));
    served.api().freeze();
    tellSomebody();
    studyTheGauge();
    served.api().upload("thin.csv", film.thinnerSkin(25, 27, 1).replaceFirst("19.100", "thick"));
    served
        .api()
        .post(
            "/api/v1/rolls/hold",
            """
            {"by": "Kim", "reason": "thin skin", "alarm": 1, "rolls":
              [{"line": "Blown 1", "structure": "DUO-50", "roll": "R1", "version": 0}]}
            """);
    somebodyWritesOfTheGaugeAndTheLine();
    SmallFilm hostile = SmallFilm.withSampleAt(3, Instant.now());
    String quoted = '"' + HOSTILE.replace("\"", "\"\"") + '"';
    served.api().upload(HOSTILE + ".csv", hostile.usual(0, 4).replace(SmallFilm.LINE, quoted));
  }

  private static void somebodyWritesOfTheGaugeAndTheLine() {
    String quoted = HOSTILE.replace("\"", "\\\"").substring(0, 50);
    String gauge =
        """
        {"name": "%s", "centreMhz": 100, "bandwidth": 0.6, "reason": "new"}
        """;
    String lot =
        """
        {"kind": "resin-lot", "words": "%s"}
        """;
    assertThat(served.api().post("/api/v1/gauges", gauge.formatted(quoted)).status())
        .isEqualTo(200);
    assertThat(served.api().post("/api/v1/lines/Blown%201/log", lot.formatted(quoted)).status())
        .isEqualTo(200);
  }

  private static void tellSomebody() {
    String rule =
        """
        {"name": "%s", "channel": "email", "address": "kim@plant.example", "priority": "low",
         "events": ["opened", "escalated"], "quiet": {"from": "22:00", "to": "06:00"},
         "by": "Ada", "reason": "as agreed"}
        """
            .formatted(HOSTILE.replace("\"", "\\\""));
    assertThat(served.api().post("/api/v1/telling/rules", rule).status()).isEqualTo(200);
  }

  /** Finished but for its end, by people with hostile names. */
  private static void studyTheGauge() {
    String quoted = HOSTILE.replace("\"", "\\\"").substring(0, 50);
    String plan =
        """
        {"gauge": "%s", "structure": "DUO-50", "purpose": "new probe", "trials": 2,
         "parts": ["1", "2"], "operators": ["Ann", "%s"]}
        """
            .formatted(quoted, quoted);
    assertThat(served.api().post("/api/v1/gauge-studies", plan).status()).isEqualTo(200);
    StringBuilder readings = new StringBuilder();
    for (int i = 0; i < 16; i++) {
      readings.append(
          """
          %s{"part": "%d", "operator": "%s", "trial": %d, "layer": "%d", "um": %d}
          """
              .formatted(
                  i == 0 ? "" : ",",
                  i % 2 + 1,
                  i / 2 % 2 == 0 ? "Ann" : quoted,
                  i / 4 % 2 + 1,
                  i / 8 + 1,
                  20 + i * 7 % 5));
    }
    String entered = "{\"readings\": [" + readings + "]}";
    assertThat(served.api().post("/api/v1/gauge-studies/1/readings", entered).status())
        .isEqualTo(200);
  }

  @AfterAll
  static void stop() throws Exception {
    Chromium.closeAll(served, browser);
  }

  @AfterEach
  void theConsoleIsEmptyAndNoForeignCodeRan() {
    assertThat(browser.problems()).isEmpty();
    assertThat(browser.script("return window.foreignCode ?? 'none'")).isEqualTo("none");
  }

  static Stream<Arguments> screens() {
    return PAGES.keySet().stream()
        .sorted()
        .flatMap(
            page ->
                HEIGHT_OF_WIDTH.keySet().stream().sorted().map(width -> Arguments.of(page, width)));
  }

  @ParameterizedTest(name = "{0} at {1} px")
  @MethodSource("screens")
  void fitsTheScreen(String page, int width) throws Exception {
    browser.prefer("dark");
    browser.resize(width, HEIGHT_OF_WIDTH.get(width));
    browser.open(served.address(PAGES.get(page)));
    browser.screenshot(SCREENSHOTS.resolve(page + "-" + width + "-dark.png"));
    browser.prefer("light");
    browser.screenshot(SCREENSHOTS.resolve(page + "-" + width + "-light.png"));
    assertThat(browser.script("return window.innerWidth")).isEqualTo((long) width);
    assertThat((long) browser.script("return document.documentElement.scrollWidth"))
        .as("width of the page, pushed out by %s", browser.script(WIDEST))
        .isLessThanOrEqualTo(width);
  }

  private static final String WIDEST =
      "return [...document.querySelectorAll('main *')]"
          + ".map((node) => [node.getBoundingClientRect().right, node.tagName, node.className])"
          + ".sort((a, b) => b[0] - a[0]).slice(0, 3).join('; ')";

  @ParameterizedTest(name = "{0}")
  @MethodSource("pages")
  void fitsAScreenOnTheWall(String page) {
    browser.resize(3840, 2160);
    browser.open(served.address(PAGES.get(page)));
    assertThat((long) browser.script("return document.documentElement.scrollWidth"))
        .as("width of the page, pushed out by %s", browser.script(WIDEST))
        .isLessThanOrEqualTo(3840);
  }

  static Stream<String> pages() {
    return PAGES.keySet().stream().sorted();
  }

  /** With everything unfolded. */
  @ParameterizedTest
  @ValueSource(strings = {"light", "dark"})
  void isAccessible(String scheme) throws Exception {
    browser.prefer(scheme);
    browser.resize(1440, 900);
    for (String page : PAGES.keySet()) {
      browser.open(served.address(PAGES.get(page)));
      browser.script("document.querySelectorAll('details').forEach((one) => (one.open = true))");
      browser.settle();
      Results results = new AxeBuilder().analyze(browser.driver());
      assertThat(results.isErrored()).as(results.getErrorMessage()).isFalse();
      assertThat(results.getPasses()).as("rules that apply to " + page).isNotEmpty();
      assertThat(results.getViolations()).as(page).extracting(PagesIT::words).isEmpty();
    }
  }

  private static String words(Rule rule) {
    List<String> nodes = rule.getNodes().stream().map(node -> node.getHtml()).toList();
    return rule.getId() + ": " + rule.getHelp() + " " + nodes;
  }

  @Test
  void wordsThatCannotBeReadAreToldOnThePage() {
    browser.resize(1440, 900);
    browser.block("*/text/en/help.json");
    try {
      browser.driver().get(served.address("/help.html"));
      browser.awaitText(".unread", "could not be read");
      assertThat(browser.text(".unread")).contains("/text/en/help.json");
      assertThat(browser.problems()).anyMatch(problem -> problem.contains("no texts from"));
    } finally {
      browser.block();
    }
    browser.open(served.address("/help.html"));
    assertThat(browser.text("h1")).isEqualTo("How to read Filmward");
    assertThat(browser.text("body")).doesNotContain("could not be read", "[help.");
  }

  @Test
  void hostileNamesAreShownAsText() {
    browser.resize(1440, 900);
    browser.open(served.address("/"));
    assertThat(browser.text("main")).contains(HOSTILE);
    browser.open(served.address("/intake.html"));
    assertThat(browser.text("main")).contains(HOSTILE + ".csv");
    browser.open(served.address("/telling.html"));
    assertThat(browser.text("main")).contains(HOSTILE);
    assertThat(browser.script("return document.querySelectorAll('main img').length")).isEqualTo(0L);
  }
}
