package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.access.TestPeople;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.people.Role;
import dev.filmward.report.ReportWeek;
import dev.filmward.store.Store;
import dev.filmward.web.SmallFilm;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/**
 * What the others do all day, through the pages alone: Tess of gauging calibrates and decides about
 * misread samples, Alex of production follows a layer that moves, Sam of quality issues last week's
 * report, Jo of IT lets people and machines in. The shift's day is {@link AlarmDayIT}.
 */
class DaysIT {
  private static final int BASELINE = 25;
  private static final Duration APART = Duration.ofMinutes(1);

  @TempDir private static Path folder;
  private static Chromium browser;
  private static ServedJar served;
  private static SmallFilm film;

  @BeforeAll
  static void startAPlant() throws Exception {
    browser = Chromium.start();
    Path data = folder.resolve("data");
    try (Store store = Store.open(data)) {
      Clock clock = Clock.systemUTC();
      TestPeople.add(store, clock, "Tess", Role.ENGINEER);
      TestPeople.add(store, clock, "Alex", Role.ENGINEER);
      TestPeople.add(store, clock, "Sam", Role.QUALITY);
    }
    served = RunningJar.serve(folder, data, 0);
    film = new SmallFilm(SmallFilm.LINE, Instant.now().minus(APART.multipliedBy(30)), APART);
    served.api().upload("baseline.csv", film.usual(0, BASELINE));
    browser.resize(1440, 900);
  }

  @AfterAll
  static void stop() throws Exception {
    Chromium.closeAll(served, browser);
  }

  @BeforeEach
  void forgetWhoWasThere() {
    browser.leave();
    browser.driver().manage().deleteAllCookies();
  }

  @Test
  void theTechnicianCalibratesAndDecidesWhatWasMisread() {
    served.api().upload("slipped.csv", inMil(film.usual(BASELINE, BASELINE + 1)));
    comesIn("Tess", "/gauge.html");
    unfold("Add a gauge");
    field("Name on its label").sendKeys("Gauge 2");
    field("Centre frequency").sendKeys("100");
    field("Bandwidth").sendKeys("80");
    reasonOf("Add this gauge", "new in the lab");
    browser.awaitText(".gauge-part table", "Gauge 2");
    calibrate();
    browser.open(served.address("/screening.html"));
    browser.awaitText("h1", "One sample to look at");
    assertThat(browser.text(".suspect")).contains("25.4").contains(SmallFilm.sample(BASELINE));
    browser.await(".suspect .deciding input").sendKeys("exported in mil");
    browser.tap(".suspect [data-action='confirm']");
    browser.awaitText("h1", "No sample looks misread");
    assertThat(browser.problems()).isEmpty();
  }

  /** The piece reads 2 % thin, so that the velocity is 2 % more than what was set. */
  private static void calibrate() {
    field("Velocity set before").sendKeys(Keys.chord(Keys.CONTROL, "a"), "1950");
    field("Piece").sendKeys("R-51");
    field("Thickness").sendKeys("51");
    field("Expanded uncertainty U").sendKeys("0.3");
    field("Readings, with").sendKeys("50 50 50 50 50");
    field("Temperature of the pieces").sendKeys("23");
    browser.awaitText(".gauge-result", "Give the temperature and the coefficient");
    field("Change of the velocity").sendKeys("-0.4");
    browser.awaitText(".gauge-result", "1989.0");
    reasonOf("Keep this calibration", "reference piece");
    browser.awaitText("main", "Calibration 1 is kept");
    press(".gauge-step input[value='corrects']");
    assertThat(
            browser.script(
                "return document.querySelector('.gauge-step input[value=flag]').checked"))
        .as("limits cannot be carried along then")
        .isEqualTo(true);
    browser.tap("[data-action='preview-rescaling']");
    browser.awaitText(".gauge-preview", "0 of them have a temperature");
    assertThat(browser.text(".gauge-preview")).contains("times 1.02000");
    reasonOf("Re-scale the readings", "piece R-51");
    browser.awaitText(".gauge-list", "1989.0 m/s at 23.0 °C");
    unfold("Take it back");
    reasonOf("Show these readings as before", "only tried");
    browser.awaitText(".gauge-list", "Taken back");
  }

  @Test
  void theEngineerPutsLimitsInForceAndFollowsALayerThatMoves() {
    SmallFilm other = new SmallFilm("Blown 3", Instant.now().minus(APART.multipliedBy(40)), APART);
    served.api().upload("start.csv", other.usual(0, BASELINE));
    comesIn("Alex", "/limits.html?line=Blown+3&structure=DUO-50");
    browser.await("#decision-reason").sendKeys("quiet start");
    browser.tap("[data-action='put-in-force']");
    browser.await(".limits-now[data-limits-state='provisional']");
    served.api().upload("thin.csv", other.thinnerSkin(BASELINE, BASELINE + 8, 1));
    browser.open(served.address("/line.html?line=Blown+3"));
    browser.await(".line-table tr[data-layer='Skin'][data-need='act']");
    assertThat(browser.text(".line-happenings")).contains("Alarm", "Skin: thinner than usual");
    browser.tap(".line-table tr[data-layer='Skin'] a");
    browser.settle();
    browser.await("[data-chart='xbar'][data-signals]:not([data-signals='0'])");
    JsonNode alarm = served.api().get("/api/v1/alarms").json().at("/alarms/0");
    browser.open(served.address("/change.html?alarm=" + alarm.get("id").asLong()));
    browser.await(".candidate");
    unfold("Write down what happened");
    press("input[name='kind'][value='resin-lot']");
    browser.await("#log-words").sendKeys("lot 7" + Keys.ENTER);
    browser.awaitText(".line-log", "New resin lot: lot 7");
    browser.open(served.address("/line.html?line=Blown+3"));
    browser.awaitText(".line-happenings", "New resin lot: lot 7 (Alex)");
    assertThat(browser.problems()).isEmpty();
  }

