package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.store.AuditEntry;
import dev.filmward.store.AuditTable;
import dev.filmward.store.FileEntry;
import dev.filmward.store.FileEntry.Arrivals;
import dev.filmward.store.FileEntry.Sender;
import dev.filmward.store.HeldRow;
import dev.filmward.store.TestDatabase;
import java.io.ByteArrayInputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** A row in quarantine is mended, submitted again, and is a reading like any other. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class MendingTest {
  private static final Instant NOW = Instant.parse("2026-11-25T08:00:00Z");
  private static final String HEADER =
      "taken_at,line,structure,roll,sample,lane,Skin [um],Core [um]\n";
  private static final String STRUCTURES =
      """
      structures:
        - code: TWO
          name: Two layers
          layers:
            - {name: Skin, role: skin, resin: LDPE, target: 20 um, lower: 10 um, upper: 30 um}
            - {name: Core, role: core, resin: LDPE, target: 40 um, lower: 30 um, upper: 50 um}
      """;
  private static final String MAPPING =
      """
      mapping: Gauge 3
      file:
        encoding: windows-1252
        separator: semicolon
        decimal: comma
        headings: [Zeit, Spur, "Außen [µm]", Mitte]
        rows_after_header: 1
        name: "{roll}_{sample}"
      columns:
        taken_at: {column: Zeit, pattern: dd.MM.yyyy HH:mm, zone: Europe/Berlin}
        line: {preamble: Anlage}
        structure: {constant: TWO}
        roll: {file: roll}
        sample: {file: sample}
        lane: Spur
      readings:
        - {column: "Außen [µm]", layer: Skin, unit: um}
        - {column: Mitte, layer: Core, unit: mm}
      """;

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private Plant plant;

  @BeforeEach
  void open() throws Exception {
    Path mappings = Files.createDirectory(folder.resolve("mappings"));
    plant =
        new Plant(
            database.open(folder),
            Clock.fixed(NOW, ZoneOffset.UTC),
            ZoneId.of("Europe/Berlin"),
            MappingBook.in(mappings));
    plant.learnStructures("two.yaml", STRUCTURES.getBytes(StandardCharsets.UTF_8));
  }

  @AfterEach
  void close() {
    plant.close();
  }

  @Test
  void aMendedRowIsAFileOfItsOwnAndTheRawTextStays() throws Exception {
    FileEntry file = read("a.csv", HEADER + row(1, "20,1", "40") + row(2, "20.2", "40.2"));
    assertThat(file.counts().quarantined()).isEqualTo(2);
    HeldRow held = open(file).get(0);

    MendReport report = mend(file, held.id(), row(1, "20.1", "40"));

    assertThat(report.still()).isEmpty();
    FileEntry mended = report.file().orElseThrow();
    assertThat(mended.name()).isEqualTo("a.csv, line 2");
    assertThat(mended.source()).isEqualTo("mended");
    assertThat(mended.counts()).isEqualTo(new FileEntry.Counts(1, 2, 0, 0, new Arrivals(2, 0, 0)));
    assertThat(readings()).containsExactly("A 1 1 20.1", "A 1 2 40.0", "A 2 1 20.2", "A 2 2 40.2");
    assertThat(open(file)).isEmpty();
    HeldRow after = plant.quarantine(file.id(), 9).rows().get(0);
    assertThat(after.row().raw()).isEqualTo(row(1, "20,1", "40").strip());
    assertThat(after.mended())
        .contains(new HeldRow.Mended(row(1, "20.1", "40").strip(), "Kim", NOW, mended.id()));
    assertThat(plant.quarantine(file.id(), 9).entry().mended()).isEqualTo(2);
  }

  @Test
  void aRowThatIsRefusedAgainStaysOpenWithTheNewReason() {
    FileEntry file = read("a.csv", HEADER + row(1, "thick", "40") + row(2, "thin", "40"));
    List<HeldRow> held = open(file);
    MendReport report =
        plant.mend(
            file.id(),
            List.of(
                new MendedText(held.get(0).id(), row(1, "-3", "40")),
                new MendedText(held.get(1).id(), row(2, "19", "40"))),
            "Kim");
    assertThat(report.mended()).isEqualTo(1);
    assertThat(report.still()).hasSize(1);
    assertThat(report.still().get(0).line()).isEqualTo(2);
    assertThat(report.still().get(0).reason()).contains("Skin [um]", "-3");
    assertThat(open(file)).extracting(HeldRow::id).containsExactly(held.get(0).id());
  }

  @Test
  void nothingIsFiledWhereEveryRowIsRefusedAgain() {
    FileEntry file = read("a.csv", HEADER + row(1, "thick", "40"));
    long id = open(file).get(0).id();
    assertThat(mend(file, id, "# no row").file()).isEmpty();
    String two = row(1, "20", "40") + row(2, "20", "40");
    assertThat(mend(file, id, two).still().get(0).reason()).contains("2 rows");
    assertThat(mend(file, id, row(1, "\"20", "40")).still()).hasSize(1);
    List<FileEntry> files = plant.store().read(tables -> tables.files().newest(9));
    assertThat(files).hasSize(1);
  }

  @Test
  void aLineWithTwoFaultsIsMendedOnceForBoth() throws Exception {
    FileEntry file = read("a.csv", HEADER + row(1, "thick", "thin"));
    List<HeldRow> held = open(file);
    assertThat(held).hasSize(2);
    MendReport report = mend(file, held.get(1).id(), row(1, "20", "-"));
    assertThat(report.file().orElseThrow().counts())
        .isEqualTo(new FileEntry.Counts(1, 1, 1, 0, new Arrivals(1, 0, 0)));
    assertThat(open(file)).isEmpty();
    assertThat(readings()).containsExactly("A 1 1 20.0");
  }

  @Test
  void mendingTwiceIsRefusedAndChangesNothing() throws Exception {
    FileEntry file = read("a.csv", HEADER + row(1, "thick", "40"));
    long id = open(file).get(0).id();
    mend(file, id, row(1, "20", "40"));
    assertThatThrownBy(() -> mend(file, id, row(1, "21", "40")))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("line 2 was mended already, by Kim")
        .hasMessageContaining("file 2");
    assertThat(readings()).containsExactly("A 1 1 20.0", "A 1 2 40.0");
  }

  @Test
  void aMappedRowIsReadWithTheHeadTheMappingAndTheNameOfItsFile() throws Exception {
    plant.mappings().keep(MAPPING.getBytes(StandardCharsets.UTF_8));
    String csv =
        "Anlage;Blown 3\n\nZeit;Spur;Außen [µm];Mitte\n;;µm;mm\n"
            + "25.11.2026 07:30;1;20,5;0,041\n25.11.2026 07:30;2;20,6;?\n";
    FileEntry file = read("gauge/R7_S9.csv", csv.getBytes(Charset.forName("windows-1252")));
    assertThat(file.counts().quarantined()).isEqualTo(1);
    Files.delete(folder.resolve("mappings/gauge-3.yaml"));

    HeldFile held = plant.openQuarantine(file.id(), 9);
    assertThat(held.reader().orElseThrow().headings())
        .containsExactly("Zeit", "Spur", "Außen [µm]", "Mitte");
    mend(file, held.rows().get(0).id(), "25.11.2026 07:30;2;20,6;0,042");

    assertThat(readings())
        .containsExactly("S9 1 1 20.5", "S9 1 2 41.0", "S9 2 1 20.6", "S9 2 2 42.0");
  }

  @Test
  void aRowThatSaysItsLaneByItsOrderCannotBeMendedByItself() throws Exception {
    String counted = MAPPING.replace("lane: Spur", "lane: {counted: rows}");
    plant.mappings().keep(counted.getBytes(StandardCharsets.UTF_8));
    String csv =
        "Anlage;Blown 3\nZeit;Spur;Außen [µm];Mitte\n;;µm;mm\n25.11.2026 07:30;1;x;0,041\n";
    FileEntry file = read("R7_S9.csv", csv.getBytes(Charset.forName("windows-1252")));
    long id = open(file).get(0).id();
    assertThatThrownBy(() -> mend(file, id, "25.11.2026 07:30;1;20;0,041"))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("order of its rows");
  }

  @Test
  void aTimeThatOnlyTheOrderOfRowsTellsIsRefusedForARowByItself() throws Exception {
    String ordered = MAPPING.replace("Europe/Berlin}", "Europe/Berlin, twice: order}");
    plant.mappings().keep(ordered.getBytes(StandardCharsets.UTF_8));
    String csv =
        "Anlage;Blown 3\nZeit;Spur;Außen [µm];Mitte\n;;µm;mm\n25.10.2026 02:30;1;x;0,041\n";
    FileEntry file = read("R7_S9.csv", csv.getBytes(Charset.forName("windows-1252")));
    long id = open(file).get(0).id();
    assertThat(mend(file, id, "25.10.2026 02:30;1;20;0,041").still()).hasSize(1);
    assertThat(mend(file, id, "25.10.2026 03:30;1;20;0,041").still()).isEmpty();
  }

  @Test
  void whatIsMendedStandsInTheAuditChain() {
    FileEntry file = read("a.csv", HEADER + row(1, "thick", "40"));
    mend(file, open(file).get(0).id(), row(1, "20", "40"));
    assertThat(newestEntry())
        .isEqualTo(
            new AuditEntry(
                NOW,
                "Kim",
                "mend",
                "file 1, a.csv",
                "as file 2\nline 2: " + row(1, "20", "40").strip()));
  }

  @Test
  void aCorrectionSaysWhoWhenAndWhy() throws Exception {
    read("a.csv", HEADER + row(1, "20", "40"));
    byte[] later = (HEADER + row(1, "20.5", "40")).getBytes(StandardCharsets.UTF_8);
    plant.read(
        new IncomingFile("b.csv", "import", () -> new ByteArrayInputStream(later))
            .from(new Sender("Jo", "gauge was set to the wrong velocity")));
    assertThat(
            lines(
                "SELECT line, structure, roll, sample, layer, lane, old_um, new_um, by_whom, why,"
                    + " corrected_at, file FROM correction_history"))
        .containsExactly(
            "L TWO R A 1 1 20.0 20.5 Jo gauge was set to the wrong velocity 1795593600000000 b.csv");
    assertThat(newestEntry())
        .isEqualTo(
            new AuditEntry(
                NOW,
                "Jo",
                "correct",
                "file 2, b.csv",
                "1 reading: gauge was set to the wrong velocity"));
  }

  private AuditEntry newestEntry() {
    List<AuditTable.Link> newest = plant.store().read(tables -> tables.audit().newest(1));
    return newest.get(0).entry();
  }

  private FileEntry read(String name, String csv) {
    return read(name, csv.getBytes(StandardCharsets.UTF_8));
  }

  private FileEntry read(String name, byte[] csv) {
    return plant.read(new IncomingFile(name, "import", () -> new ByteArrayInputStream(csv)));
  }

  private List<HeldRow> open(FileEntry file) {
    return plant.openQuarantine(file.id(), 9).rows();
  }

  private MendReport mend(FileEntry file, long row, String text) {
    return plant.mend(file.id(), List.of(new MendedText(row, text)), "Kim");
  }

  private static String row(int lane, String skin, String core) {
    return "2026-11-25T07:30:00Z,L,TWO,R,A," + lane + "," + skin + "," + core + "\n";
  }

  private List<String> readings() throws Exception {
    return lines(
        "SELECT sample, lane, layer, thickness_um FROM reading"
            + " WHERE thickness_um IS NOT NULL ORDER BY lane, layer");
  }

  private List<String> lines(String sql) throws Exception {
    List<String> lines = new ArrayList<>();
    try (Connection connection = database.plainSql(folder);
        Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      while (rows.next()) {
        List<String> cells = new ArrayList<>();
        for (int i = 1; i <= rows.getMetaData().getColumnCount(); i++) {
          cells.add(String.valueOf(rows.getObject(i)));
        }
        lines.add(String.join(" ", cells));
      }
    }
    return lines;
  }
}
