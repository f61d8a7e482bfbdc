package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlarmSpan;
import dev.filmward.alarm.Hold;
import dev.filmward.alarm.HoldScope;
import dev.filmward.alarm.LineMode;
import dev.filmward.alarm.LineModeChange;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.SmallFilm;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
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

/** Figures of alarms count what came before people, and nothing that was only held back. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class AlarmFiguresReaderTest {
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");
  private static final SmallFilm FILM = SmallFilm.withSampleAt(60, NOW);

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private TestPlant test;

  @BeforeEach
  void learn() throws Exception {
    test = new TestPlant(database, folder, NOW);
    test.plant().learnStructures("s.yaml", SmallFilm.STRUCTURES.getBytes(StandardCharsets.UTF_8));
    test.read("baseline.csv", FILM.usual(0, 25));
    test.freeze(SmallFilm.LINE, SmallFilm.CODE);
  }

  @AfterEach
  void close() {
    test.close();
  }

  @Test
  void anAlarmAndLaterAnotherOneOfTheSameLayerAreTwo() {
    thinTwice(() -> {});
    assertThat(announced()).isEqualTo(2);
  }

  @Test
  void whatCameWhileItsTopicWasOnTheShelfIsNotCounted() {
    thinTwice(() -> test.plant().holds().shelve(1, NOW.plusSeconds(3600), because("known")));
    assertThat(alarms()).hasSize(2);
    assertThat(announced()).isEqualTo(1);
  }

  @Test
  void whatWasSuppressedBecauseTheLineWasDownIsNotCounted() {
    say(LineMode.DOWN, FILM.takenAt(25));
    test.read("thin.csv", FILM.thinnerSkin(25, 27, 1));
    say(LineMode.RUNNING, FILM.takenAt(27));
    test.read("usual.csv", FILM.usual(27, 28));
    assertThat(alarms()).hasSize(1);
    assertThat(announced()).isZero();
  }

  @Test
  void whatIsOutOfServiceCountsFromWhenItIsPutBackAndStillGoesOn() {
    HoldScope skin =
        new HoldScope(SmallFilm.LINE, Optional.empty(), Set.of(0, 1), Optional.empty());
    Hold hold = test.plant().holds().takeOut(skin, because("gauge under repair"));
    test.read("thin.csv", FILM.thinnerSkin(25, 27, 1));
    assertThat(alarms()).hasSize(1);
    assertThat(announced()).isZero();
    test.plant().holds().end(hold.id(), Hold.Kind.OUT_OF_SERVICE, because("repaired"));
    assertThat(announced()).isEqualTo(1);
  }

  /** One gross sample, twenty usual ones, and two gross ones: the first alarm is over for good. */
  private void thinTwice(Runnable between) {
    test.read("once.csv", FILM.thinnerSkin(25, 26, 1));
    between.run();
    test.read("quiet.csv", FILM.usual(26, 50));
    test.read("again.csv", FILM.thinnerSkin(50, 52, 1));
  }

  private void say(LineMode mode, Instant since) {
    test.plant().lines().say(new LineModeChange(SmallFilm.LINE, mode, since, 0, because("said")));
  }

  private static Decision because(String reason) {
    return new Decision("Kim", reason, NOW);
  }

  private List<Alarm> alarms() {
    return test.plant().store().read(tables -> tables.alarms().newest(10));
  }

  private int announced() {
    AlarmSpan hours = new AlarmSpan(NOW.minusSeconds(7200), NOW);
    return new AlarmFiguresReader(test.plant()).read(hours, "").figures().announced();
  }
}