  @Test
  void qualityIssuesLastWeeksReportAndItIsFrozen() {
    ReportWeek week = ReportWeek.of(Instant.now(), ZoneId.of("Europe/Berlin")).minus(1);
    SmallFilm last = new SmallFilm("Blown 4", week.from().plus(Duration.ofHours(30)), APART);
    served.api().upload("last-week.csv", last.usual(0, 60));
    comesIn("Sam", "/report.html?week=" + week.word());
    browser.awaitText(".report-films", "DUO-50");
    assertThat(browser.text(".report-films")).contains("All readings are shown as the gauge");
    browser.await("#report-reason").sendKeys("as discussed on Monday");
    browser.tap("[data-action='issue']");
    browser.awaitText("main", "Revision 1");
    JsonNode issued = served.api().get("/api/v1/reports").json();
    assertThat(issued.findValuesAsText("week")).contains(week.word());
    assertThat(issued.toString()).contains("as discussed on Monday").contains("Sam");
    browser.open(
        served.address("/capability.html?line=Blown+4&structure=DUO-50&week=" + week.word()));
    browser.await(".capability-one");
    assertThat(browser.problems()).isEmpty();
  }

  @Test
  void whoeverRunsItLetsPeopleAndMachinesIn() throws Exception {
    browser.signIn(served);
    browser.open(served.address("/people.html"));
    browser.await("#person-add").sendKeys("Nora" + Keys.ENTER);
    browser.awaitText(".people-secret", "Nora signs in with this one-time password");
    browser.await("li[data-person='Nora'][data-standing='one-time']");
    browser.await("#token-name").sendKeys("Gauge 2");
    browser.tap("form[data-action='add-token'] button[type='submit']");
    browser.awaitText(".people-secret", "Gauge 2 sends this token");
    String token = browser.text(".people-secret code").strip();
    HttpClient client = HttpClient.newHttpClient();
    String csv =
        new SmallFilm("Blown 5", Instant.now().minus(APART.multipliedBy(3)), APART).usual(0, 2);
    HttpRequest send =
        HttpRequest.newBuilder(URI.create(served.address("/api/v1/files?name=by-token.csv")))
            .header("Authorization", "Bearer " + token)
            .header("X-Filmward", "1")
            .header("Content-Type", "text/csv")
            .POST(HttpRequest.BodyPublishers.ofString(csv))
            .build();
    assertThat(client.send(send, BodyHandlers.ofString()).statusCode()).isEqualTo(200);
    browser.open(served.address("/intake.html"));
    browser.awaitText("main", "by-token.csv");
    browser.open(served.address("/people.html"));
    browser.tap("li[data-token='Gauge 2'] .people-ways button");
    browser.tap("li[data-token='Gauge 2'] .people-ways button");
    browser.await("li[data-token='Gauge 2'][data-ended='true']");
    assertThat(client.send(send, BodyHandlers.ofString()).statusCode()).isEqualTo(401);
    assertThat(browser.problems()).isEmpty();
  }

  private static void comesIn(String name, String page) {
    browser.driver().get(served.address("/signin.html"));
    browser.await("#signin-name").sendKeys(name);
    browser.await("#signin-password").sendKeys(TestPeople.PASSWORD + Keys.ENTER);
    browser.await("html:not([data-view='signin'])[data-view]");
    browser.settle();
    browser.open(served.address(page));
  }

  private static void press(String css) {
    browser.await(css);
    browser.script("document.querySelector(arguments[0]).click()", css);
  }

  private static void unfold(String words) {
    element("//summary[normalize-space()='" + words + "']").click();
  }

  /** The input under a label that begins so. */
  private static WebElement field(String label) {
    return element(
        "//label[starts-with(normalize-space(),'"
            + label
            + "')]/following-sibling::*[self::input or self::select]");
  }

  /** Writes the reason in the form of that button, and sends it. */
  private static void reasonOf(String verb, String reason) {
    String form = "//form[.//button[normalize-space()='" + verb + "']]";
    element(form + "//textarea").sendKeys(reason);
    element(form + "//button[@type='submit']").click();
  }

  private static WebElement element(String path) {
    for (int tries = 0; tries < 100; tries++) {
      for (WebElement found : browser.driver().findElements(By.xpath(path))) {
        if (found.isDisplayed()) {
          return found;
        }
      }
      browser.settle();
    }
    throw new AssertionError("nothing like " + path + " on\n" + browser.text("body"));
  }

  /** The same readings as a gauge writes them that was set to thousandths of an inch. */
  private static String inMil(String csv) {
    String[] rows = csv.split("\n", -1);
    StringBuilder slipped = new StringBuilder(rows[0]).append('\n');
    for (int row = 1; row < rows.length - 1; row++) {
      String[] cells = rows[row].split(",", -1);
      for (int cell = cells.length - 2; cell < cells.length; cell++) {
        cells[cell] = String.format(Locale.ROOT, "%.4f", Double.parseDouble(cells[cell]) / 25.4);
      }
      slipped.append(String.join(",", cells)).append('\n');
    }
    return slipped.toString();
  }
}
