package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.cli.RunningJar.Ended;
import dev.filmward.cli.RunningJar.Limits;
import dev.filmward.web.SmallFilm;
import java.io.BufferedWriter;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that nobody should send, imported with a heap far smaller than they are. */
class HostileImportIT {
  private static final Limits SMALL = new Limits(96, 0);
  private static final long GIGABYTE = 1L << 30;
  private static final SmallFilm FILM =
      SmallFilm.withSampleAt(10, Instant.parse("2026-11-20T12:00:00Z"));

  @TempDir private Path folder;
  private Path file;
  private Path structures;

  @BeforeEach
  void prepare() throws Exception {
    file = folder.resolve("hostile.csv");
    structures = Files.writeString(folder.resolve("s.yaml"), SmallFilm.STRUCTURES);
  }

  @Test
  void aLineOfAGigabyteCostsItselfOnly() throws Exception {
    Files.writeString(file, FILM.usual(0, 2));
    try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "rw")) {
      // a hole in the file: it reads as zeros and takes no room on the disk
      bytes.seek(bytes.length() + GIGABYTE);
      bytes.writeByte('\n');
      bytes.write(body(FILM.usual(2, 4)).getBytes(StandardCharsets.UTF_8));
    }
    JsonNode count = imported();
    // two samples before and two after it, 5 lanes of 2 layers each; the line costs a row's worth
    assertThat(count.get("new").asLong()).isEqualTo(40);
    assertThat(count.get("quarantined").asLong()).isEqualTo(2);
  }

  @Test
  void aHeaderOfAMillionColumnsIsRefused() throws Exception {
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      out.write(SmallFilm.HEADER.strip());
      for (int i = 0; i < 1_000_000; i++) {
        out.write(",column " + i);
      }
      out.write("\n1,2,3\n");
    }
    expectRefusal("column");
  }

  @Test
  void aMillionBadRowsAreKeptForTheirPerson() throws Exception {
    String good = body(FILM.usual(0, 1));
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      out.write(SmallFilm.HEADER);
      for (int i = 0; i < 200_000; i++) {
        out.write(good.replace("DUO-50", "DUO-5O"));
      }
      out.write(good);
    }
    JsonNode count = imported();
    assertThat(count.get("rows").asLong()).isEqualTo(1_000_005);
    assertThat(count.get("new").asLong()).isEqualTo(10);
    assertThat(count.get("quarantined").asLong()).isEqualTo(2_000_000);
  }

  @Test
  void zerosBetweenTheRowsAreQuarantined() throws Exception {
    Files.writeString(
        file, FILM.usual(0, 1) + "\u0000".repeat(1000) + "\n" + body(FILM.usual(1, 2)));
    JsonNode count = imported();
    assertThat(count.get("new").asLong()).isEqualTo(20);
    assertThat(count.get("quarantined").asLong()).isEqualTo(2);
  }

  @Test
  void anArchiveThatWouldUnpackToGigabytesIsRefusedAndNeverUnpacked() throws Exception {
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
      zip.putNextEntry(new ZipEntry("readings.csv"));
      zeros(zip);
    }
    expectRefusal("hostile.csv");
    try (OutputStream gzip = new GZIPOutputStream(Files.newOutputStream(file))) {
      zeros(gzip);
    }
    expectRefusal("hostile.csv");
  }

  private static void zeros(OutputStream out) throws Exception {
    byte[] block = new byte[1 << 20];
    for (int i = 0; i < 256; i++) {
      out.write(block);
    }
  }

  private JsonNode imported() throws Exception {
    Ended ended = run();
    assertThat(ended.status()).as(ended.err()).isZero();
    return Await.json(ended.out()).get("files").get(0);
  }

  private void expectRefusal(String word) throws Exception {
    Ended ended = run();
    assertThat(ended.status()).as(ended.err()).isEqualTo(3);
    String refusal = Await.json(ended.out()).get("files").get(0).get("refusal").asText();
    assertThat(refusal).contains(word).hasSizeLessThan(2_000);
  }

  private Ended run() throws Exception {
    return RunningJar.run(
        folder,
        SMALL,
        "import",
        "--data",
        folder.resolve("data"),
        "--structures",
        structures,
        "--format",
        "json",
        file);
  }

  private static String body(String csv) {
    return csv.substring(SmallFilm.HEADER.length());
  }
}
