package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.pipeline.StoredCheck.Report;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.Backup;
import dev.filmward.store.StoreException;
import dev.filmward.store.StoreLook;
import dev.filmward.web.SmallFilm;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is stored is copied while it is in use, and every harm done to it is found. */
class StoredCheckTest {
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");
  private static final int SAMPLES = 4_000;
  private static final SmallFilm FILM = SmallFilm.withSampleAt(SAMPLES, NOW);

  @TempDir private Path folder;
  private Path data;
  private TestPlant test;

  @BeforeEach
  void open() throws Exception {
    data = folder.resolve("data");
    test = new TestPlant(data, NOW);
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

  @Test
  void saysHowMuchItLookedAtWhileThePlantIsOpen() {
    Report report = check(data);
    assertThat(report.faults()).isEmpty();
    // 25 samples of two layers in five lanes
    assertThat(report.samples()).isEqualTo(25);
    assertThat(report.readings()).isEqualTo(250);
    assertThat(report.auditEntries()).isPositive();
  }

  @Test
  void aCopyMadeInTheMiddleOfAnImportIsWholeAndCanGoOn() throws Exception {
    String csv = FILM.thinnerSkin(25, SAMPLES, 1);
    CompletableFuture<?> importing = CompletableFuture.runAsync(() -> test.read("all.csv", csv));
    int copies = 0;
    while (!importing.isDone() && copies < 4) {
      Path copy = folder.resolve("copy" + copies++ + ".db");
      Backup.write(data, copy);
      assertThat(check(copy).faults()).isEmpty();
    }
    importing.get();
    assertThat(copies).isPositive();
    Path restored = folder.resolve("restored");
    Backup.restore(folder.resolve("copy0.db"), restored);
    try (TestPlant other = new TestPlant(restored, NOW)) {
      other.read("all.csv", csv);
      assertThat(other.picture()).isEqualTo(test.picture());
    }
  }

  @Test
  void aCopyIsNeverWrittenOverAnotherNorIntoAFolderInUse() throws Exception {
    Path copy = folder.resolve("copy.db");
    Backup.write(data, copy);
    assertThatThrownBy(() -> Backup.write(data, copy))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThatThrownBy(() -> Backup.restore(copy, data))
        .isInstanceOf(StoreException.class)
        .hasMessageContaining("has a database already");
    assertThatThrownBy(() -> Backup.write(folder.resolve("nowhere"), folder.resolve("x.db")))
        .isInstanceOf(StoreException.class)
        .hasMessageContaining("There is no database");
    assertThat(Files.list(folder))
        .extracting(Path::getFileName)
        .map(Path::toString)
        .containsExactlyInAnyOrder("data", "copy.db");
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
    test.close();
    String url = "jdbc:sqlite:" + data.resolve("filmward.db");
    try (Connection connection = DriverManager.getConnection(url);
        Statement statement = connection.createStatement()) {
      for (String sql : harm.split("; ")) {
        statement.executeUpdate(sql);
      }
    }
    List<String> faults = check(data).faults();
    assertThat(faults).isNotEmpty();
    assertThat(faults).allMatch(fault -> fault.length() < 300);
  }

  private static Report check(Path where) {
    try (StoreLook look =
        Files.isDirectory(where) ? StoreLook.at(where) : StoreLook.ofFile(where)) {
      return StoredCheck.of(look);
    }
  }
}
