package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** An administrator says who is told, reads it back as a sentence, and tries the way. */
class TellingIT {
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
  void theEmptyPageLeadsToARuleThatIsReadBackAndTried() throws Exception {
    try (ServedJar served = RunningJar.serve(folder, folder.resolve("data"), 0)) {
      browser.resize(1440, 900);
      browser.signIn(served);
      browser.open(served.address("/telling.html"));
      browser.awaitText(".nothing", "Nobody is told of alarms yet");
      browser.tap("[data-action='add-rule']");
      browser.await("#rule-name").sendKeys("Ada");
      browser.await("#rule-address").sendKeys("ada@plant.example");
      browser.await("[data-event='escalated']").sendKeys(Keys.SPACE);
      browser.tap("[data-action='keep-rule']");
      browser.awaitText(".said", "Write the reason");
      assertThat(browser.text(".telling-form .signature")).isEqualTo("Kept under the name Kim.");
      browser.await("#rule-reason").sendKeys("leads the shift" + Keys.ENTER);
      browser.awaitText(".telling-said", "Ada is told so from now on.");
      browser.awaitText(".rule-words", "Ada is told by e-mail to ada@plant.example");
      browser.tap("[data-action='test']");
      browser.awaitText(".rules .said", "no mail server is set up yet");
      assertKept(served);
      assertThat(browser.problems()).isEmpty();
    }
  }

  private static void assertKept(ServedJar served) {
    JsonNode rules = served.api().get("/api/v1/telling/rules").json().get("rules");
    assertThat(rules).hasSize(1);
    assertThat(rules.get(0).get("events"))
        .extracting(JsonNode::asText)
        .containsExactly("opened", "escalated");
    assertThat(rules.get(0).get("decided").get("by").asText()).isEqualTo("Kim");
    assertThat(rules.get(0).get("decided").get("reason").asText()).isEqualTo("leads the shift");
  }
}
