package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.access.PeopleDesk;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.people.PersonName;
import dev.filmward.people.Role;
import dev.filmward.store.Store;
import java.nio.file.Path;
import java.time.Clock;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** A person who is new comes in by the page, chooses a password, and leaves again. */
class SignInIT {
  @TempDir private Path folder;
  private static Chromium browser;

  @BeforeAll
  static void startBrowser() throws Exception {
    browser = Chromium.start();
  }

  @AfterAll
  static void closeBrowser() throws Exception {
    if (browser != null) {
      browser.close();
    }
  }

  @Test
  void whoeverIsNewSignsInChoosesAPasswordComesBackAndSignsOut() throws Exception {
    Path data = folder.resolve("data");
    String once;
    try (Store store = Store.open(data)) {
      PeopleDesk desk = new PeopleDesk(store, Clock.systemUTC());
      once = desk.add(new PersonName("Robin"), Role.VIEWER, "test").oneTimePassword();
    }
    try (ServedJar served = RunningJar.serve(folder, data, 0)) {
      browser.driver().manage().deleteAllCookies();
      browser.driver().get(served.address("/intake.html?from=here"));
      browser.await("#signin-name").sendKeys("robin");
      browser.await("#signin-password").sendKeys("wrong" + Keys.ENTER);
      browser.awaitText(".said", "name and password do not belong together");
      browser.await("#signin-password").clear();
      browser.await("#signin-password").sendKeys(once + Keys.ENTER);
      browser.await("#password-new").sendKeys("short" + Keys.ENTER);
      browser.awaitText(".said", "at least 12");
      browser.await("#password-new").sendKeys(" but then longer" + Keys.ENTER);
      browser.await("html[data-view='intake']");
      browser.settle();
      assertThat(browser.driver().getCurrentUrl()).endsWith("/intake.html?from=here");
      assertThat(browser.text(".who-am-i")).contains("Robin").contains("viewer");
      assertThat(browser.await("#upload-file").isEnabled()).isFalse();
      assertThat(browser.text(".upload")).contains("for shift leads, engineers and quality");
      browser.tap(".who-am-i");
      browser.tap("[data-action='sign-out']");
      browser.await("#signin-name");
      assertThat(browser.problems()).allMatch(problem -> problem.contains("401"));
    }
  }
}
