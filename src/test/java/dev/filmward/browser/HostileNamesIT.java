package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.web.Api;
import dev.filmward.web.SmallFilm;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Names that are scripts, in every place where a file has a name: shown as text, never run. */
class HostileNamesIT {
  private static final String RUNS = "window.foreignCode=1";
  private static final String LINE = "<img src=x onerror=" + RUNS + ">L";
  private static final String CODE = "<svg onload=" + RUNS + ">S";
  private static final String LAYER = "<script>" + RUNS + "</script>Skin";
  private static final String ROLL = "'-(" + RUNS + ")-'\"><b>R</b>";
  private static final String FILE = "</td><iframe srcdoc='<script>" + RUNS + "</script>'>.csv";
  private static final String CELL = "<a href=javascript:" + RUNS + ">thick</a>";
  private static final String PERSON = "<b onclick=" + RUNS + ">Lee</b>";

  /** Elements that our pages never make, and listeners written as attributes. */
  private static final String MADE =
      "return [...document.querySelectorAll('main *')].filter((node) =>"
          + " node.matches('img, iframe, script, a[href^=javascript]')"
          + " || [...node.attributes].some(({ name }) => name.startsWith('on'))).length";

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
  void nothingRunsAndEverythingIsShownAsItIs() throws Exception {
    try (ServedJar served = RunningJar.serve(folder, folder.resolve("data"), 0)) {
      fill(served.api());
      browser.resize(1440, 900);
      browser.signIn(served);
      String film = "line=" + Api.encoded(LINE) + "&structure=" + Api.encoded(CODE);
      expect(served, "/", List.of(LINE, LAYER));
      expect(served, "/layer.html?" + film + "&kind=layer&position=1", List.of(LINE, LAYER, ROLL));
      expect(served, "/limits.html?" + film, List.of(LINE, CODE, LAYER));
      expect(served, "/tests.html?" + film, List.of(LINE, CODE));
      String structure = "structure=" + Api.encoded(CODE);
      expect(served, "/structures.html?" + structure, List.of(LINE, CODE, LAYER));
      expect(served, "/alarms.html", List.of(LINE, CODE, LAYER, ROLL));
      expect(served, "/people.html", List.of(PERSON));
      expect(served, "/intake.html", List.of(FILE));
      browser.script("document.querySelectorAll('.file-name')[0].click()");
      browser.await(".held");
      assertThat(browser.text("main")).contains(CELL);
      expectThatNothingRan("quarantine");
    }
  }

  private static void fill(Api api) {
    String yaml =
        SmallFilm.STRUCTURES
            .replace("code: DUO-50", "code: \"" + CODE + "\"")
            .replace("name: Skin", "name: \"" + LAYER + "\"");
    Api.Answer kept = api.send(api.change("/api/v1/structures?name=s.yaml", "text/yaml", yaml));
    assertThat(kept.status()).as(kept.text()).isEqualTo(200);
    SmallFilm film = SmallFilm.withSampleAt(27, Instant.now());
    api.upload("baseline.csv", hostile(film.usual(0, 25)));
    Api.Answer frozen =
        api.post(
            "/api/v1/limits/freeze",
            "{\"line\": \"%s\", \"structure\": \"%s\", \"reason\": \"%s\"}"
                .formatted(LINE, CODE, "<i>quiet</i>"));
    assertThat(frozen.status()).as(frozen.text()).isEqualTo(200);
    String thin = hostile(film.thinnerSkin(25, 27, 1)).replaceFirst("19\\.100", CELL);
    JsonNode file = api.upload(FILE, thin).json();
    assertThat(file.get("quarantined").asInt()).as(file.toString()).isEqualTo(1);
    api.post("/api/v1/people", "{\"name\": \"" + PERSON + "\", \"role\": \"viewer\"}");
  }

  private static String hostile(String csv) {
    return csv.replace(SmallFilm.LINE, quoted(LINE))
        .replace(SmallFilm.CODE, quoted(CODE))
        .replace(",R1,", "," + quoted(ROLL) + ",");
  }

  private static String quoted(String text) {
    return '"' + text.replace("\"", "\"\"") + '"';
  }

  private static void expect(ServedJar served, String page, List<String> shown) {
    browser.open(served.address(page));
    for (String text : shown) {
      assertThat(browser.text("main")).as(page).contains(text);
    }
    expectThatNothingRan(page);
  }

  private static void expectThatNothingRan(String page) {
    assertThat(browser.script("return window.foreignCode ?? 'none'")).as(page).isEqualTo("none");
    assertThat(browser.script(MADE)).as(page).isEqualTo(0L);
    assertThat(browser.problems()).as(page).isEmpty();
  }
}
