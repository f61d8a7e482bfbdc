package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.web.SmallFilm;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A board that stays open: a new sample is soon on the screen, and nothing piles up behind it. */
class OpenBoardIT {
  private static final int BASELINE = 25;
  private static final int TIMED = 20;
  private static final int PUSHED = 240;
  private static final long SOON_MS = 500;

  /** What the ribbons, the clock and the garbage of the last redraw may differ by. */
  private static final double SPARE_MB = 1.5;

  @TempDir private static Path folder;
  private static Chromium browser;
  private static ServedJar served;
  private static SmallFilm film;

  @BeforeAll
  static void openTheBoard() throws Exception {
    browser = Chromium.start();
    served = RunningJar.serve(folder, folder.resolve("data"), 0);
    browser.signIn(served);
    Duration apart = Duration.ofSeconds(1);
    film = new SmallFilm(SmallFilm.LINE, Instant.now().minusSeconds(BASELINE), apart);
    served.api().upload("baseline.csv", film.usual(0, BASELINE));
    served.api().freeze();
    browser.open(served.address("/"));
    browser.script(
        "window.seen = {};"
            + "const look = () => {"
            + "  const name = /S\\d{5}/.exec(document.querySelector('.last')?.textContent ?? '');"
            + "  if (name) window.seen[name[0]] ??= Date.now();"
            + "};"
            + "new MutationObserver(look).observe(document.body,"
            + " {subtree: true, childList: true, characterData: true});");
  }

  @AfterAll
  static void stop() throws Exception {
    if (served != null) {
      served.close();
    }
    if (browser != null) {
      browser.close();
    }
  }

  /** From the answer that a sample is stored until its name stands on the board, on one clock. */
  @Test
  void aNewSampleIsOnTheScreenInHalfASecond() throws Exception {
    List<Long> delays = new ArrayList<>();
    for (int i = 0; i < TIMED; i++) {
      int number = BASELINE + i;
      awaitTheTimeOf(number);
      served.api().upload("one.csv", film.usual(number, number + 1));
      long stored = System.currentTimeMillis();
      delays.add(Math.max(0, seen(SmallFilm.sample(number)) - stored));
    }
    delays.sort(null);
    System.out.printf(
        "on screen after: median %d ms, slowest %d ms of %d%n",
        delays.get(TIMED / 2), delays.get(TIMED - 1), TIMED);
    // the slowest one of twenty may have met a pause of the machine
    assertThat(delays.get(TIMED - 2)).isLessThan(SOON_MS);
  }

  private static void awaitTheTimeOf(int number) throws InterruptedException {
    long ahead = Duration.between(Instant.now(), film.takenAt(number)).toMillis();
    Thread.sleep(Math.max(300, ahead));
  }

  private static long seen(String sample) throws InterruptedException {
    for (int tries = 0; tries < 200; tries++) {
      Object at = browser.script("return window.seen[arguments[0]] ?? null", sample);
      if (at != null) {
        return ((Number) at).longValue();
      }
      Thread.sleep(20);
    }
    throw new AssertionError(sample + " never came: " + browser.text(".last"));
  }

  /** As many samples as a line of the demonstration gives in an hour. */
  @Test
  void anHoursSamplesLeaveNothingBehind() throws Exception {
    Instant first = Instant.now().minus(Duration.ofHours(2));
    SmallFilm other = new SmallFilm("Blown 2", first, Duration.ofSeconds(15));
    push(other, 0, 60);
    Memory before = memory();
    push(other, 60, PUSHED);
    Memory after = memory();
    System.out.printf("open board: %s, after %d samples %s%n", before, PUSHED, after);
    assertThat(after.heapMb).isLessThan(before.heapMb + SPARE_MB);
    assertThat(after.listeners).isLessThanOrEqualTo(before.listeners + 2);
    assertThat(browser.problems()).isEmpty();
  }

  private static void push(SmallFilm other, int from, int samples) throws InterruptedException {
    for (int i = 0; i < samples; i++) {
      served.api().upload("push.csv", other.usual(from + i, from + i + 1));
      Thread.sleep(60);
    }
    Thread.sleep(1_500);
  }

  private record Memory(double heapMb, double listeners) {}

  private static Memory memory() {
    browser.driver().executeCdpCommand("Performance.enable", Map.of());
    browser.driver().executeCdpCommand("HeapProfiler.collectGarbage", Map.of());
    Object metrics =
        browser.driver().executeCdpCommand("Performance.getMetrics", Map.of()).get("metrics");
    return new Memory(metric(metrics, "JSHeapUsedSize") / 1e6, metric(metrics, "JSEventListeners"));
  }

  private static double metric(Object metrics, String name) {
    for (Object metric : (List<?>) metrics) {
      Map<?, ?> each = (Map<?, ?>) metric;
      if (name.equals(each.get("name"))) {
        return ((Number) each.get("value")).doubleValue();
      }
    }
    throw new AssertionError("no metric " + name);
  }
}
