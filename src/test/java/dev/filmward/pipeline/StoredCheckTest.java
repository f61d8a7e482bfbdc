package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.pipeline.StoredCheck.Report;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.Backup;
import dev.filmward.store.StoreException;
import dev.filmward.store.StoreLook;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.SmallFilm;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is stored is copied while it is in use, and every harm done to it is found. */
class StoredCheckTest {
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");
  private static final int SAMPLES = 2_500;
  private static final SmallFilm FILM = SmallFilm.withSampleAt(SAMPLES, NOW);

  @TempDir private Path folder;
  private Path data;
  private TestPlant test;

  private void open(TestDatabase kind) throws Exception {
    data = folder.resolve("data");
    test = new TestPlant(kind, data, NOW);
    test.plant()
        .learnStructures("film.yaml", SmallFilm.STRUCTURES.getBytes(StandardCharsets.UTF_8));
    test.read("baseline.csv", FILM.usual(0, 25));
    test.freeze(SmallFilm.LINE, SmallFilm.CODE);
    test.plant()
        .store()
        .change(
            tables -> tables.audit().add(new AuditEntry(NOW, "Kim", "note", "Blown 1", "a test")));
  }

  @AfterEach
  void close() {
    test.close();
  }

  @ParameterizedTest
  @EnumSource
  void saysHowMuchItLookedAtWhileThePlantIsOpen(TestDatabase kind) throws Exception {
    open(kind);
    Report report = check(kind, data);
    assertThat(report.faults()).isEmpty();
    // 25 samples of two layers in five lanes
    assertThat(report.samples()).isEqualTo(25);
    assertThat(report.readings()).isEqualTo(250);
    assertThat(report.auditEntries()).isPositive();
  }

  @ParameterizedTest
  @EnumSource
  void aCopyMadeInTheMiddleOfAnImportIsWholeAndCanGoOn(TestDatabase kind) throws Exception {
    open(kind);
    String csv =
        FILM.usual(25, SAMPLES - 40) + body(FILM.thinnerSkin(SAMPLES - 40, SAMPLES - 20, 1));
    CompletableFuture<?> importing = CompletableFuture.runAsync(() -> test.read("all.csv", csv));
    int copies = 0;
    while (!importing.isDone() && copies < 4) {
      Path copy = folder.resolve("copy" + copies++ + ".db");
      Backup.write(data, kind.url(data), copy);
      assertThat(check(copy).faults()).isEmpty();
    }
    importing.get();
    assertThat(copies).isPositive();
    for (TestDatabase other : TestDatabase.values()) {
      Path restored = folder.resolve("restored into " + other);
      Backup.restore(folder.resolve("copy0.db"), restored, other.url(restored));
      assertThat(check(other, restored).faults()).isEmpty();
      try (TestPlant again = new TestPlant(other, restored, NOW)) {
        again.read("all.csv", csv);
        assertThat(again.picture()).isEqualTo(test.picture());
      }
    }
  }

  @ParameterizedTest
  @EnumSource
  void aCopyOfACopyIsTheSame(TestDatabase kind) throws Exception {
    open(kind);
    test.read("thin.csv", FILM.thinnerSkin(25, 60, 1) + "not a row\n");
    test.read("late.csv", FILM.usual(10, 12) + body(FILM.thinnerSkin(12, 13, 0.5)));
    Path one = folder.resolve("one.db");
    Backup.write(data, kind.url(data), one);
    Path restored = folder.resolve("restored");
    Backup.restore(one, restored, TestDatabase.POSTGRESQL.url(restored));
    Path two = folder.resolve("two.db");
    Backup.write(restored, TestDatabase.POSTGRESQL.url(restored), two);
    assertThat(rows(two)).isEqualTo(rows(one)).hasSizeGreaterThan(100);
  }

  @ParameterizedTest
  @EnumSource
  void aCopyIsNeverWrittenOverWhatIsThere(TestDatabase kind) throws Exception {
    open(kind);
    Path copy = folder.resolve("copy.db");
    Backup.write(data, kind.url(data), copy);
    assertThatThrownBy(() -> Backup.write(data, kind.url(data), copy))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThatThrownBy(() -> Backup.restore(copy, data, kind.url(data)))
        .isInstanceOf(StoreException.class)
        .hasMessageMatching(".*(has a database already|is not empty).*");
    assertThatThrownBy(
            () -> Backup.write(folder.resolve("nowhere"), Optional.empty(), folder.resolve("x.db")))
        .isInstanceOf(StoreException.class)
        .hasMessageContaining("There is no database");
    assertThat(folder.resolve("x.db")).doesNotExist();
    assertThat(folder.resolve("copy.db.part")).doesNotExist();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        // the least change of one reading
        "UPDATE sample SET um = replace(um, '19.7', '19.701') WHERE id = 3",
        "UPDATE sample SET taken_at = taken_at + 1000000000000 WHERE id = 3",
        "DELETE FROM sample WHERE id = 3",
        "DELETE FROM block",
        "UPDATE block_figures SET figures = zeroblob(length(figures)) WHERE position = 2",
        "UPDATE file SET fresh = fresh + 1",
        "UPDATE file SET quarantined = quarantined + 1",
        "UPDATE production SET samples = samples + 1",
        "DELETE FROM structures_file",
        "DROP TRIGGER audit_is_never_changed; UPDATE audit SET by_whom = 'Jo'",
      })
  void everyHarmIsFound(String harm) throws Exception {
    open(TestDatabase.SQLITE);
    test.close();
    String url = "jdbc:sqlite:" + data.resolve("filmward.db");
    try (Connection connection = DriverManager.getConnection(url);
        Statement statement = connection.createStatement()) {
      for (String sql : harm.split("; ")) {
        statement.executeUpdate(sql);
      }
    }
    List<String> faults = check(TestDatabase.SQLITE, data).faults();
    assertThat(faults).isNotEmpty();
    assertThat(faults).allMatch(fault -> fault.length() < 300);
  }

  private static String body(String csv) {
    return csv.substring(SmallFilm.HEADER.length());
  }

  /** Every row of every table, as another program would read it. */
  private static List<String> rows(Path file) throws Exception {
    List<String> rows = new ArrayList<>();
    try (Connection sql = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = sql.createStatement()) {
      List<String> tables = new ArrayList<>();
      try (ResultSet found =
          statement.executeQuery(
              "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'flyway%' AND name NOT LIKE 'sqlite%'")) {
        while (found.next()) {
          tables.add(found.getString(1));
        }
      }
      for (String table : tables) {
        try (ResultSet found = statement.executeQuery("SELECT * FROM " + table)) {
          while (found.next()) {
            rows.add(row(table, found));
          }
        }
      }
    }
    rows.sort(null);
    return rows;
  }

  private static String row(String table, ResultSet found) throws Exception {
    StringBuilder row = new StringBuilder(table);
    for (int i = 1; i <= found.getMetaData().getColumnCount(); i++) {
      Object value = found.getObject(i);
      row.append('|').append(value instanceof byte[] bytes ? Arrays.toString(bytes) : value);
    }
    return row.toString();
  }

  private static Report check(Path file) {
    try (StoreLook look = StoreLook.ofFile(file)) {
      return StoredCheck.of(look);
    }
  }

  private static Report check(TestDatabase kind, Path where) {
    try (StoreLook look = StoreLook.at(where, kind.url(where))) {
      return StoredCheck.of(look);
    }
  }
}
