package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.web.SmallFilm;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** What happened at a line can be read, however much it is. */
class LinePageIT {
  private static final int SAMPLES = 90;
  private static final int SAMPLES_A_ROLL = 3;
  private static final int ENTRIES = 14;

  /** Of the first roll nobody knows when it began. */
  private static final int ROLLS_BEGAN = SAMPLES / SAMPLES_A_ROLL - 1;

  private static final String EVENTS = "/api/v1/lines/Blown%201/events";
  private static final String ROWS = "return document.querySelectorAll(arguments[0]).length";
  private static final String TABLE = ".line-happenings tbody tr";

  @TempDir private static Path folder;
  private static ServedJar served;
  private static Chromium browser;
  private static SmallFilm film;

  /** A sample a minute; entries in the line's log are farther apart than what is put together. */
  @BeforeAll
  static void fillAPlant() throws Exception {
    browser = Chromium.start();
    served = RunningJar.serve(folder, folder.resolve("data"), 0);
    browser.signIn(served);
    film = SmallFilm.withSampleAt(SAMPLES, Instant.now());
    for (int number = 0; number < SAMPLES; number += SAMPLES_A_ROLL) {
      String csv = film.usual(number, number + SAMPLES_A_ROLL);
      served.api().upload("roll.csv", csv.replace(",R1,", ",R" + number + ","));
    }
    for (int i = 0; i < ENTRIES; i++) {
      String entry =
          """
          {"kind": "resin-lot", "words": "lot %d", "at": "%s"}
          """;
      Instant at = Instant.now().minus(Duration.ofMinutes(15L * i + 1));
      assertThat(served.api().post("/api/v1/lines/Blown%201/log", entry.formatted(i, at)).status())
          .isEqualTo(200);
    }
  }

  @AfterAll
  static void stop() throws Exception {
    Chromium.closeAll(served, browser);
  }

  @AfterEach
  void theConsoleIsEmpty() {
    assertThat(browser.problems()).isEmpty();
  }

  @Test
  void likeEventsNearInTimeAreOneRowThatOpens() {
    browser.open(served.address("/line.html?line=Blown+1"));
    String rolls = TABLE + "[data-kind='roll']";
    assertThat(count(rolls)).isEqualTo(1);
    assertThat(browser.text(rolls)).contains(ROLLS_BEGAN + " rolls began");
    assertThat(browser.text(rolls + " th"))
        .as("from the first to the last of them")
        .containsPattern("\\d\\d:\\d\\d \u2013 .*\\d\\d:\\d\\d");
    browser.tap(rolls + " button");
    assertThat(count(rolls + "[data-within]")).as("the newest twenty").isEqualTo(20);
    assertThat(browser.text(".line-happenings")).contains(ROLLS_BEGAN - 20 + " more before");
    served.api().upload("next.csv", film.usual(SAMPLES, SAMPLES + 1).replace(",R1,", ",RX,"));
    browser.awaitText(rolls + ":not([data-within])", ROLLS_BEGAN + 1 + " rolls began");
    assertThat(count(rolls + "[data-within]")).as("it stays open").isEqualTo(20);
    assertThat(browser.script("return document.activeElement.ariaExpanded"))
        .as("the keyboard is where it was")
        .isEqualTo("true");
  }

  @Test
  void soManyRowsAreShownAndEarlierOnesOnDemand() {
    browser.open(served.address("/line.html?line=Blown+1"));
    assertThat(count(TABLE)).isEqualTo(12);
    assertThat(browser.text(".line-earlier")).contains("The newest 12 of ");
    browser.tap("[data-action='show-earlier']");
    assertThat(count(TABLE + "[data-kind='log']")).isEqualTo(ENTRIES);
    assertThat(browser.text(".line-earlier")).isBlank();
  }

  @ParameterizedTest
  @ValueSource(ints = {390, 1440})
  void marksNeverCoverEachOtherAndCountAllThatHappened(int width) {
    browser.resize(width, 900);
    browser.open(served.address("/line.html?line=Blown+1"));
    Object covering =
        browser.script(
            "const places = [...document.querySelectorAll('.event-flag')]"
                + ".map((mark) => mark.getBoundingClientRect());"
                + "return places.filter((one, i) => i > 0 && one.left < places[i - 1].right).length");
    assertThat(covering).isEqualTo(0L);
    Object counted =
        browser.script(
            "return [...document.querySelectorAll('.event-flag')]"
                + ".reduce((sum, mark) => sum + Number(mark.dataset.n), 0)");
    assertThat(counted).isEqualTo(happenedWhileSamplesCame());
  }

  /** The middle half of the strip is the middle half of its time, but for the margins. */
  @Test
  void aSpanIsMarkedByDraggingAcrossTheRibbonsAndTakenBack() {
    browser.resize(1440, 900);
    browser.open(served.address("/line.html?line=Blown+1&range=all"));
    JsonNode columns = served.api().series(0).at("/columns/takenAt");
    long first = columns.get(0).asLong();
    long last = columns.get(columns.size() - 1).asLong();
    WebElement strip = browser.await(".line-ribbons .layer-ribbon");
    browser.script("arguments[0].scrollIntoView({block: 'center'})", strip);
    int quarter = strip.getSize().width / 4;
    new Actions(browser.driver())
        .moveToElement(strip, -quarter, 0)
        .clickAndHold()
        .moveByOffset(quarter, 3)
        .moveByOffset(quarter, 3)
        .release()
        .perform();
    browser.awaitText(".range-span", " to ");
    Map<String, String> query = query();
    double span = last - first;
    assertThat(millis(query.get("from"))).isCloseTo(first + span / 4, within(span / 30));
    assertThat(millis(query.get("to"))).isCloseTo(last - span / 4, within(span / 30));
    browser.tap(".range-moves [data-range='back']");
    browser.await(".range-links a[aria-current]");
    assertThat(query()).doesNotContainKey("from");
  }

  private static Map<String, String> query() {
    String search = String.valueOf(browser.script("return decodeURIComponent(location.search)"));
    return Stream.of(search.substring(1).split("&"))
        .map(pair -> pair.split("=", 2))
        .collect(Collectors.toMap(pair -> pair[0], pair -> pair[1]));
  }

  private static double millis(String iso) {
    return Instant.parse(iso).toEpochMilli();
  }

  private static long happenedWhileSamplesCame() {
    JsonNode columns = served.api().series(0).at("/columns/takenAt");
    long first = columns.get(0).asLong();
    long last = columns.get(columns.size() - 1).asLong();
    long found = 0;
    for (JsonNode event : served.api().get(EVENTS).json().get("events")) {
      long at = OffsetDateTime.parse(event.get("at").asText()).toInstant().toEpochMilli();
      found += at >= first && at <= last ? 1 : 0;
    }
    return found;
  }

  private static long count(String css) {
    return (long) browser.script(ROWS, css);
  }
}
