package dev.filmward.browser;

import dev.filmward.cli.RunningJar.ServedJar;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.TimeoutException;
import org.openqa.selenium.WebDriver;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.FluentWait;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The distribution's Chromium, driven without anything being downloaded. For one thread. */
final class Chromium implements AutoCloseable {
  static final Path BROWSER = Path.of("/usr/bin/chromium");
  static final Path DRIVER = Path.of("/usr/bin/chromedriver");

  private static final Duration PATIENCE = Duration.ofSeconds(30);
  private static final Duration BETWEEN = Duration.ofMillis(40);
  private static final List<String> QUIET =
      List.of(
          "--headless",
          "--no-sandbox",
          "--disable-gpu",
          "--disable-quic",
          "--no-first-run",
          "--disable-background-networking",
          "--disable-component-update",
          "--disable-sync");

  private final Path profile;
  private final ChromeDriver driver;

  private Chromium(Path profile, ChromeDriver driver) {
    this.profile = profile;
    this.driver = driver;
  }

  static Chromium start() throws IOException {
    require(BROWSER, DRIVER, System.getenv("CI"));
    Path profile = Files.createTempDirectory("filmward-browser");
    ChromeOptions options = new ChromeOptions();
    options.setBinary(BROWSER.toFile());
    options.addArguments(QUIET);
    options.addArguments("--user-data-dir=" + profile);
    LoggingPreferences everything = new LoggingPreferences();
    everything.enable(LogType.BROWSER, Level.ALL);
    options.setCapability(ChromeOptions.LOGGING_PREFS, everything);
    ChromeDriverService service =
        new ChromeDriverService.Builder()
            .usingDriverExecutable(DRIVER.toFile())
            .usingAnyFreePort()
            .build();
    return new Chromium(profile, new ChromeDriver(service, options));
  }

  /** A machine that integrates must have a browser; elsewhere the tests are skipped without one. */
  static void require(Path browser, Path driver, String ci) {
    if (Files.isExecutable(browser) && Files.isExecutable(driver)) {
      return;
    }
    String words =
        "no browser: install the packages chromium and chromium-driver (looked for "
            + browser
            + " and "
            + driver
            + ")";
    if ("true".equals(ci)) {
      throw new AssertionError("CI=true, but " + words);
    }
    Assumptions.abort(words);
  }

  ChromeDriver driver() {
    return driver;
  }

  /** Does as if the server did not answer these addresses, {@code *} for anything. */
  void block(String... addresses) {
    driver.executeCdpCommand("Network.enable", Map.of());
    driver.executeCdpCommand("Network.setBlockedURLs", Map.of("urls", List.of(addresses)));
  }

  /** Leaves the page of a server that may be gone, and forgets what it complained of. */
  void leave() {
    driver.get("about:blank");
    problems();
  }

  /** Opens a page and waits until it has drawn what it has. */
  void open(String address) {
    driver.get(address);
    settle();
  }

  /** Shows the session of whoever the server knows from now on, as if signed in before. */
  void signIn(ServedJar served) {
    String[] pair = served.api().cookie().split("=", 2);
    driver.executeCdpCommand(
        "Network.setCookie",
        Map.of("url", served.address("/"), "name", pair[0], "value", pair[1], "httpOnly", true));
  }

  /** Opens a page in a tab of its own, in front of the others. */
  void openInTab(String address) {
    driver.switchTo().newWindow(WindowType.TAB);
    open(address);
  }

  /** Closes all tabs but the one that was there first. */
  void closeTabs(String first) {
    for (String tab : driver.getWindowHandles()) {
      if (!tab.equals(first)) {
        driver.switchTo().window(tab).close();
      }
    }
    driver.switchTo().window(first);
  }

  void settle() {
    await("html[data-ready='true'][data-connection='live']");
    driver.executeAsyncScript(
        "const done = arguments[arguments.length - 1];"
            + "document.fonts.ready.then(() =>"
            + " requestAnimationFrame(() => requestAnimationFrame(() => done())));");
  }

  WebElement await(String css) {
    try {
      return patiently().until(page -> find(css));
    } catch (TimeoutException e) {
      throw new AssertionError("nothing like " + css + " on\n" + text("body"), e);
    }
  }

  /** Waits until some text is within an element. */
  void awaitText(String css, String text) {
    try {
      patiently().until(page -> text(css).contains(text));
    } catch (TimeoutException e) {
      throw new AssertionError("no \"" + text + "\" in " + css + " but\n" + text("body"), e);
    }
  }

  void tap(String css) {
    await(css).click();
  }

  String text(String css) {
    Object text = script("return document.querySelector(arguments[0])?.innerText ?? ''", css);
    return String.valueOf(text);
  }

  Object script(String script, Object... arguments) {
    return driver.executeScript(script, arguments);
  }

  /** Of a script that calls its last argument when it is done. */
  Object asyncScript(String script) {
    driver.manage().timeouts().scriptTimeout(Duration.ofSeconds(60));
    return driver.executeAsyncScript(script);
  }

  /** So that the next page comes over the wire. */
  void forgetCache() {
    driver.executeCdpCommand("Network.clearBrowserCache", Map.of());
  }

  /** As wide and high as a screen. */
  void resize(int width, int height) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
  }

  /** What the person's system asks for: light or dark. */
  void prefer(String scheme) {
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
  }

  /**
   * Errors that pages told the console since the last call; breaches of the policy are among them.
   */
  List<String> problems() {
    return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
        .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
        .map(LogEntry::getMessage)
        .toList();
  }

  void screenshot(Path file) throws IOException {
    script("document.getAnimations().forEach((one) => one.finish())");
    Files.createDirectories(file.getParent());
    Files.write(file, driver.getScreenshotAs(OutputType.BYTES));
  }

  /** Closes what a class of tests started; what never came about is passed over. */
  static void closeAll(@Nullable AutoCloseable... started) throws Exception {
    for (AutoCloseable each : started) {
      if (each != null) {
        each.close();
      }
    }
  }

  @Override
  public void close() throws IOException {
    driver.quit();
    List<Path> innermostFirst;
    try (Stream<Path> all = Files.walk(profile)) {
      innermostFirst = all.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path path : innermostFirst) {
      Files.deleteIfExists(path);
    }
  }

  private FluentWait<WebDriver> patiently() {
    return new WebDriverWait(driver, PATIENCE).pollingEvery(BETWEEN);
  }

  private WebElement find(String css) {
    List<WebElement> found = driver.findElements(By.cssSelector(css));
    return found.isEmpty() ? null : found.get(0);
  }
}
