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
import java.sql.ResultSet;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class StoreTest {
  @Parameter private TestDatabase database;

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
    try (Store store = database.open(folder)) {
      store.change(tables -> insert(tables, sample));
    }
    try (Store store = database.open(folder)) {
      Optional<Stored> found = store.read(tables -> tables.samples().find(sample.key()));
      assertThat(found.map(Stored::sample)).contains(sample);
    }
  }

  @Test
  void keepsNothingOfATransactionThatThrows() {
    try (Store store = database.open(folder)) {
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
    try (Store store = database.open(folder)) {
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
    try (Store store = database.open(folder)) {
      Sample sample =
          new Sample(
              new SampleKey("Blown 1", "LID-60", "R1", "S1"),
              NOON,
              new int[] {1, 3},
              new double[][] {{14.5, GAP}, {3.25, 3.5}});
      store.change(tables -> insert(tables, sample));
      List<String> rows = new ArrayList<>();
      try (Connection sql = database.plainSql(folder);
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
    try (Store first = database.open(folder)) {
      List<SampleTable.Production> made = first.read(tables -> tables.samples().productions());
      assertThat(made).isEmpty();
      assertThatThrownBy(() -> database.open(folder))
          .isInstanceOf(StoreException.class)
          .hasMessageContaining("in use by another Filmward")
          .hasMessageContaining(database == TestDatabase.SQLITE ? "--data" : "--db");
    }
    database.open(folder).close();
  }

  @Test
  void saysWhichFolderCannotBeMade() throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "not a folder");
    assertThatThrownBy(() -> Store.open(file.resolve("data")))
        .isInstanceOf(StoreException.class)
        .hasMessageContaining(file.resolve("data").toString());
  }

  /** Ten samples a block would hide what goes wrong where blocks are cut; these are hundreds. */
  @Test
  void keepsManySamplesInOrderWhateverTheOrderInWhichTheyCome() {
    long seed = new Random().nextLong();
    List<Integer> numbers = new ArrayList<>(IntStream.range(0, 700).boxed().toList());
    Collections.shuffle(numbers, new Random(seed));
    Series series = new Series("Blown 1", "LID-60", 1);
    try (Store store = database.open(folder)) {
      for (int from = 0; from < numbers.size(); from += 35) {
        List<Integer> some = numbers.subList(from, from + 35);
        store.change(
            tables ->
                some.forEach(i -> insert(tables, sample("S" + i, NOON.plusSeconds(i / 3), 14))));
      }
      List<String> inOrder =
          IntStream.range(0, 700)
              .boxed()
              .sorted(Comparator.comparing((Integer i) -> i / 3).thenComparing(i -> "S" + i))
              .map(i -> "S" + i)
              .toList();
      List<FigureRow> all = store.read(tables -> tables.figures().within(series, Span.always()));
      assertThat(all).as("seed %d", seed).extracting(row -> row.key().sample()).isEqualTo(inOrder);
      List<FigureRow> last = store.read(tables -> tables.figures().last(series, 250));
      assertThat(last).isEqualTo(all.subList(450, 700));
      List<FigureRow> first = store.read(tables -> tables.figures().first(series, 250));
      assertThat(first).isEqualTo(all.subList(0, 250));
      Span middle = new Span(NOON.plusSeconds(100), NOON.plusSeconds(109));
      List<FigureRow> within = store.read(tables -> tables.figures().within(series, middle));
      assertThat(within).isEqualTo(all.subList(300, 330));
      Instant start = middle.from();
      List<FigureRow> before = store.read(tables -> tables.figures().before(series, start, 9));
      assertThat(before).isEqualTo(all.subList(291, 300));
    }
  }

  @Test
  void keepsNulInWhatCouldNotBeUsed() {
    QuarantinedRow row = new QuarantinedRow(2, "thickness", "1\0", "no number", "a\0b", 1);
    try (Store store = database.open(folder)) {
      long file = store.write(tables -> tables.files().begin("a\0.csv", "import", NOON));
      store.change(tables -> tables.files().quarantine(file, List.of(row)));
      List<QuarantinedRow> kept = store.read(tables -> tables.files().quarantined(file, 9));
      assertThat(kept).extracting(QuarantinedRow::raw).first().asString().hasSize(3);
    }
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
