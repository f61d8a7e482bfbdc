package dev.filmward.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.cli.RunningJar;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.web.SmallFilm;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A file of 150 000 samples is brought in by the page: it says how far it is, ends when somebody
 * cancels it, keeps what was confirmed, and takes the rest when it is brought again.
 */
class LongWorkIT {
  private static final int SAMPLES = 150_000;
  private static final int SAMPLES_A_PIECE = 10_000;
  private static final Duration PATIENCE = Duration.ofSeconds(120);

  @TempDir private static Path folder;
  private static Chromium browser;
  private static ServedJar served;

  @BeforeAll
  static void start() throws Exception {
    browser = Chromium.start();
    served = RunningJar.serve(folder, folder.resolve("data"), 0);
  }

  @AfterAll
  static void stop() throws Exception {
    Chromium.closeAll(served, browser);
  }

  @Test
  void aLongFileShowsItsShareEndsWhenCancelledAndNothingIsLost() throws Exception {
    Path csv = longFile();
    browser.resize(1440, 900);
    browser.signIn(served);
    browser.open(served.address("/intake.html"));
    browser.await("#upload-file").sendKeys(csv.toString());
    browser.await(".uploads .long-work progress[value]");
    browser.awaitText(".uploads .long-work [role='status']", "%");
    long asked = System.nanoTime();
    browser.tap("[data-action='cancel-work']");
    browser.await(".uploads li[data-state='refused']");
    Duration taken = Duration.ofNanos(System.nanoTime() - asked);
    assertThat(taken).isLessThan(Duration.ofSeconds(10));
    assertThat(browser.text(".uploads")).contains("cancelled");
    assertThat(browser.problems()).allMatch(problem -> problem.contains("409"));
    long kept = samples();
    assertThat(kept).isLessThan(SAMPLES);

    browser.await("#upload-file").sendKeys(csv.toString());
    awaitRead();
    assertThat(samples()).isEqualTo(SAMPLES);
    JsonNode file = served.api().get("/api/v1/files").json().at("/files/0");
    assertThat(file.get("readings").asLong()).isEqualTo(2L * SmallFilm.LANES * SAMPLES);
    assertThat(file.get("known").asLong() + file.get("new").asLong())
        .as("none is there twice")
        .isEqualTo(file.get("readings").asLong());
    assertThat(file.get("known").asLong()).isEqualTo(2L * SmallFilm.LANES * kept);
  }

  private static Path longFile() throws IOException {
    Path csv = folder.resolve("long.csv");
    Duration apart = Duration.ofMinutes(1);
    SmallFilm film =
        new SmallFilm(SmallFilm.LINE, Instant.now().minus(apart.multipliedBy(SAMPLES + 1L)), apart);
    try (Writer writer = Files.newBufferedWriter(csv)) {
      writer.write(SmallFilm.HEADER);
      for (int from = 0; from < SAMPLES; from += SAMPLES_A_PIECE) {
        writer.write(film.usual(from, from + SAMPLES_A_PIECE).substring(SmallFilm.HEADER.length()));
      }
    }
    return csv;
  }

  /** Longer than a page usually takes. */
  private static void awaitRead() throws InterruptedException {
    Instant until = Instant.now().plus(PATIENCE);
    while (!(boolean)
        browser.script("return document.querySelector('.uploads li')?.dataset.state === 'read'")) {
      assertThat(Instant.now()).as(browser.text(".uploads")).isBefore(until);
      Thread.sleep(200);
    }
  }

  private static long samples() {
    return served
        .api()
        .get("/api/v1/series?line=Blown%201&structure=DUO-50&kind=layer&position=1&pixels=100")
        .json()
        .get("samples")
        .asLong();
  }
}
