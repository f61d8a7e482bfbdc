package dev.filmward.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** What was read is current until a write to a table that it was read from has returned. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class WatchedTest {
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private Store store;

  @BeforeEach
  void open() {
    store = database.open(folder);
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void aWriteToTheTableEndsIt() {
    Watched<List<FileEntry>> files = watched();
    assertThat(files.isCurrent()).isTrue();
    aFile();
    assertThat(files.isCurrent()).isFalse();
    assertThat(watched().isCurrent()).isTrue();
  }

  @Test
  void aWriteToAnotherTableDoesNot() {
    Watched<List<FileEntry>> files = watched();
    store.change(tables -> tables.sessions().clear(NOW, NOW));
    assertThat(files.isCurrent()).isTrue();
  }

  @Test
  void readingDoesNot() {
    Watched<List<FileEntry>> files = watched();
    watched();
    store.change(tables -> tables.files().newest(1));
    assertThat(files.isCurrent()).isTrue();
  }

  @Test
  void duringAWriteItIsWhatEverybodyElseStillReads() {
    Watched<List<FileEntry>> before = watched();
    store.change(
        tables -> {
          tables.files().begin("f", "watch", NOW);
          assertThat(before.isCurrent()).isTrue();
        });
    assertThat(before.isCurrent()).isFalse();
  }

  @Test
  void whatIsReadDuringAWriteIsNotTakenForWhatItLeaves() {
    Watched<?>[] during = new Watched<?>[1];
    store.change(
        tables -> {
          tables.files().begin("f", "watch", NOW);
          during[0] = watched();
        });
    assertThat(during[0].isCurrent()).isFalse();
  }

  /** It may have been kept where the connection was lost; asking again costs little. */
  @Test
  void aWriteThatFailsEndsItToo() {
    Watched<List<FileEntry>> files = watched();
    assertThatThrownBy(
            () ->
                store.change(
                    tables -> {
                      tables.files().begin("f", "watch", NOW);
                      throw new IllegalStateException("stopped");
                    }))
        .isInstanceOf(IllegalStateException.class);
    assertThat(files.isCurrent()).isFalse();
  }

  @Test
  void rowsThatNeverChangeMayBeLeftOut() {
    Watched<List<FileEntry>> files =
        store.watch(Set.of("file"), tables -> tables.files().newest(10));
    aFile();
    assertThat(files.isCurrent()).isTrue();
  }

  /** In PostgreSQL a write has a ticket, which is a statement too. */
  @Test
  void eachStatementAndEachTransactionIsCounted() {
    int ticket = database == TestDatabase.SQLITE ? 0 : 1;
    StoreTally before = store.tally();
    watched();
    assertThat(store.tally().since(before)).isEqualTo(new StoreTally(1, 0));
    aFile();
    assertThat(store.tally().since(before)).isEqualTo(new StoreTally(2 + ticket, 1));
  }

  private Watched<List<FileEntry>> watched() {
    return store.watch(tables -> tables.files().newest(10));
  }

  private void aFile() {
    store.change(tables -> tables.files().begin("f", "watch", NOW));
  }
}
