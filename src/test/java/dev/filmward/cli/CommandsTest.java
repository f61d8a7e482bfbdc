package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.store.Store;
import dev.filmward.web.SmallFilm;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Exit status, standard output and standard error of the commands. */
class CommandsTest {
  private static final SmallFilm FILM =
      SmallFilm.withSampleAt(0, Instant.parse("2026-11-20T06:00:00Z"));

  @TempDir private Path folder;
  private Path data;
  private Path csv;
  private Path structures;

  @BeforeEach
  void writeFiles() throws Exception {
    data = folder.resolve("data");
    csv = Files.writeString(folder.resolve("readings.csv"), FILM.usual(0, 25));
    structures = Files.writeString(folder.resolve("film.yaml"), SmallFilm.STRUCTURES);
  }

  @Test
  void helpNamesEveryCommand() {
    Outcome help = Outcome.of("--help");
    assertThat(help.status()).isZero();
    assertThat(help.out()).contains("demo", "serve", "preview", "analyse", "import");
    assertThat(help.err()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"demo", "serve", "preview", "analyse", "import"})
  void everyCommandHasHelp(String command) {
    Outcome help = Outcome.of(command, "--help");
    assertThat(help.status()).isZero();
    assertThat(help.out()).contains("Usage: filmward " + command);
  }

  @Test
  void tellsItsVersion() {
    Outcome version = Outcome.of("--version");
    assertThat(version.status()).isZero();
    assertThat(version.out()).startsWith("Filmward ");
  }

