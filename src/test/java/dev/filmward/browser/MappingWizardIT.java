package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A file with headings of its own: the page asks what it cannot know, shows how it would be read,
 * and brings it in; the next one like it needs no question, whichever way it comes.
 */
class MappingWizardIT {
  /** Semicolons, decimal commas, units in a row of their own, and nothing that names the layers. */
  private static final String FILE =
      """
      Messprotokoll;;;;;;
      Linie: Blown 1;;;;;;
      Struktur: DUO-50;;;;;;
      Datum;Uhrzeit;Rolle;Probe;Spur;Außen;Innen
      ;;;;;µm;µm
      20.11.2026;08:00;R7;P1;1;19,8;30,1
      20.11.2026;08:00;R7;P1;2;20,4;29,7
      """;

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
  void questionsAreAnsweredOnceAndTheNextFileIsReadWithout() throws Exception {
    Path data = folder.resolve("data");
    try (ServedJar served = RunningJar.serve(folder, data, 0)) {
      browser.resize(1440, 900);
      browser.signIn(served);
      browser.open(served.address("/intake.html"));
      browser.await("#upload-file").sendKeys(file("labor.csv", FILE).toString());
      answer("Außen", "Skin");
      answer("Innen", "Seal");
      browser.awaitText(".mapping-side:last-child", "19.8");
      browser.tap(".mapping-end button:not(.quiet)");
      browser.awaitText("main", "labor.csv");
      JsonNode came = awaitFile(served, "labor.csv");
      assertThat(came.get("readings").asLong()).isEqualTo(4);
      assertThat(came.get("notes").toString()).contains("read through the mapping");
      assertThat(browser.problems()).isEmpty();

      String next = FILE.replace("P1", "P2").replace("19,8", "21,5");
      Path part = file("next.csv.part", next);
      Files.move(part, data.resolve("inbox/next.csv"));
      JsonNode watched = awaitFile(served, "next.csv");
      assertThat(watched.get("new").asLong()).isEqualTo(4);
      assertThat(watched.get("refusal").isNull()).isTrue();
      JsonNode means = served.api().series(1).get("columns").get("mean");
      // (19.8 + 20.4) / 2 and (21.5 + 20.4) / 2
      assertThat(means.get(0).asDouble()).isBetween(20.0999, 20.1001);
      assertThat(means.get(1).asDouble()).isBetween(20.9499, 20.9501);
    }
  }

  private Path file(String name, String text) throws Exception {
    return Files.writeString(folder.resolve(name), text, Charset.forName("windows-1252"));
  }

  private static void answer(String column, String layer) {
    String question =
        "[...document.querySelectorAll('.mapping-question')]"
            + ".filter((each) => each.textContent.includes(arguments[0]))"
            + ".flatMap((each) => [...each.querySelectorAll('button')])"
            + ".find((each) => each.textContent === arguments[1])";
    browser.awaitText(".mapping", column);
    browser.script(question + ".click()", column, layer);
  }

  private static JsonNode awaitFile(ServedJar served, String name) throws Exception {
    long end = System.nanoTime() + 20_000_000_000L;
    while (System.nanoTime() < end) {
      for (JsonNode file : served.api().get("/api/v1/files").json().get("files")) {
        if (file.get("name").asText().equals(name)) {
          return file;
        }
      }
      Thread.sleep(50);
    }
    throw new AssertionError(
        name + " has not come; there are " + served.api().get("/api/v1/files").text());
  }
}
