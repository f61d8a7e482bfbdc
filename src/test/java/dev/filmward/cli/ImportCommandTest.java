package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.SmallFilm;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files into the data folder, and the line that says that they are kept. */
class ImportCommandTest {
  private static final SmallFilm FILM =
      SmallFilm.withSampleAt(0, Instant.parse("2026-11-20T06:00:00Z"));

  @TempDir private Path folder;
  private Path structures;

  @BeforeEach
  void writeStructures() throws Exception {
    structures = Files.writeString(folder.resolve("film.yaml"), SmallFilm.STRUCTURES);
  }

  @Test
  void saysInOneLineAFileWhatBecameOfItsReadings() throws Exception {
    Path first = write("first.csv", FILM.usual(0, 3));
    Path second = write("second.csv", FILM.usual(2, 4).replaceFirst("20\\.300", "-"));
    Outcome outcome = json(first, second);
    assertThat(outcome.status()).isZero();
    List<String> lines = outcome.out().lines().toList();
    assertThat(lines).hasSize(2);
    assertThat(lines.get(0))
        .isEqualTo(
            "{\"files\":[{\"name\":\""
                + first
                + "\",\"rows\":15,\"readings\":30,\"missing\":0,"
                + "\"quarantined\":0,\"new\":30,\"known\":0,\"corrected\":0}]}");
    // sample 2 is there already but for the reading that the dash says was not measured
    expectCounts(lines.get(1), "readings", 19, "missing", 1, "new", 10, "known", 9);
  }

  @Test
  void aFileReadAgainIsKnownAndACorrectedOneCorrects() throws Exception {
    Path file = write("a.csv", FILM.usual(0, 3));
    json(file);
    expectCounts(json(file).out(), "new", 0, "known", 30, "corrected", 0);
    write("a.csv", FILM.usual(0, 3).replaceFirst("20\\.300", "20.310"));
    expectCounts(json(file).out(), "new", 0, "known", 29, "corrected", 1);
  }

  @Test
  void strictKeepsWhatCanBeUsedAndSaysThree() throws Exception {
    Path file = write("a.csv", FILM.usual(0, 3).replaceFirst("20\\.300", "0"));
    Outcome strict = json(file, "--strict");
    assertThat(strict.status()).isEqualTo(3);
    expectCounts(strict.out(), "readings", 29, "quarantined", 1, "new", 29);
    assertThat(json(file).status()).isZero();
  }

  @Test
  void aFileThatIsNoTableOfReadingsIsThreeAndTheNextIsRead() throws Exception {
    Path letter = write("letter.csv", "Dear colleague,\nnothing today\n");
    Path file = write("a.csv", FILM.usual(0, 1));
    Outcome outcome = json(letter, file);
    assertThat(outcome.status()).isEqualTo(3);
    List<String> lines = outcome.out().lines().toList();
    JsonNode refused = new ObjectMapper().readTree(lines.get(0)).get("files").get(0);
    assertThat(refused.get("refusal").asText()).isNotBlank();
    expectCounts(lines.get(1), "new", 10);
  }

  @Test
  void structuresAreKeptForLater() throws Exception {
    Path file = write("a.csv", FILM.usual(0, 1));
    Outcome unknown = run(file, "--format", "json");
    assertThat(unknown.status()).isZero();
    expectCounts(unknown.out(), "readings", 0, "quarantined", 10);
    assertThat(run("--structures", structures).status()).isZero();
    expectCounts(run(file, "--format", "json").out(), "readings", 10, "quarantined", 0, "new", 10);
  }

  @Test
  void tellsPeopleInWords() throws Exception {
    Outcome outcome = run("--structures", structures, write("a.csv", FILM.usual(0, 1)));
    assertThat(outcome.out())
        .contains("a.csv: 5 rows, 10 readings (10 new, 0 known, 0 corrected), 0 missing");
  }

  @Test
  void keepsReadingsInPostgresqlAndAnalysesThemAsTheFiles() throws Exception {
    Path file = write("a.csv", FILM.usual(0, 30));
    String url = TestDatabase.POSTGRESQL.url(folder).orElseThrow();
    expectCounts(json(file, "--db", url).out(), "new", 300, "known", 0);
    expectCounts(json(file, "--db", url).out(), "new", 0, "known", 300);
    assertThat(folder.resolve("data")).doesNotExist();
    Outcome stored = Outcome.of("analyse", "--db", url, "--format", "json");
    Outcome read =
        Outcome.of(
            "analyse", file.toString(), "--structures", structures.toString(), "--format", "json");
    ObjectMapper mapper = new ObjectMapper();
    assertThat(mapper.readTree(stored.out()).get("series"))
        .isEqualTo(mapper.readTree(read.out()).get("series"));
  }

  @Test
  void aDatabaseThatCannotBeReachedIsOneAndNamedWithoutItsPassword() throws Exception {
    Path file = write("a.csv", FILM.usual(0, 1));
    Outcome outcome = run(file, "--db", "jdbc:postgresql://localhost:1/x?user=ann&password=secret");
    assertThat(outcome.status()).isEqualTo(1);
    assertThat(outcome.err().lines()).hasSize(1);
    assertThat(outcome.err()).contains("jdbc:postgresql://localhost:1/x").doesNotContain("secret");
  }

  private Path write(String name, String csv) throws Exception {
    return Files.writeString(folder.resolve(name), csv);
  }

  private Outcome json(Object... filesAndOptions) {
    Object[] all = new Object[filesAndOptions.length + 4];
    System.arraycopy(filesAndOptions, 0, all, 4, filesAndOptions.length);
    all[0] = "--structures";
    all[1] = structures;
    all[2] = "--format";
    all[3] = "json";
    return run(all);
  }

  private Outcome run(Object... arguments) {
    String[] words = new String[arguments.length + 3];
    words[0] = "import";
    words[1] = "--data";
    words[2] = folder.resolve("data").toString();
    for (int i = 0; i < arguments.length; i++) {
      words[i + 3] = arguments[i].toString();
    }
    return Outcome.of(words);
  }

  private static void expectCounts(String line, Object... namesAndCounts) throws Exception {
    JsonNode file = new ObjectMapper().readTree(line).get("files").get(0);
    for (int i = 0; i < namesAndCounts.length; i += 2) {
      String name = namesAndCounts[i].toString();
      assertThat(file.get(name).asInt()).as(name).isEqualTo(namesAndCounts[i + 1]);
    }
  }
}