  @ParameterizedTest(name = "filmward {0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          ''                                | command
          anneal                            | anneal
          analyse --colour a.csv            | --colour
          analyse                           | FILE
          analyse --format xml a.csv        | xml
          analyse --zone Mars/Olympus a.csv | Mars/Olympus
          import --format csv a.csv         | csv
          import                            | FILE
          preview                           | FILE
          serve --port many                 | many
          serve --port 70000                | 70000
          serve --port -1                   | -1
          demo --interval x                 | x
          """)
  void wrongUseIsTwoAndSaysWhatIsWrong(String line, String what) {
    Outcome outcome = Outcome.of(line.isEmpty() ? new String[0] : line.split(" +"));
    assertThat(outcome.status()).isEqualTo(2);
    assertThat(outcome.out()).isEmpty();
    assertThat(outcome.err()).contains(what).doesNotContain("Exception");
  }

  @ParameterizedTest
  @ValueSource(strings = {"analyse", "import", "preview"})
  void aFileThatIsMissingIsThreeAndNamed(String command) {
    Outcome outcome = Outcome.of(command, "--structures", structures.toString(), "gone.csv");
    assertThat(outcome.status()).isEqualTo(3);
    assertThat(outcome.err()).contains("gone.csv").doesNotContain("Exception");
  }

  @ParameterizedTest
  @ValueSource(strings = {"analyse", "preview"})
  void structuresThatAreMissingAreThreeAndNamed(String command) {
    Outcome outcome = Outcome.of(command, "--structures", "gone.yaml", csv.toString());
    assertThat(outcome.status()).isEqualTo(3);
    assertThat(outcome.err()).contains("gone.yaml");
  }

  @Test
  void faultyStructuresAreThreeWithFileAndLine() throws Exception {
    Files.writeString(structures, SmallFilm.STRUCTURES.replace("role: skin", "role: coat"));
    Outcome outcome = Outcome.of("analyse", "--structures", structures.toString(), csv.toString());
    assertThat(outcome.status()).isEqualTo(3);
    assertThat(outcome.err()).contains("film.yaml", "line 6", "coat");
    assertThat(outcome.out()).isEmpty();
  }

  @Test
  void analyseWithoutStructuresSaysHowToNameThem() {
    Outcome outcome = Outcome.of("analyse", csv.toString());
    assertThat(outcome.status()).isEqualTo(2);
    assertThat(outcome.err()).contains("--structures FILE");
  }

  @Test
  void structuresBesideTheReadingsNeedNoNaming() throws Exception {
    Files.copy(structures, folder.resolve("structures.yaml"));
    Outcome outcome = Outcome.of("analyse", csv.toString());
    assertThat(outcome.status()).isZero();
    assertThat(outcome.out()).contains("25", "Skin", "Seal", "not a safety interlock");
  }

  @Test
  void aTableWithoutTheColumnsNeededIsRefused() throws Exception {
    Path letter = Files.writeString(folder.resolve("letter.csv"), "Dear colleague,\nnothing\n");
    Outcome outcome =
        Outcome.of("analyse", "--structures", structures.toString(), letter.toString());
    assertThat(outcome.status()).isEqualTo(3);
    assertThat(outcome.err()).contains("letter.csv");
  }

  @ParameterizedTest
  @ValueSource(strings = {"text", "json", "csv"})
  void theSameInputGivesTheSameBytes(String format) {
    String[] command = {
      "analyse", "--structures", structures.toString(), "--format", format, csv.toString()
    };
    Outcome first = Outcome.of(command);
    assertThat(first.status()).isZero();
    assertThat(first.out()).isNotEmpty();
    assertThat(Outcome.of(command)).isEqualTo(first);
  }

  @Test
  void strictRefusesWhatHasAQuarantinedRow() throws Exception {
    Files.writeString(csv, FILM.usual(0, 25).replaceFirst("20\\.300", "thick"));
    String[] command = {"analyse", "--structures", structures.toString(), csv.toString()};
    Outcome lenient = Outcome.of(command);
    assertThat(lenient.status()).isZero();
    assertThat(lenient.err()).contains("readings.csv, line 5 (layer_1_um)", "thick");
    String[] strict = {
      "analyse", "--strict", "--structures", structures.toString(), csv.toString()
    };
    Outcome refused = Outcome.of(strict);
    assertThat(refused.status()).isEqualTo(3);
    assertThat(refused.out()).isEqualTo(lenient.out());
  }

  @Test
  void whatAFileSaysCannotSteerATerminal() throws Exception {
    Files.writeString(csv, FILM.usual(0, 1).replaceFirst("20\\.300", "\u001b[2Jgone"));
    Outcome outcome = Outcome.of("analyse", "--structures", structures.toString(), csv.toString());
    assertThat(outcome.err()).contains("[2Jgone").doesNotContain("\u001b");
  }

  @Test
  void previewShowsHowAFileWouldBeRead() {
    Outcome outcome = Outcome.of("preview", "--structures", structures.toString(), csv.toString());
    assertThat(outcome.status()).isZero();
    assertThat(outcome.out()).contains("S00000", "20.1", "0 quarantined");
  }

  @Test
  void aDataFolderInUseIsOneAndSaysSo() {
    try (Store held = Store.open(data)) {
      Outcome outcome =
          Outcome.of("import", "--data", data.toString(), csv.toString(), "--format", "json");
      assertThat(outcome.status()).isEqualTo(1);
      assertThat(outcome.out()).isEmpty();
      assertThat(outcome.err().lines()).hasSize(1);
      assertThat(outcome.err()).contains("in use by another Filmward", "--data");
      assertThat(held).isNotNull();
    }
  }

  @Test
  void aDataFolderThatCannotBeIsOne() {
    Outcome outcome = Outcome.of("import", "--data", csv.toString(), csv.toString());
    assertThat(outcome.status()).isEqualTo(1);
    assertThat(outcome.err()).contains(csv.toString()).doesNotContain("Exception:");
  }

  @Test
  void aPortInUseIsOneAndNamed() throws Exception {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      String port = String.valueOf(taken.getLocalPort());
      Outcome outcome = Outcome.of("serve", "--data", data.toString(), "--port", port);
      assertThat(outcome.status()).isEqualTo(1);
      assertThat(outcome.out()).isEmpty();
      assertThat(outcome.err()).contains(port).doesNotContain("Exception");
    }
    Store.open(data).close();
  }
}
