package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.web.SmallFilm;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** A person chooses which tests raise alarms, sees the price first, and says who and why. */
class ChosenTestsIT {
  private static final String RUN = "input[data-use='alarming'][data-test='xbar/eight-in-a-row']";
  private static final String AVERAGE = "input[data-use='%s'][data-test='ewma/beyond-limit']";

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
  void thePriceStandsBesideTheBoxesAndTheChoiceIsKeptWithNameAndReason() throws Exception {
    try (ServedJar served = RunningJar.serve(folder, folder.resolve("data"), 0)) {
      served.api().upload("baseline.csv", SmallFilm.withSampleAt(25, Instant.now()).usual(0, 25));
      served.api().freeze();
      browser.resize(1440, 900);
      browser.signIn(served);
      browser.open(served.address("/tests.html?line=Blown%201&structure=DUO-50"));
      double before = falseAlarms();
      browser.await(RUN).sendKeys(Keys.SPACE);
      browser.await(".price-place[aria-busy='false'] .price-now");
      assertThat(falseAlarms()).isLessThan(before);
      browser.await(AVERAGE.formatted("alarming")).sendKeys(Keys.SPACE);
      assertThat(browser.await(AVERAGE.formatted("shown")).isSelected()).isTrue();
      browser.tap("[data-action='choose-tests']");
      browser.awaitText(".said", "Write the reason");
      browser.await("#tests-reason").sendKeys("calmer nights");
      browser.tap("[data-action='choose-tests']");
      browser.awaitText(".limits-said", "Version 1");
      assertKept(served);
      assertThat(browser.problems()).isEmpty();
    }
  }

  private static void assertKept(ServedJar served) {
    JsonNode kept =
        served.api().get("/api/v1/lines/Blown%201/tests?structure=DUO-50").json().get("versions");
    assertThat(kept).hasSize(1);
    assertThat(kept.get(0).get("by").asText()).isEqualTo("Kim");
    assertThat(kept.get(0).get("reason").asText()).isEqualTo("calmer nights");
    for (JsonNode each : kept.get(0).get("characteristics")) {
      assertThat(each.get("alarming").findValuesAsText("test"))
          .doesNotContain("eight-in-a-row")
          .contains("two-of-three");
      assertThat(each.get("alarming").findValuesAsText("chart")).contains("ewma");
      assertThat(each.get("shown").findValuesAsText("test")).contains("eight-in-a-row");
    }
  }

  private static double falseAlarms() {
    return Double.parseDouble(
        String.valueOf(
            browser.script("return document.querySelector('.price').dataset.falseAlarms")));
  }
}
