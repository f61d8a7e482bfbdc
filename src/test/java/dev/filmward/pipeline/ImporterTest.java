package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.store.FileEntry.Arrivals;
import dev.filmward.store.SampleTable.Production;
import dev.filmward.store.TestDatabase;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** What becomes of readings that come again, in parts, corrected or under odd names. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class ImporterTest {
  private static final String HEADER = "taken_at,line,structure,roll,sample,lane,layer_1_um\n";
  private static final String STRUCTURES =
      """
      structures:
        - code: ONE
          name: One layer
          layers:
            - {name: Skin, role: skin, resin: LDPE, target: 20 um, lower: 10 um, upper: 30 um}
      """;

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private TestPlant plant;

  @BeforeEach
  void open() throws Exception {
    plant = new TestPlant(database, folder, Instant.parse("2026-11-02T06:00:00Z"));
    plant.plant().learnStructures("one.yaml", STRUCTURES.getBytes(StandardCharsets.UTF_8));
  }

  @AfterEach
  void close() {
    plant.close();
  }

  private Arrivals read(String... rows) {
    return plant.read("a.csv", HEADER + String.join("\n", rows)).counts().arrivals();
  }

  private static String row(String sample, int lane, String um) {
    return "2026-11-02T05:00:00Z,L,ONE,R," + sample + "," + lane + "," + um;
  }

  @Test
  void countsNewKnownAndCorrectedReadings() throws Exception {
    assertThat(read(row("A", 1, "20.1"), row("A", 2, "20.2"))).isEqualTo(new Arrivals(2, 0, 0));
    assertThat(read(row("A", 1, "20.1"), row("A", 2, "20.3"), row("A", 3, "20")))
        .isEqualTo(new Arrivals(1, 1, 1));
    assertThat(readings()).containsExactly("A 1 20.1", "A 2 20.3", "A 3 20.0");
    assertThat(corrections()).containsExactly("1 2 20.2 20.3");
  }

  @Test
  void withinOneFileASecondValueCorrectsTheFirstAndThatOneIsKept() throws Exception {
    assertThat(read(row("A", 1, "20.1"), row("A", 1, "20.4"), row("A", 1, "20.4")))
        .isEqualTo(new Arrivals(1, 1, 1));
    assertThat(readings()).containsExactly("A 1 20.4");
    assertThat(corrections()).containsExactly("1 1 20.1 20.4");
  }

  @Test
  void aSampleWhoseNameHoldsNulIsKnownWhenItComesAgain() {
    assertThat(read(row("A\0", 1, "20.1"))).isEqualTo(new Arrivals(1, 0, 0));
    assertThat(read(row("A\0", 1, "20.1"), row("B", 1, "20"))).isEqualTo(new Arrivals(1, 1, 0));
    List<Production> made = plant.plant().store().read(tables -> tables.samples().productions());
    assertThat(made).extracting(Production::samples).containsExactly(2L);
  }

  @Test
  void looksOnlyForSamplesThatMayBeThere() {
    assertThat(read(row("B", 1, "20.1"), row("D", 1, "20"))).isEqualTo(new Arrivals(2, 0, 0));
    assertThat(read(row("A", 1, "20.1"), row("C", 1, "20"), row("E", 1, "20")))
        .isEqualTo(new Arrivals(3, 0, 0));
    assertThat(read(row("\ud83d\ude00", 1, "20"), row("\uffee", 1, "20")))
        .isEqualTo(new Arrivals(2, 0, 0));
    assertThat(read(row("\uffee", 1, "20"), row("\ud83d\ude00", 1, "20"), row("D", 1, "20")))
        .isEqualTo(new Arrivals(0, 3, 0));
  }

  private List<String> readings() throws Exception {
    return sql("SELECT sample, lane, thickness_um FROM reading ORDER BY sample, lane");
  }

  private List<String> corrections() throws Exception {
    return sql("SELECT position, lane, old_um, new_um FROM correction ORDER BY id");
  }

  private List<String> sql(String query) throws Exception {
    List<String> rows = new ArrayList<>();
    try (Connection connection = database.plainSql(folder);
        Statement statement = connection.createStatement();
        ResultSet found = statement.executeQuery(query)) {
      int columns = found.getMetaData().getColumnCount();
      while (found.next()) {
        StringBuilder row = new StringBuilder();
        for (int i = 1; i <= columns; i++) {
          Object value = found.getObject(i);
          row.append(i == 1 ? "" : " ").append(value);
        }
        rows.add(row.toString());
      }
    }
    return rows;
  }
}
