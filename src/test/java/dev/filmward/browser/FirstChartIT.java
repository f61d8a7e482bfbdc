package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.web.SmallFilm;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/**
 * From an empty data folder to the chart of a layer by the page alone: describe the film, bring
 * readings in, see the chart; and a version that was a mistake is taken back.
 */
class FirstChartIT {
  private static final Duration AIM = Duration.ofMinutes(3);

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
  void thePageLeadsFromNothingToAFirstChart() throws Exception {
    Path csv = folder.resolve("first.csv");
    Files.writeString(csv, SmallFilm.withSampleAt(25, Instant.now()).usual(0, 25));
    browser.resize(1440, 900);
    long start = System.nanoTime();
    try (ServedJar served = RunningJar.serveEmpty(folder, folder.resolve("data"))) {
      browser.signIn(served);
      browser.open(served.address("/"));
      browser.tap("[data-action='to-structures']");
      describeTheFilm();
      browser.tap("[data-action='to-intake']");
      browser.await("#upload-file").sendKeys(csv.toString());
      browser.tap("[data-action='to-chart']");
      browser.await("canvas");
      browser.awaitText("main", "Skin");
      browser.settle();
      assertThat((boolean) browser.script(SOMETHING_IS_DRAWN)).isTrue();
      Duration taken = Duration.ofNanos(System.nanoTime() - start);
      System.out.println("from an empty folder to a first chart: " + taken.toMillis() + " ms");
      assertThat(taken).isLessThan(AIM);
      assertThat(served.api().series(1).get("columns").get("mean")).hasSize(25);
      assertThat(browser.problems()).isEmpty();
    }
  }

  private static final String SOMETHING_IS_DRAWN =
      "const canvas = document.querySelector('canvas');"
          + "const { data } = canvas.getContext('2d')"
          + ".getImageData(0, 0, canvas.width, canvas.height);"
          + "return data.some((value) => value !== 0)";

  /** First with a mistake, which the page names beside its field. */
  private static void describeTheFilm() {
    browser.await("[data-action='look']");
    type("[data-field='code'] input", SmallFilm.CODE);
    layer(1, "Skin", "20", "15 %");
    layer(2, "Seal", "thirty", "");
    browser.tap(".structure-layer:nth-child(3) [data-move='remove']");
    browser.tap("[data-action='look']");
    browser.awaitText(".structure-layer:nth-child(2) [data-field='target'] .field-error", "thirty");
    type(layerField(2, "target"), "30");
    type(layerField(2, "lower"), "27");
    browser.tap("[data-action='look']");
    browser.awaitText(".structure-preview", "DUO-50 is new: 2 layers");
    type("#structure-reason", "our first film");
    browser.tap("[data-action='keep-structure']");
    browser.awaitText(".structure-said", "DUO-50");
  }

  private static void layer(int place, String name, String target, String tolerance) {
    type(layerField(place, "name"), name);
    type(layerField(place, "target"), target);
    type(layerField(place, "tolerance"), tolerance);
  }

  private static String layerField(int place, String field) {
    return ".structure-layer:nth-child(" + place + ") [data-field='" + field + "'] input";
  }

  private static void type(String css, String text) {
    WebElement field = browser.await(css);
    field.sendKeys(Keys.chord(Keys.CONTROL, "a"), Keys.BACK_SPACE, text);
  }

  @Test
  void aVersionByMistakeIsTakenBackOnThePage() throws Exception {
    try (ServedJar served = RunningJar.serve(folder, folder.resolve("data"), 0)) {
      browser.resize(390, 844);
      browser.signIn(served);
      browser.open(served.address("/structures.html"));
      browser.tap("[data-action='edit-structure']");
      type(layerField(1, "upper"), "24");
      browser.tap("[data-action='look']");
      browser.awaitText(".structure-preview", "layer 1 Skin: upper limit 23");
      type("#structure-reason", "by mistake");
      browser.tap("[data-action='keep-structure']");
      browser.awaitText(".structure-version", "by mistake");
      browser.tap("[data-action='take-back']");
      type("#back-reason", "wrong film");
      browser.tap(".structure-take-back button[type='submit']");
      browser.awaitText(".structure-version", "takes version 2 back");
      assertThat(served.api().get("/api/v1/structures").text())
          .contains("\"reason\":\"wrong film\"")
          .contains("\"takesBack\":2");
      assertThat(browser.problems()).isEmpty();
    }
  }
}
