package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.report.ReportWeek;
import dev.filmward.web.Api;
import dev.filmward.web.SmallFilm;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Where a specification changed between samples, pages say which readings a figure is of, and when
 * it changed in the time of the plant, which is half an hour off every whole one.
 */
class ChangedSpecIT {
  /** UTC+05:30 all year. */
  private static final ZoneId ZONE = ZoneId.of("Asia/Kolkata");

  private static final String NARROWER =
      SmallFilm.STRUCTURES.replace(
          "lower: 17 um\n        upper: 23 um", "lower: 19 um\n        upper: 21.5 um");
  private static final int BEFORE = 30;
  private static final int AFTER = 40;

  @TempDir private static Path folder;
  private static Chromium browser;
  private static ServedJar served;
  private static Instant changed;

  @BeforeAll
  static void start() throws Exception {
    browser = Chromium.start();
    served = RunningJar.serve(folder, folder.resolve("data"), 0, ZONE);
    Api api = served.api();
    Duration apart = Duration.ofSeconds(10);
    Instant now = Instant.now();
    SmallFilm before =
        new SmallFilm(SmallFilm.LINE, now.minus(apart.multipliedBy(BEFORE + 1)), apart);
    api.upload("before.csv", before.usual(0, BEFORE));
    api.send(api.change("/api/v1/structures?name=a.yaml&why=asked", "application/yaml", NARROWER));
    JsonNode specs = api.series(1).get("specs");
    changed = Instant.ofEpochMilli(specs.get(1).get("from").asLong());
    SmallFilm after =
        new SmallFilm(
            SmallFilm.LINE, changed.plusSeconds(1).minus(apart.multipliedBy(BEFORE)), apart);
    api.upload("after.csv", after.usual(BEFORE, BEFORE + AFTER));
    browser.resize(1440, 900);
    browser.signIn(served);
  }

  @AfterAll
  static void stop() throws Exception {
    Chromium.closeAll(served, browser);
  }

  /** In case the test runs over midnight of the plant the day may stand before it. */
  private static String clock() {
    return DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT).format(changed.atZone(ZONE));
  }

  @Test
  void theLayerSaysWhichReadingsItsCapabilityIsOf() {
    browser.open(
        served.address(
            "/layer.html?line=Blown+1&structure=DUO-50&kind=layer&position=1&range=day"));
    String facts = browser.text(".facts");
    assertThat(facts)
        .contains(
            "Of 200 readings of 350: since ", clock() + " the specification is 19.00 to 21.5");
    browser.awaitText(".spread", "The specification changed at");
    assertThat(browser.text(".spread")).contains(clock() + "; each reading is counted by the one");
    browser.open(
        served.address(
            "/layer.html?line=Blown+1&structure=DUO-50&kind=layer&position=2&range=day"));
    assertThat(browser.text(".facts")).doesNotContain("readings of");
    assertThat(browser.problems()).isEmpty();
  }

  @Test
  void theReportHasBothPartsOfItsWeekInTheTimeOfThePlant() {
    ReportWeek week = ReportWeek.of(changed, ZONE);
    browser.open(served.address("/report.html?line=Blown+1&structure=DUO-50&week=" + week.word()));
    browser.await("[data-specs='earlier']");
    String earlier = browser.text("[data-specs='earlier']");
    assertThat(earlier).contains("Skin", "150", "17.00", "23.00").doesNotContain("Seal");
    assertThat(earlier).as("the week begins at midnight of the plant").contains("00:00");
    browser.open(
        served.address("/capability.html?line=Blown+1&structure=DUO-50&week=" + week.word()));
    browser.awaitText(".capability-one", "Of what was made since");
    assertThat(browser.text(".capability-one")).contains(clock());
    assertThat(browser.problems()).isEmpty();
  }
}
