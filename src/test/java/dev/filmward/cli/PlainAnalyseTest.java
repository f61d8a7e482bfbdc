package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The short cut to {@code analyse} takes what it fully understands, and nothing else. */
class PlainAnalyseTest {
  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "analyse r.csv --structures s.yaml",
        "analyse --structures s.yaml r.csv q.csv --format json --zone Europe/Berlin",
        "analyse --format csv --structures s.yaml r.csv"
      })
  void takesFilesWithTheUsualOptions(String line) {
    assertThat(PlainAnalyse.of(line.split(" "))).isPresent();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "analyse",
        "analyse r.csv",
        "analyse --structures s.yaml",
        "analyse r.csv --structures",
        "analyse r.csv --structures s.yaml --detail",
        "analyse r.csv --structures s.yaml --strict",
        "analyse r.csv --structures=s.yaml",
        "analyse r.csv --structures s.yaml --structures t.yaml",
        "analyse r.csv --structures s.yaml --format xml",
        "analyse r.csv --structures s.yaml --zone Atlantis",
        "analyse @file --structures s.yaml",
        "analyse -- r.csv --structures s.yaml",
        "analyse --help",
        "import r.csv --structures s.yaml"
      })
  void leavesAllElseToTheLibrary(String line) {
    assertThat(PlainAnalyse.of(line.split(" "))).isEmpty();
  }

  @Test
  void findsTheStructuresBesideTheFirstFile() throws Exception {
    Files.writeString(folder.resolve("structures.yaml"), "structures:");
    assertThat(PlainAnalyse.of("analyse", folder.resolve("r.csv").toString())).isPresent();
  }

  @Test
  void timesAreWrittenAsTheFormatterOfTheLanguageWritesThem() {
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    for (String name : List.of("UTC", "Europe/Berlin", "Asia/Kathmandu", "America/St_Johns")) {
      OffsetTimes times = new OffsetTimes(ZoneId.of(name));
      for (int i = 0; i < 2000; i++) {
        int nanos = i % 5 == 0 ? random.nextInt(1_000_000) * 1000 : 0;
        Instant time =
            Instant.ofEpochSecond(random.nextLong(-62_000_000_000L, 300_000_000_000L), nanos);
        String expected =
            DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(
                time.atZone(ZoneId.of(name)).toOffsetDateTime());
        assertThat(times.of(time)).as("seed %d", seed).isEqualTo(expected);
      }
    }
  }
}
