package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.web.SmallFilm;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** A person mends a row in quarantine by keyboard, and sees what became of it. */
class MendingIT {
  private static final String LINE = ".held[data-line='5'] ";
  private static final String CELL = LINE + "[data-fault] input";

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

  @Test
  void aFaultyCellIsMarkedMendedAndSubmittedAgain() throws Exception {
    try (ServedJar served = RunningJar.serve(folder, folder.resolve("data"), 0)) {
      String csv = SmallFilm.withSampleAt(0, Instant.now()).usual(0, 1).replace("20.300", "thick");
      served.api().upload("a.csv", csv);
      browser.resize(390, 844);
      browser.signIn(served);
      browser.open(served.address("/intake.html"));
      browser.tap("[data-file='1'] button");
      browser.await(LINE + "[data-action='mend']").sendKeys(Keys.ENTER);
      assertThat(browser.await(CELL).getDomProperty("value")).isEqualTo("thick");
      assertThat(browser.script("return document.activeElement.value")).isEqualTo("thick");
      assertFitsAndIsAccessible();

      browser.await(CELL).clear();
      browser.await(CELL).sendKeys("-1" + Keys.ENTER);
      browser.awaitText(LINE + ".said", "Not taken: layer_1_um");
      browser.await(CELL).clear();
      browser.await(CELL).sendKeys("20.3" + Keys.ENTER);
      browser.awaitText(LINE + ".held-mended", "Mended by Kim; came as file 2");
      browser.awaitText("[data-file='1'] [data-figure='quarantined']", "all mended");
      assertThat(browser.problems()).isEmpty();
      assertKept(served);
    }
  }

  /** The other reading of the row was there before. */
  private static void assertKept(ServedJar served) {
    JsonNode mended = served.api().get("/api/v1/files").json().get("files").get(0);
    assertThat(mended.get("new").asInt()).isEqualTo(1);
    assertThat(mended.get("known").asInt()).isEqualTo(1);
    assertThat(mended.get("by").asText()).isEqualTo("Kim");
  }

  private static void assertFitsAndIsAccessible() {
    assertThat(new AxeBuilder().analyze(browser.driver()).getViolations())
        .extracting(Rule::getId)
        .isEmpty();
    assertThat(
            browser.script(
                "return document.documentElement.scrollWidth <= document.documentElement.clientWidth"))
        .isEqualTo(true);
  }
}
