package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.web.SmallFilm;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a page shows as files: the figures of its charts and tables, and pictures that can be read.
 */
class SavedFilesIT {
  private static final int SAMPLES = 30;
  private static final String LAYER =
      "/layer.html?line=Blown%201&structure=DUO-50&kind=layer&position=1&range=all&average=shown";

  @TempDir private static Path folder;
  private static Chromium browser;
  private static ServedJar served;

  @BeforeAll
  static void start() throws Exception {
    browser = Chromium.start();
    served = RunningJar.serve(folder, folder.resolve("data"), 0);
    SmallFilm film = SmallFilm.withSampleAt(SAMPLES, Instant.now());
    served.api().upload("baseline.csv", film.usual(0, 25));
    served.api().freeze();
    served.api().upload("thin.csv", film.thinnerSkin(25, SAMPLES, 1));
    browser.resize(1440, 900);
    browser.signIn(served);
  }

  @AfterAll
  static void stop() throws Exception {
    Chromium.closeAll(served, browser);
  }

  @Test
  void aChartGivesTheFiguresOfEachSampleWithItsLimitsAndTests() {
    browser.open(served.address(LAYER));
    List<String> rows = saved("Chart: Mean of each sample", "Data").lines().toList();
    assertThat(rows.get(0))
        .isEqualTo("\ufefftime,LCL µm,centre µm,UCL µm,Mean of each sample µm,tests");
    JsonNode series = served.api().series(1);
    JsonNode columns = series.get("columns");
    assertThat(rows).hasSize(1 + SAMPLES);
    for (int i = 0; i < SAMPLES; i++) {
      String[] cells = rows.get(1 + i).split(",", -1);
      assertThat(Instant.parse(cells[0]).toEpochMilli())
          .isEqualTo(columns.at("/takenAt/" + i).asLong());
      assertThat(cells[1])
          .as("a limit that holds is there at each sample")
          .isEqualTo(written(columns.at("/meanLower/" + i).asDouble()));
      assertThat(cells[4]).isEqualTo(written(columns.at("/mean/" + i).asDouble()));
      boolean isRinged = false;
      for (JsonNode signal : series.get("signals")) {
        isRinged |= signal.get("index").asInt() == i && signal.get("chart").asText().equals("xbar");
      }
      assertThat(cells[5].isEmpty()).isEqualTo(!isRinged);
    }
    assertThat(browser.problems()).isEmpty();
  }

  /** Seven digits, without zeros at the end. */
  private static String written(double um) {
    return new java.math.BigDecimal(um)
        .round(new java.math.MathContext(7))
        .stripTrailingZeros()
        .toPlainString();
  }

  @Test
  void signedFiguresOfATableAreNumbers() {
    browser.open(served.address("/line.html?line=Blown%201"));
    String csv = saved("Table: The newest sample, layer by layer", "CSV");
    String skin = csv.lines().filter(row -> row.contains("Skin")).findFirst().orElseThrow();
    assertThat(skin).contains(",20,").doesNotContain("'");
    assertThat(browser.problems()).isEmpty();
  }

  /** A picture without a ground would show dark ink on a dark viewer. */
  @Test
  void aPictureHasTheGroundOfThePage() {
    browser.prefer("dark");
    try {
      browser.open(served.address(LAYER));
      Object corner =
          browser.asyncScript(
              "const done = arguments[arguments.length - 1];"
                  + CATCH
                  + PRESS.formatted("Chart: Range within each sample", "PNG")
                  + "const wait = setInterval(() => { if (window.kept.length > 0) {"
                  + " clearInterval(wait);"
                  + " createImageBitmap(window.kept[0]).then((image) => {"
                  + "  const canvas = document.createElement('canvas');"
                  + "  canvas.width = image.width; canvas.height = image.height;"
                  + "  const pen = canvas.getContext('2d'); pen.drawImage(image, 0, 0);"
                  + "  done([...pen.getImageData(1, 1, 1, 1).data].join());"
                  + " }); } }, 50);");
      assertThat(corner).as("#14181c").isEqualTo("20,24,28,255");
    } finally {
      browser.prefer("light");
    }
  }

  private static final String CATCH =
      "window.kept = []; URL.createObjectURL = (blob) => (window.kept.push(blob), '#');";

  private static final String PRESS =
      "document.querySelector(\"[data-action='save']\").click();"
          + "[...document.querySelectorAll('.save-list li')]"
          + ".find((row) => row.textContent.startsWith('%s'))"
          + ".querySelectorAll('button').forEach((button) => {"
          + " if (button.textContent === '%s') button.click(); });";

  private static String saved(String what, String way) {
    return String.valueOf(
        browser.asyncScript(
            "const done = arguments[arguments.length - 1];"
                + CATCH
                + PRESS.formatted(what, way)
                + "const wait = setInterval(() => { if (window.kept.length > 0) {"
                + " clearInterval(wait);"
                + " window.kept[0].arrayBuffer().then((bytes) =>"
                + "  done(new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes))); } }, 50);"));
  }
}
