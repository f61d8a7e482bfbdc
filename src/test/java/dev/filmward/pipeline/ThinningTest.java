package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.film.Structures;
import dev.filmward.pipeline.AnalysisScope.Closeness;
import dev.filmward.pipeline.Thinning.Order;
import dev.filmward.pipeline.Thinning.Outcome;
import dev.filmward.rule.TestSet;
import dev.filmward.store.Backup;
import dev.filmward.store.FileEntry;
import dev.filmward.store.StoreLook;
import dev.filmward.store.TestDatabase;
import dev.filmward.subgroup.Subgrouping;
import dev.filmward.web.SmallFilm;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Old readings go when somebody says so, and nothing that follows from them changes. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class ThinningTest {
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");

  /** Two layers in five lanes, a sample a minute; the last one now. */
  private static final int SAMPLES = 200;

  private static final int READINGS_PER_SAMPLE = 10;
  private static final SmallFilm FILM = SmallFilm.withSampleAt(SAMPLES - 1, NOW);

  /** Samples 0 to 99 are older than this. */
  private static final Order ORDER = new Order(FILM.takenAt(100), "Kim", "kept for a year");

  @Parameter private TestDatabase kind;
  @TempDir private Path folder;
  private TestPlant test;

  @BeforeEach
  void open() throws Exception {
    test = new TestPlant(kind, folder, NOW);
    test.plant()
        .learnStructures("film.yaml", SmallFilm.STRUCTURES.getBytes(StandardCharsets.UTF_8));
    test.read("baseline.csv", FILM.usual(0, 25));
    test.freeze(SmallFilm.LINE, SmallFilm.CODE);
    test.read("thin.csv", FILM.thinnerSkin(25, 40, 1));
    test.read("rest.csv", FILM.usual(40, SAMPLES));
  }

  @AfterEach
  void close() {
    test.close();
  }

  private Outcome thin() {
    return new Thinning(test.plant()).run(ORDER);
  }

  @Test
  void readingsGoAndChartsSignalsLimitsAndAlarmsStay() throws Exception {
    List<String> before = test.picture();
    assertThat(thin())
        .isEqualTo(
            new Outcome(
                100,
                100 * READINGS_PER_SAMPLE,
                Optional.of(FILM.takenAt(0)),
                Optional.of(FILM.takenAt(99))));
    assertThat(test.picture()).isEqualTo(before);
    assertThat(count("SELECT count(*) FROM reading")).isEqualTo(100 * READINGS_PER_SAMPLE);
    assertThat(count("SELECT count(*) FROM sample WHERE thinned_at = " + micros(NOW)))
        .isEqualTo(100);
    assertThat(thin().samples()).isZero();
  }

  @Test
  void aRehearsalChangesNothing() throws Exception {
    Outcome rehearsed = new Thinning(test.plant()).rehearse(ORDER);
    assertThat(rehearsed.samples()).isEqualTo(100);
    assertThat(count("SELECT count(*) FROM reading")).isEqualTo(SAMPLES * READINGS_PER_SAMPLE);
    assertThat(count("SELECT count(*) FROM audit WHERE action = 'thin'")).isZero();
    assertThat(thin()).isEqualTo(rehearsed);
  }

  @Test
  void theNewestKeepTheirReadingsForTheBoard() {
    Outcome outcome = new Thinning(test.plant()).run(new Order(NOW.plusSeconds(1), "Kim", "all"));
    assertThat(outcome.samples()).isEqualTo(SAMPLES - BoardReader.RECENT);
    assertThat(new BoardReader(test.plant()).read().lines()).hasSize(1);
  }

  @Test
  void whoAndWhyStandInTheAuditChain() throws Exception {
    thin();
    assertThat(
            count(
                "SELECT count(*) FROM audit WHERE action = 'thin' AND by_whom = 'Kim'"
                    + " AND subject = 'Blown 1, DUO-50'"
                    + " AND detail LIKE '100 samples (1000 readings), %: kept for a year'"))
        .isOne();
    assertThatThrownBy(() -> new Order(NOW, " ", "tidy"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Order(NOW, "Kim", ""))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aReadingThatComesAgainIsKnownAndItsFileSaysWhatThatMeans() {
    thin();
    List<String> before = test.picture();
    FileEntry again = test.read("again.csv", FILM.thinnerSkin(90, 110, 0.25));
    // samples 90 to 99 are thinned; of 100 to 109 the skin in five lanes differs
    assertThat(again.counts().arrivals()).isEqualTo(new FileEntry.Arrivals(0, 150, 50));
    assertThat(again.notes()).contains("100 readings").contains("cannot be compared");
    test.read("back.csv", FILM.usual(100, 110));
    assertThat(test.picture()).isEqualTo(before);
    assertThat(test.read("other.csv", FILM.usual(120, 130)).notes()).isEmpty();
  }

  @Test
  void newSamplesThatComeLateFindTheirPlaceAmongThinnedOnes() throws Exception {
    SmallFilm between =
        new SmallFilm(SmallFilm.LINE, FILM.first().plus(Duration.ofSeconds(30)), FILM.apart());
    thin();
    String late = between.thinnerSkin(50, 52, 1).replace(",R1,", ",R2,");
    test.read("late.csv", late);
    List<String> thinned = test.picture();
    test.close();
    try (TestPlant whole = new TestPlant(kind, folder.resolve("whole"), NOW)) {
      whole
          .plant()
          .learnStructures("film.yaml", SmallFilm.STRUCTURES.getBytes(StandardCharsets.UTF_8));
      whole.read("baseline.csv", FILM.usual(0, 25));
      whole.freeze(SmallFilm.LINE, SmallFilm.CODE);
      whole.read("thin.csv", FILM.thinnerSkin(25, 40, 1));
      whole.read("rest.csv", FILM.usual(40, SAMPLES));
      whole.read("late.csv", late);
      assertThat(thinned).isEqualTo(whole.picture());
    }
  }

  @Test
  void verifyCountsThemAndChecksTheRestAlsoInACopy() throws Exception {
    thin();
    StoredCheck.Report report = check(StoreLook.at(folder, kind.url(folder)));
    assertThat(report.faults()).isEmpty();
    assertThat(report.samples()).isEqualTo(SAMPLES);
    assertThat(report.thinned()).isEqualTo(100);
    assertThat(report.readings()).isEqualTo(100 * READINGS_PER_SAMPLE);
    Path copy = folder.resolve("copy.db");
    Backup.write(folder, kind.url(folder), copy);
    Path restored = folder.resolve("restored");
    Backup.restore(copy, restored, kind.url(restored));
    assertThat(check(StoreLook.at(restored, kind.url(restored)))).isEqualTo(report);
  }

  @Test
  void readingsThatAreGoneWithoutThinningAreAFault() throws Exception {
    thin();
    change("UPDATE sample SET um = '[]' WHERE sample = 'S00150'");
    assertThat(check(StoreLook.at(folder, kind.url(folder))).faults())
        .contains("1 samples lost their readings, or say so, but not by thinning");
  }

  @Test
  void analysisOfStoredDataSaysWhatItLeavesOut() {
    thin();
    Structures structures = test.plant().structures();
    AnalysisScope scope =
        new AnalysisScope(
            Subgrouping::layersAndTotal,
            takenAt -> true,
            Optional.empty(),
            Set.of(),
            TestSet.STANDARD,
            Closeness.FIGURES);
    Analysis analysis = new BatchAnalysis(structures, ZoneOffset.UTC, scope).analyse(test.plant());
    assertThat(analysis.thinned())
        .containsExactly(
            new Analysis.Thinned(
                SmallFilm.LINE, SmallFilm.CODE, 100, FILM.takenAt(0), FILM.takenAt(99)));
    assertThat(analysis.series()).allMatch(series -> series.sizes().subgroups() == 100);
  }

  @Test
  void aServerThatKeepsReadingsForSomeDaysThinsAtItsStart() throws Exception {
    test.read(
        "old.csv",
        SmallFilm.withSampleAt(400, NOW.minus(Duration.ofDays(10)))
            .usual(395, 401)
            .replace(",S004", ",T004")
            .replace(",S003", ",T003"));
    DailyThinning.start(test.plant(), 9).close();
    assertThat(count("SELECT count(*) FROM sample WHERE thinned_at IS NOT NULL")).isEqualTo(6);
    assertThat(count("SELECT count(*) FROM audit WHERE detail LIKE '%for 9 days'")).isOne();
  }

  private static StoredCheck.Report check(StoreLook opened) {
    try (StoreLook look = opened) {
      return StoredCheck.of(look);
    }
  }

  private static long micros(Instant instant) {
    return instant.getEpochSecond() * 1_000_000;
  }

  private long count(String sql) throws SQLException {
    try (Connection connection = kind.plainSql(folder);
        Statement statement = connection.createStatement();
        ResultSet found = statement.executeQuery(sql)) {
      found.next();
      return found.getLong(1);
    }
  }

  private void change(String sql) throws SQLException {
    try (Connection connection = kind.plainSql(folder);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }
}
