package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.access.PeopleDesk;
import dev.filmward.access.TestCodes;
import dev.filmward.access.TestPeople;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.people.PersonName;
import dev.filmward.people.Role;
import dev.filmward.people.Secret;
import dev.filmward.store.Store;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** A person who is new comes in by the page, chooses a password, and leaves again. */
class SignInIT {
  /** It is there from the beginning, and shown when it is asked for. */
  private static final String CODE = ".signin-step:not([hidden]) #signin-code";

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

  /** The next server listens elsewhere. */
  @AfterEach
  void leave() {
    browser.leave();
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
      thePageTellsHowLongAPasswordIsAndShowsIt();
      browser.await("#password-new").sendKeys(" but then longer" + Keys.ENTER);
      browser.await("html[data-view='intake']");
      browser.settle();
      assertThat(browser.driver().getCurrentUrl()).endsWith("/intake.html?from=here");
      assertThat(browser.text(".signin-notice")).contains("your first sign-in");
      assertThat(browser.text(".who-am-i")).contains("Robin").contains("viewer");
      assertThat(browser.await("#upload-file").isEnabled()).isFalse();
      assertThat(browser.text(".upload")).contains("for shift leads, engineers and quality");
      onlyOwnAddressesAreLedBackTo();
      browser.tap(".who-am-i");
      browser.tap("[data-action='sign-out']");
      browser.await("#signin-name");
      assertThat(browser.problems()).allMatch(problem -> problem.contains("401"));
    }
  }

  /** OWASP ASVS 4.0, 2.1.8 and 2.1.12; the field holds the five letters of "short". */
  private static void thePageTellsHowLongAPasswordIsAndShowsIt() {
    assertThat(browser.text("[data-action='choose-password']")).contains("5 of at least 12");
    assertThat(browser.await("#password-new").getAttribute("type")).isEqualTo("password");
    browser.tap("#password-new-shown");
    assertThat(browser.await("#password-new").getAttribute("type")).isEqualTo("text");
    browser.tap("#password-new-shown");
    assertThat(browser.await("#password-new").getAttribute("type")).isEqualTo("password");
  }

  /** OWASP ASVS 4.0, 5.1.5. Browsers take a backslash for a slash, and two for another host. */
  private static void onlyOwnAddressesAreLedBackTo() {
    for (String foreign :
        List.of(
            "https://plant.example/",
            "//plant.example/",
            "/\\plant.example/",
            "\\\\plant.example/",
            "/\t/plant.example/",
            "javascript:alert(1)",
            "data:text/html,x",
            "intake.html",
            "/signin.html?to=/",
            "http://")) {
      assertThat(ledTo(foreign)).as(foreign).isEqualTo("/");
    }
    assertThat(ledTo("/layer.html?line=Blown%201#now")).isEqualTo("/layer.html?line=Blown%201#now");
    assertThat(ledTo("/?to=https://plant.example/")).startsWith("/?to=");
  }

  private static String ledTo(String address) {
    Object led =
        browser
            .driver()
            .executeAsyncScript(
                "const [to, done] = arguments;"
                    + "import('/app/ownAddress.js').then((m) => done(m.ownAddress(to)));",
                address);
    return String.valueOf(led);
  }

  @Test
  void anAdministratorSetsASecondFactorUpAndSignsInWithACode() throws Exception {
    Path data = folder.resolve("data");
    try (Store store = Store.open(data)) {
      TestPeople.add(store, Clock.systemUTC(), "Jo", Role.ADMINISTRATOR);
    }
    try (ServedJar served = RunningJar.serve(folder, data, 0)) {
      browser.driver().manage().deleteAllCookies();
      browser.driver().get(served.address("/signin.html?to=/people.html"));
      signIn();
      browser.await("html[data-view='people']");
      browser.settle();
      browser.tap(".who-am-i");
      browser.tap("[data-action='second-factor']");
      browser.await("#factor-current").sendKeys(TestPeople.PASSWORD + Keys.ENTER);
      String key = browser.await("[data-key]").getText();
      browser.await("#factor-code").sendKeys(TestCodes.now(key, Clock.systemUTC()) + Keys.ENTER);
      browser.await("[data-recovery]");
      assertThat(browser.text("[data-recovery]").lines()).hasSize(10);
      browser.tap("[data-action='codes-kept']");
      browser.await("html[data-view='people']");
      browser.settle();
      browser.tap(".who-am-i");
      browser.tap("[data-action='sign-out']");

      signIn();
      browser.await(CODE).sendKeys("000 000" + Keys.ENTER);
      browser.awaitText(".said", "does not fit");
      browser.await(CODE).clear();
      Clock aStepAhead = Clock.offset(Clock.systemUTC(), Duration.ofSeconds(30));
      browser.await(CODE).sendKeys(TestCodes.now(key, aStepAhead) + Keys.ENTER);
      browser.await("html[data-view='people']");
      browser.settle();
      assertThat(browser.text(".signin-notice")).contains("Last signed in", "127.0.0.1");
      assertThat(browser.text("[data-person='Jo']")).contains("with a second factor");
      browser.problems();
    }
  }

  private static void signIn() {
    browser.await("#signin-name").sendKeys("Jo");
    browser.await("#signin-password").sendKeys(TestPeople.PASSWORD + Keys.ENTER);
  }

  /** A session that was begun eleven minutes ago; the password is asked for after ten. */
  @Test
  void aDeedOfAnAdministratorAsksForThePasswordOnceMoreAndIsDoneThen() throws Exception {
    Path data = folder.resolve("data");
    Secret session;
    try (Store store = Store.open(data)) {
      Clock before = Clock.offset(Clock.systemUTC(), Duration.ofMinutes(-11));
      TestPeople.add(store, before, "Jo", Role.ADMINISTRATOR);
      session = TestPeople.signedIn(store, before, "Jo", Role.ADMINISTRATOR);
    }
    try (ServedJar served = RunningJar.serve(folder, data, 0)) {
      served.api().as(session);
      browser.signIn(served);
      browser.open(served.address("/people.html"));
      browser.await("#person-add").sendKeys("Lee" + Keys.ENTER);
      browser.await("#confirm-current").sendKeys("wrong" + Keys.ENTER);
      browser.awaitText("dialog.confirm .said", "do not belong together");
      assertThat(browser.text(".people-list")).doesNotContain("Lee");
      browser.await("#confirm-current").sendKeys(TestPeople.PASSWORD + Keys.ENTER);
      browser.await("[data-person='Lee']");
      browser.problems();
    }
  }
}
