package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.intake.recognition.Recognition;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Whatever happens to a mapped file, every place for a reading in it is a reading, missing or in
 * quarantine, and each is told of once. Cases are made from the dialects by a seed: rows repeated,
 * cut, swapped, emptied, and single signs changed.
 */
class MappedFuzzTest {
  private static final Recognition.Known KNOWN = new Recognition.Known(Film.BOTH, Seen.PLANT);
  private static final int CASES = 4000;
  private static final String SIGNS = ";,\t|\"\n\r\0 .-0019:/xµ\u00a0#";

  private final long seed = Long.getLong("filmward.seed", new Random().nextLong());
  private final Random random = new Random(seed);

  @Test
  void rowsTimesPlacesAreReadingsAndMissingAndQuarantined() throws Exception {
    List<Dialects> dialects = Dialects.all();
    List<Mapping> mappings = new ArrayList<>();
    for (Dialects dialect : dialects) {
      mappings.add(
          Recognition.of(dialect.bytes(), dialect.fileName(), KNOWN, dialect.answers())
              .mapping()
              .orElseThrow());
    }
    long readings = 0;
    for (int i = 0; i < CASES; i++) {
      int which = random.nextInt(dialects.size());
      readings += check(dialects.get(which), mappings.get(which), i);
    }
    assertThat(readings).as("readings of all cases, seed " + seed).isGreaterThan(CASES);
  }

  private long check(Dialects dialect, Mapping mapping, int number) throws IOException {
    byte[] bytes = mutated(dialect.bytes());
    String place = dialect.name() + ", case " + number + ", seed " + seed;
    Counted seen = new Counted();
    long[] rejected = {0};
    ReadingsParser parser =
        new ReadingsParser(Film.BOTH, Seen.PLANT, new Mappings(List.of(mapping)));
    FileCount count;
    try {
      count =
          parser.parse(
              new ByteArrayInputStream(bytes),
              dialect.fileName(),
              seen,
              rejection -> rejected[0] += rejection.readings());
    } catch (FileRefused e) {
      assertThat(e.getMessage()).as(place).isNotBlank();
      assertThat(seen.readings + seen.missing + rejected[0]).as(place).isZero();
      return 0;
    }
    assertThat(count.readings()).as(place).isEqualTo(seen.readings);
    assertThat(count.missing()).as(place).isGreaterThanOrEqualTo(seen.missing);
    assertThat(count.quarantined()).as(place).isEqualTo(rejected[0]);
    assertThat(count.readings() + count.missing() + count.quarantined())
        .as(place)
        .isEqualTo(count.rows() * mapping.values().size());
    return count.readings();
  }

  private byte[] mutated(byte[] original) {
    if (original.length > 2 && original[1] == 0) {
      return original;
    }
    List<String> lines =
        new ArrayList<>(List.of(new String(original, StandardCharsets.ISO_8859_1).split("\n", -1)));
    for (int i = random.nextInt(4); i > 0; i--) {
      mutate(lines);
    }
    return String.join("\n", lines).getBytes(StandardCharsets.ISO_8859_1);
  }

  /** Mostly below the header, which is in the first lines. */
  private void mutate(List<String> lines) {
    int at = lines.size() - 1 - random.nextInt(Math.max(1, lines.size() * 2 / 3));
    String line = lines.get(at);
    switch (random.nextInt(6)) {
      case 0 -> lines.add(at, line);
      case 1 -> lines.set(at, line.substring(0, line.length() / 2));
      case 2 -> lines.set(at, changed(line));
      case 3 -> lines.add(at, "");
      case 4 -> lines.add(line + line);
      default -> lines.add(at, lines.get(random.nextInt(lines.size())));
    }
  }

  private String changed(String line) {
    int at = random.nextInt(line.length() + 1);
    char sign = SIGNS.charAt(random.nextInt(SIGNS.length()));
    return line.substring(0, at) + sign + line.substring(Math.min(line.length(), at + 1));
  }

  @Test
  void recognitionOfMutatedFilesAnswersOrRefusesInWords() throws Exception {
    List<Dialects> dialects = Dialects.all();
    for (int i = 0; i < 150; i++) {
      Dialects dialect = dialects.get(random.nextInt(dialects.size()));
      try {
        byte[] bytes = mutated(dialect.bytes());
        assertThat(Recognition.of(bytes, dialect.fileName(), KNOWN, Map.of()).yaml()).isNotBlank();
      } catch (FileRefused e) {
        assertThat(e.getMessage()).as("seed " + seed).contains(dialect.fileName());
      }
    }
  }
}
