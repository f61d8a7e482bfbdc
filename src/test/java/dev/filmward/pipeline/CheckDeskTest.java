package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.gauge.Gauge;
import dev.filmward.gauge.calibration.CheckReading;
import dev.filmward.gauge.calibration.CheckStandard;
import dev.filmward.gauge.calibration.GaugeUse;
import dev.filmward.gauge.calibration.ReferencePiece;
import dev.filmward.gauge.calibration.Scaling.Word;
import dev.filmward.pipeline.CheckDesk.Doubt;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.SmallFilm;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** A failed check makes samples doubtful, and a person says what becomes of them. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class CheckDeskTest {
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");

  /** A sample a minute, number 99 now. */
  private static final SmallFilm FILM = SmallFilm.withSampleAt(99, NOW);

  private static final Word WORD = new Word("Kim", "each shift", NOW);

  @Parameter private TestDatabase kind;
  @TempDir private Path folder;
  private TestPlant test;
  private CheckDesk desk;

  @BeforeEach
  void open() throws Exception {
    test = new TestPlant(kind, folder, NOW);
    test.plant()
        .learnStructures("film.yaml", SmallFilm.STRUCTURES.getBytes(StandardCharsets.UTF_8));
    test.read("film.csv", FILM.usual(0, 100));
    test.plant().gauges().keep(new Gauge("G-1", 50, 0.6), WORD);
    test.plant().gauges().use(new GaugeUse(SmallFilm.LINE, "G-1", FILM.takenAt(0), WORD));
    desk = test.plant().gaugeChecks();
    ReferencePiece film = new ReferencePiece("CS-50", 50, 0.2, 2, "LDPE", "contact");
    desk.keep(new CheckStandard(0, "G-1", film, OptionalDouble.of(0.1), WORD));
  }

  @AfterEach
  void close() {
    test.close();
  }

  @Test
  void samplesBetweenTheGoodChecksAroundAFailedOneAreDoubtful() {
    check(20, 50.1);
    check(60, 51.0);
    check(80, 49.9);
    Doubt doubt = desk.read().doubts().get(0);
    assertThat(doubt.after()).contains(FILM.takenAt(20).plusSeconds(30));
    assertThat(doubt.before()).contains(FILM.takenAt(80).plusSeconds(30));
    assertThat(doubt.samples())
        .as("samples 21 to 80")
        .containsExactly(Map.entry(SmallFilm.LINE, 60L));
    assertThat(doubt.covers(SmallFilm.LINE, FILM.takenAt(21))).isTrue();
    assertThat(doubt.covers(SmallFilm.LINE, FILM.takenAt(20))).isFalse();
    assertThat(doubt.covers("another line", FILM.takenAt(30))).isFalse();
  }

  @Test
  void withoutAGoodCheckAroundItAllAreDoubtful() {
    check(60, 51.0);
    Doubt doubt = desk.read().doubts().get(0);
    assertThat(doubt.after()).isEmpty();
    assertThat(doubt.before()).isEmpty();
    assertThat(doubt.samples()).containsEntry(SmallFilm.LINE, 100L);
  }

  @Test
  void nothingIsDeletedAndAPersonDecidesWithAReason() {
    List<String> before = test.picture();
    check(20, 50.1);
    check(60, 51.0);
    long failed = desk.read().doubts().get(0).failed().id();
    desk.decide(failed, "keep", new Word("Alex", "the film of the standard was creased", NOW));
    assertThat(test.picture()).isEqualTo(before);
    assertThat(desk.read().doubts().get(0).verdict())
        .hasValueSatisfying(
            verdict -> {
              assertThat(verdict.verdict()).isEqualTo("keep");
              assertThat(verdict.word().by()).isEqualTo("Alex");
            });
    long good = desk.read().standards().get(0).readings().get(0).id();
    assertThatThrownBy(() -> desk.decide(good, "keep", WORD))
        .isInstanceOf(NoSuchElementException.class)
        .hasMessageContaining("no failed check");
    assertThatThrownBy(() -> desk.decide(failed, "delete", WORD))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void whatIsLeftOutIsNotChartedUntilItIsToBeKept() {
    check(20, 50.1);
    check(60, 51.0);
    check(80, 49.9);
    long failed = desk.read().doubts().get(0).failed().id();
    assertThat(charted()).isEqualTo(100);
    desk.decide(failed, "leave-out", new Word("Alex", "the probe was loose", NOW));
    assertThat(charted()).as("100 less samples 21 to 80").isEqualTo(40);
    desk.decide(failed, "keep", new Word("Alex", "it was the standard that was loose", NOW));
    assertThat(charted()).isEqualTo(100);
  }

  private long charted() {
    return test
        .plant()
        .store()
        .read(
            tables ->
                tables
                    .figures()
                    .within(new Series(SmallFilm.LINE, SmallFilm.CODE, 0), Span.always()))
        .stream()
        .filter(row -> row.subgroup().isPresent())
        .count();
  }

  @Test
  void aCheckOfTomorrowIsRefused() {
    CheckReading tomorrow = new CheckReading(0, 1, NOW.plusSeconds(86_400), 50, "Kim", "");
    assertThatThrownBy(() -> desk.note(tomorrow)).hasMessageContaining("after it was done");
    assertThatThrownBy(() -> desk.note(new CheckReading(0, 99, NOW, 50, "Kim", "")))
        .isInstanceOf(NoSuchElementException.class);
  }

  @Test
  void whatWasDoneStandsInTheAuditChain() {
    check(20, 50.1);
    List<String> actions =
        test
            .plant()
            .store()
            .read(tables -> tables.shiftFacts(NOW.minusSeconds(1), NOW.plusSeconds(1)).audited())
            .stream()
            .map(entry -> entry.action() + " " + entry.subject())
            .toList();
    assertThat(actions).contains("gauge G-1", "check G-1, CS-50");
  }

  /** Half a minute after a sample. */
  private void check(int sample, double um) {
    desk.note(new CheckReading(0, 1, FILM.takenAt(sample).plusSeconds(30), um, "Kim", ""));
  }
}
