package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.web.SmallFilm;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From an odd export to readings in the data folder, by the commands alone. */
class MappingCommandsTest {
  private static final String ODD =
      "Linie;Zeit;Rolle;Probe;Spur;Schicht;Dicke\n"
          + "Blown 1;25.11.2026 09:30;R7;S1;1;1;12,5\n"
          + "Blown 1;25.11.2026 09:30;R7;S1;2;1;OL\n"
          + "Blown 1;25.11.2026 09:30;R7;S1;3;1;x12\n";

  @TempDir private Path folder;
  private String csv = "";
  private String structures = "";

  @BeforeEach
  void writeFiles() throws Exception {
    csv = Files.writeString(folder.resolve("odd.csv"), ODD).toString();
    structures = Files.writeString(folder.resolve("film.yaml"), SmallFilm.STRUCTURES).toString();
  }

  @Test
  void aLengthWithoutUnitIsAskedForAndNotGuessed() {
    Outcome preview = Outcome.of("preview", csv, "--structures", structures);
    assertThat(preview.status()).isEqualTo(3);
    assertThat(preview.err()).contains("In which unit").contains("--answer \"unit=mil\"");
    assertThat(preview.out()).contains("unit: \"?\"");
  }

  @Test
  void whatPreviewPrintsIsTakenByTheOtherCommands() throws Exception {
    Outcome preview =
        Outcome.of(
            "preview", csv, "--structures", structures, "--answer", "unit=um", "--zone", "UTC");
    assertThat(preview.status()).as(preview.err()).isZero();
    String mapping = Files.writeString(folder.resolve("odd.yaml"), preview.out()).toString();

    Outcome again = Outcome.of("preview", csv, "--structures", structures, "--mapping", mapping);
    assertThat(again.out()).contains("1 reading", "1 missing", "1 quarantined", "\"x12\"");

    Outcome analysed = Outcome.of("analyse", csv, "--structures", structures, "--mapping", mapping);
    assertThat(analysed.status()).as(analysed.err()).isZero();

    String data = folder.resolve("data").toString();
    Outcome imported =
        Outcome.of("import", csv, "--structures", structures, "--mapping", mapping, "--data", data);
    assertThat(imported.out()).contains("3 rows, 1 readings (1 new", "1 missing", "1 quarantined");
  }

  @Test
  void withoutItsMappingTheFileIsRefused() {
    Outcome imported =
        Outcome.of(
            "import", csv, "--structures", structures, "--data", folder.resolve("d").toString());
    assertThat(imported.status()).isEqualTo(3);
  }
}
