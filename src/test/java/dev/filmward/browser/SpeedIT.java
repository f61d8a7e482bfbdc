package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.web.SmallFilm;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How light and quick pages are, and that ten thousand samples lose no signal at any zoom. Times
 * are the best of several, since the machine does other things too.
 */
class SpeedIT {
  private static final int SAMPLES = 10_000;
  private static final String SERIES = "line=Blown%201&structure=DUO-50&kind=layer&position=1";
  private static final Instant START = Instant.now().minus(Duration.ofMinutes(SAMPLES + 5));

  @TempDir private static Path folder;
  private static ServedJar served;
  private static Chromium browser;

  @BeforeAll
  static void tenThousandSamples() throws Exception {
    browser = Chromium.start();
    served = RunningJar.serve(folder, folder.resolve("data"), 0);
    browser.signIn(served);
    SmallFilm film = SmallFilm.withSampleAt(26, START.plus(Duration.ofMinutes(26)));
    served.api().upload("baseline.csv", film.usual(0, 25));
    served.api().freeze();
    served.api().upload("long.csv", csv());
  }

  @AfterAll
  static void stop() throws Exception {
    Chromium.closeAll(served, browser);
  }

  /** Noise of 0.1 um about 20 um; every 97th sample jumps, so that there are many signals. */
  private static String csv() {
    Random random = new Random(5);
    StringBuilder csv =
        new StringBuilder("taken_at,line,structure,roll,sample,lane,layer_1_um,layer_2_um\n");
    for (int sample = 30; sample < SAMPLES; sample++) {
      Instant at = START.plus(Duration.ofMinutes(sample));
      double jump = sample % 97 == 0 ? 1.5 : 0;
      for (int lane = 1; lane <= 3; lane++) {
        csv.append(
            String.format(
                Locale.ROOT,
                "%s,Blown 1,DUO-50,R%d,L%d,%d,%.3f,%.3f%n",
                at,
                sample / 100,
                sample,
                lane,
                20 + jump + 0.1 * random.nextGaussian(),
                30 + 0.1 * random.nextGaussian()));
      }
    }
    return csv.toString();
  }

  @Test
  void pointsWithSignalsSurviveEveryZoom() throws Exception {
    JsonNode all = served.api().get("/api/v1/series?" + SERIES).json();
    assertThat(all.get("columns").get("takenAt").size()).isGreaterThan(9000);
    for (int width : new int[] {390, 1440, 1920}) {
      browser.resize(width, 900);
      for (double part : new double[] {1, 0.5, 0.1, 0.01}) {
        long to = START.plus(Duration.ofMinutes(SAMPLES)).toEpochMilli();
        long from = to - Math.round(part * Duration.ofMinutes(SAMPLES).toMillis());
        int expected = ringed(all, from, to);
        browser.open(
            served.address(
                "/layer.html?"
                    + SERIES
                    + "&from="
                    + Instant.ofEpochMilli(from)
                    + "&to="
                    + Instant.ofEpochMilli(to)));
        assertThat(
                browser.script(
                    "return document.querySelector('[data-chart=xbar]').dataset.signals"))
            .as("rings at %d px of the last %s of the time", width, part)
            .isEqualTo(String.valueOf(expected));
      }
    }
  }

  /** Samples with a test fulfilled on the mean chart, of all that the server knows. */
  private static int ringed(JsonNode all, long from, long to) {
    Set<Integer> samples = new TreeSet<>();
    for (JsonNode signal : all.get("signals")) {
      long at = all.get("columns").get("takenAt").get(signal.get("index").asInt()).asLong();
      if (Set.of("xbar", "ewma").contains(signal.get("chart").asText()) && at >= from && at <= to) {
        samples.add(signal.get("index").asInt());
      }
    }
    return samples.size();
  }

  @Test
  void tenThousandSamplesAreDrawnAndMovedInTime() throws Exception {
    browser.resize(1440, 900);
    browser.open(served.address("/layer.html?" + SERIES + "&range=all"));
    Map<?, ?> times = (Map<?, ?>) browser.asyncScript(MEASURED);
    System.out.println("10 000 samples: " + times + " ms");
    assertThat(((Number) times.get("points")).intValue()).isGreaterThan(9000);
    assertThat(((Number) times.get("draw")).doubleValue()).isLessThan(200);
    assertThat(((Number) times.get("frame")).doubleValue()).isLessThan(1000.0 / 50);
  }

  /**
   * Bytes as they came over the wire, and when the browser first painted and the page said that it
   * was drawn.
   */
  @Test
  void theFirstPageIsLightAndThereWithinASecond() throws Exception {
    browser.resize(1440, 900);
    double paint = Double.MAX_VALUE;
    long bytes = 0;
    for (int i = 0; i < 3; i++) {
      browser.forgetCache();
      browser.open(served.address("/"));
      bytes = ((Number) browser.script(BYTES)).longValue();
      paint = Math.min(paint, ((Number) browser.script(PAINTED)).doubleValue());
    }
    System.out.printf(
        Locale.ROOT, "first page: %d bytes, first paint after %.0f ms%n", bytes, paint);
    assertThat(bytes).isBetween(20_000L, 300_000L);
    assertThat(paint).isLessThan(1000);
  }

  private static final String BYTES =
      "return performance.getEntriesByType('navigation').concat(performance.getEntriesByType('resource'))"
          + ".reduce((sum, { transferSize }) => sum + transferSize, 0)";

  private static final String PAINTED =
      "return performance.getEntriesByName('first-contentful-paint')[0].startTime";

  /**
   * All points are drawn at once; moved are those that a chart so wide shows, as the page asks for
   * them.
   */
  private static final String MEASURED =
      """
      const done = arguments[arguments.length - 1];
      (async () => {
        const { chartPanel } = await import('/app/chartPanel.js');
        const { meanPanel, timeAxis } = await import('/app/meanRangeChart.js');
        const ask = async (more) => (await fetch('/api/v1/series?%s' + more)).json();
        const all = await ask('');
        const shown = await ask('&pixels=1440');
        const panel = chartPanel('xbar', 'measured');
        document.querySelector('.charts').prepend(panel.node);
        await new Promise(requestAnimationFrame);
        const best = (times, act) => Math.min(...Array.from({ length: times }, (_, i) => {
          const before = performance.now();
          act(i);
          return performance.now() - before;
        }));
        const axis = timeAxis(all);
        const draw = best(5, () => panel.show(meanPanel(all, 'process'), axis));
        const made = meanPanel(shown, 'process');
        const reach = axis.max - axis.min;
        let spent = 0;
        for (let i = 0; i < 50; i++) {
          const before = performance.now();
          panel.show(made, { min: axis.min + reach * i / 100, max: axis.max - reach * (50 - i) / 100 });
          spent += performance.now() - before;
          await new Promise(requestAnimationFrame);
        }
        done({ points: all.columns.takenAt.length, rings: made.rings.length, shown: made.points.length, draw, frame: spent / 50 });
      })().catch((error) => done({ points: -1, error: String(error) }));
      """
          .formatted(SERIES);
}
