package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.CareFigures;
import dev.filmward.alarm.DoneCheck;
import dev.filmward.alarm.RollKey;
import dev.filmward.alarm.RollState;
import dev.filmward.store.AlarmTable.HistoryEntry;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.SmallFilm;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Readings are put right, so that an alarm has no signals any more: who touched it finds it still.
 */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class TouchedAlarmTest {
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");
  private static final SmallFilm FILM = SmallFilm.withSampleAt(30, NOW);

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private TestPlant test;
  private Plant plant;

  @BeforeEach
  void anAlarm() throws Exception {
    test = new TestPlant(database, folder, NOW);
    plant = test.plant();
    plant.learnStructures("film.yaml", SmallFilm.STRUCTURES.getBytes(StandardCharsets.UTF_8));
    test.read("baseline.csv", FILM.usual(0, 25));
    test.freeze(SmallFilm.LINE, SmallFilm.CODE);
    test.read("thin.csv", FILM.thinnerSkin(25, 26, 1));
  }

  @AfterEach
  void stop() {
    test.close();
  }

  @Test
  void untouchedItIsForgotten() {
    test.read("corrected.csv", FILM.usual(25, 26));
    assertThat(kept()).isEmpty();
  }

  @Test
  void withACommentItStays() {
    staysAfter(desk -> desk.comment(1, "Kim", "gauge was dirty"));
  }

  @Test
  void handedOnItStays() {
    staysAfter(desk -> desk.handOn(1, new HandingOn("Lee", "", "", "Kim")));
  }

  @Test
  void withACheckDoneItStays() {
    String check = "Read the same spot on the gauge again";
    staysAfter(
        desk -> desk.check(1, new DoneCheck(check, DoneCheck.Outcome.FOUND, "", "Kim", NOW)));
  }

  @Test
  void withARollHeldForItItStays() {
    RollKey roll = new RollKey(SmallFilm.LINE, SmallFilm.CODE, "R1");
    staysAfter(
        desk ->
            plant
                .rolls()
                .hold(
                    new RollDecision(
                        Map.of(roll, 0), RollState.HELD, "Kim", "thin", OptionalLong.of(1))));
  }

  private void staysAfter(Consumer<AlarmDesk> touch) {
    touch.accept(plant.alarmDesk());
    test.read("corrected.csv", FILM.usual(25, 26));
    List<HistoryEntry> history = plant.store().read(tables -> tables.alarms().history(1));
    assertThat(history.get(history.size() - 1).what()).startsWith("its signals are gone");
    assertThat(kept()).isPresent();
  }

  private Optional<Alarm> kept() {
    return plant.store().read(tables -> tables.alarms().find(1));
  }

  /** The clock stands at 12:00 and sample 25 was taken five minutes before. */
  @Test
  void itsCareIsCounted() {
    plant.acknowledge(1, "Kim");
    plant.alarmDesk().explain(1, new Explanation("not-found-yet", "", "watched", "Kim"));
    plant.alarmDesk().explain(1, new Explanation("resin-lot", "", "told them", "Kim"));
    CareFigures figures = plant.alarmDesk().figures(NOW.minus(Duration.ofDays(1)));
    assertThat(figures.alarms()).isEqualTo(1);
    assertThat(figures.toAcknowledge().median()).contains(Duration.ofMinutes(5));
    assertThat(figures.toCause().median()).contains(Duration.ofMinutes(5));
    assertThat(figures.closed()).as("it goes on").isZero();
    assertThat(figures.pareto().get(0).code()).isEqualTo("resin-lot");
  }
}
