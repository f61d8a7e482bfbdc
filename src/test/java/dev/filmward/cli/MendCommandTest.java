package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.web.SmallFilm;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From rows that could not be used to readings, by the commands alone. */
class MendCommandTest {
  private static final String TIME = "2026-11-20T06:00:00Z,Blown 1,DUO-50,R1,S1,";

  @TempDir private Path folder;

  @BeforeEach
  void importAFileWithTwoBadRows() throws Exception {
    String csv =
        SmallFilm.HEADER + TIME + "1,20,30\n" + TIME + "2,thick,thin\n" + TIME + "3,20;30\n";
    Path structures = Files.writeString(folder.resolve("film.yaml"), SmallFilm.STRUCTURES);
    Path file = Files.writeString(folder.resolve("a.csv"), csv);
    Outcome imported = run("import", file.toString(), "--structures", structures.toString());
    assertThat(imported.out()).contains("4 quarantined; to mend them: filmward quarantine 1");
  }

  @Test
  void theOpenRowsArePrintedUnderTheirHeaderAndTheReasonsBeside() {
    Outcome printed = run("quarantine", "1");
    assertThat(printed.status()).isZero();
    assertThat(printed.out())
        .isEqualTo(SmallFilm.HEADER + TIME + "2,thick,thin\n" + TIME + "3,20;30\n");
    assertThat(printed.err().lines()).hasSize(3);
    assertThat(printed.err()).contains("line 3, layer_1_um", "line 3, layer_2_um", "line 4");
  }

  @Test
  void whatWasPrintedAndMendedIsRead() throws Exception {
    String edited = run("quarantine", "1").out().replace("thick,thin", "20.1,-").replace(';', ',');
    Outcome mended = mend(edited);
    assertThat(mended.err()).isEmpty();
    assertThat(mended.status()).isZero();
    assertThat(mended.out())
        .contains("a.csv, lines 3, 4: 2 rows, 3 readings (3 new, 0 known, 0 corrected), 1 missing");
    assertThat(run("quarantine", "1").err()).startsWith("No row of file 1");
    assertThat(mend(edited).err()).startsWith("No row of file 1 is open");
    assertThat(run("verify").status()).isZero();
  }

  @Test
  void aRowThatIsRefusedAgainStaysAndSaysWhy() throws Exception {
    Outcome mended = mend(run("quarantine", "1").out().replace("20;30", "20,30"));
    assertThat(mended.status()).isEqualTo(3);
    assertThat(mended.out())
        .contains("1 rows, 2 readings", "line 3 stays in quarantine: layer_1_um");
    assertThat(run("quarantine", "1").out()).isEqualTo(SmallFilm.HEADER + TIME + "2,thick,thin\n");
  }

  @Test
  void aRowLeftOutOrAnotherHeaderChangesNothing() throws Exception {
    Outcome fewer = mend(SmallFilm.HEADER + TIME + "2,20,30\n");
    assertThat(fewer.status()).isEqualTo(3);
    assertThat(fewer.err()).contains("has 1 rows, but 2 of file 1 are open", "Nothing was changed");
    Outcome other = mend(SmallFilm.HEADER.replace("lane", "Spur") + TIME + "2,20,30\n");
    assertThat(other.status()).isEqualTo(3);
    assertThat(other.err()).contains("leave these lines as they were printed");
    assertThat(run("quarantine", "1").out().lines()).hasSize(3);
  }

  @Test
  void whoMendsIsAsked() throws Exception {
    String edited = Files.writeString(folder.resolve("m.csv"), "x").toString();
    assertThat(run("mend", "1", edited).status()).isEqualTo(2);
    assertThat(run("quarantine", "7").err()).contains("There is no file 7.");
  }

  private Outcome mend(String text) throws Exception {
    Path edited = Files.writeString(folder.resolve("edited.csv"), text);
    return run("mend", "1", edited.toString(), "--by", "Kim");
  }

  private Outcome run(String... words) {
    List<String> all = new ArrayList<>(List.of(words));
    all.addAll(List.of("--data", folder.resolve("data").toString()));
    return Outcome.of(all.toArray(String[]::new));
  }
}
