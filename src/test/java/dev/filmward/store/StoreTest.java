package dev.filmward.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SampleTable.Change;
import dev.filmward.store.SampleTable.Origin;
import dev.filmward.store.SampleTable.Stored;
import dev.filmward.subgroup.Subgroup;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StoreTest {
  private static final Instant NOON = Instant.parse("2026-11-02T12:00:00.123456Z");
  private static final double GAP = Double.NaN;

  @TempDir private Path folder;

  @Test
  void givesASampleBackToTheLastBitAfterARestart() {
    Sample sample =
        new Sample(
            new SampleKey("Blown 1", "LID-60", "R'1\"", "S;1"),
            NOON,
            new int[] {0, 2, 5},
            new double[][] {{0.1 + 0.2, GAP, 1e-7}, {GAP, GAP, 14.300000000000001}});
    try (Store store = Store.open(folder)) {
      store.change(tables -> insert(tables, sample));
    }
    try (Store store = Store.open(folder)) {
      Optional<Stored> found = store.read(tables -> tables.samples().find(sample.key()));
      assertThat(found.map(Stored::sample)).contains(sample);
    }
  }

  @Test
  void keepsNothingOfATransactionThatThrows() {
    try (Store store = Store.open(folder)) {
      assertThatThrownBy(
              () ->
                  store.change(
                      tables -> {
                        insert(tables, sample("S1", NOON, 14));
                        throw new IllegalArgumentException("stop");
                      }))
          .hasMessage("stop");
      List<SampleTable.Production> made = store.read(tables -> tables.samples().productions());
      assertThat(made).isEmpty();
    }
  }

  @Test
  void ordersFiguresByTimeThenRollThenSample() {
    Series series = new Series("Blown 1", "LID-60", 1);
    try (Store store = Store.open(folder)) {
      store.change(
          tables -> {
            insert(tables, sample("S3", NOON, 13));
            insert(tables, sample("S1", NOON, 11));
            insert(tables, sample("S2", NOON.minusSeconds(60), 12));
          });
      List<FigureRow> all = store.read(tables -> tables.figures().within(series, Span.always()));
      assertThat(all).extracting(row -> row.key().sample()).containsExactly("S2", "S1", "S3");
      List<FigureRow> last = store.read(tables -> tables.figures().last(series, 2));
      assertThat(last).extracting(row -> row.key().sample()).containsExactly("S1", "S3");
      List<FigureRow> before = store.read(tables -> tables.figures().before(series, NOON, 5));
      assertThat(before).extracting(row -> row.key().sample()).containsExactly("S2");
    }
  }

  @Test
  void showsEveryReadingAsARowToPlainSql() throws Exception {
    try (Store store = Store.open(folder)) {
      Sample sample =
          new Sample(
              new SampleKey("Blown 1", "LID-60", "R1", "S1"),
              NOON,
              new int[] {1, 3},
              new double[][] {{14.5, GAP}, {3.25, 3.5}});
      store.change(tables -> insert(tables, sample));
      List<String> rows = new ArrayList<>();
      try (Connection sql =
              DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("filmward.db"));
          ResultSet found =
              sql.createStatement()
                  .executeQuery(
                      "SELECT layer, lane, thickness_um FROM reading ORDER BY layer, lane")) {
        while (found.next()) {
          rows.add(found.getInt(1) + " " + found.getInt(2) + " " + found.getString(3));
        }
      }
      assertThat(rows).containsExactly("1 1 14.5", "1 3 null", "2 1 3.25", "2 3 3.5");
    }
  }

  @Test
  void refusesASecondOwnerOfTheFolderInPlainWords() {
    try (Store first = Store.open(folder)) {
      List<SampleTable.Production> made = first.read(tables -> tables.samples().productions());
      assertThat(made).isEmpty();
      assertThatThrownBy(() -> Store.open(folder))
          .isInstanceOf(StoreException.class)
          .hasMessageContaining("in use by another Filmward")
          .hasMessageContaining("--data");
    }
    Store.open(folder).close();
  }

  @Test
  void saysWhichFolderCannotBeMade() throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "not a folder");
    assertThatThrownBy(() -> Store.open(file.resolve("data")))
        .isInstanceOf(StoreException.class)
        .hasMessageContaining(file.resolve("data").toString());
  }

  @Test
  void keepsTimesFarFromNow() {
    for (String text : List.of("0001-01-01T00:00:00Z", "9999-12-31T23:59:59.999999Z")) {
      Instant instant = Instant.parse(text);
      assertThat(Times.toInstant(Times.toMicros(instant))).isEqualTo(instant);
    }
  }

  private static Sample sample(String name, Instant takenAt, double um) {
    return new Sample(
        new SampleKey("Blown 1", "LID-60", "R1", name),
        takenAt,
        new int[] {1, 2},
        new double[][] {{um, um + 1}});
  }

  private static void insert(Tables tables, Sample sample) {
    Origin origin = new Origin(tables.files().begin("a.csv", "import", NOON), NOON);
    List<Optional<Subgroup>> figures =
        Collections.nCopies(sample.layers() + 1, Optional.of(Subgroup.of(new double[] {1, 2}, 2)));
    Change change = new Change(Optional.empty(), sample, figures, List.of());
    tables.samples().write(List.of(change), origin);
  }
}
