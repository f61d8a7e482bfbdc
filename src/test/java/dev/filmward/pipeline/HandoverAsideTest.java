package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.alarm.Deviation;
import dev.filmward.alarm.Hold;
import dev.filmward.alarm.HoldScope;
import dev.filmward.alarm.RollKey;
import dev.filmward.alarm.RollState;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.pipeline.Handover.Item;
import dev.filmward.pipeline.Handover.Part;
import dev.filmward.shift.Shift;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.SmallFilm;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** What was put aside is told to the next shift, from either database. It is 13:00 in the plant. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class HandoverAsideTest {
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");
  private static final RollKey ROLL = new RollKey(SmallFilm.LINE, SmallFilm.CODE, "R1");

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private TestPlant test;

  @BeforeEach
  void anAlarm() throws Exception {
    SmallFilm film = SmallFilm.withSampleAt(30, NOW);
    test = new TestPlant(database, folder, NOW);
    test.plant().learnStructures("s.yaml", SmallFilm.STRUCTURES.getBytes(StandardCharsets.UTF_8));
    test.read("baseline.csv", film.usual(0, 25));
    test.freeze(SmallFilm.LINE, SmallFilm.CODE);
    test.read("thin.csv", film.thinnerSkin(25, 27, 1));
  }

  @AfterEach
  void close() {
    test.close();
  }

  @Test
  void aShelvedAlarmIsToldWithItsEndUntilItIsOffTheShelf() {
    Hold hold = test.plant().holds().shelve(1, NOW.plusSeconds(1800), because("feeder changed"));
    test.restart();
    Item told = only(Part.SET_ASIDE);
    assertThat(told.state()).isEqualTo("shelved");
    assertThat(told.title()).contains("Layer 1").endsWith("thinner than usual");
    assertThat(told.detail()).isEqualTo("until 2026-11-20 13:30, Kim: feeder changed");
    assertThat(told.at()).contains(NOW);
    test.plant().holds().end(hold.id(), Hold.Kind.SHELVED, because("done"));
    assertThat(items(Part.SET_ASIDE, "")).isEmpty();
  }

  @Test
  void whatIsOutOfServiceIsToldWithItsLayersOnItsOwnLineOnly() {
    HoldScope scope =
        new HoldScope(
            SmallFilm.LINE,
            Optional.of(SmallFilm.CODE),
            Set.of(2, 0),
            Optional.of(Deviation.THICKER));
    test.plant().holds().takeOut(scope, because("gauge under repair"));
    Item told = only(Part.SET_ASIDE);
    assertThat(told.title()).isEqualTo("Total, Layer 2, DUO-50, thicker than usual");
    assertThat(told.state()).isEqualTo("out-of-service");
    assertThat(told.detail()).isEqualTo("Kim: gauge under repair");
    assertThat(items(Part.SET_ASIDE, SmallFilm.LINE)).containsExactly(told);
    assertThat(items(Part.SET_ASIDE, "Blown 9")).isEmpty();
  }

  @Test
  void aRollIsToldWhileItIsHeld() {
    test.plant().rolls().hold(decision(RollState.HELD, 0, "thin skin"));
    test.restart();
    Item told = only(Part.ROLLS);
    assertThat(told.title()).isEqualTo("Roll R1 of DUO-50");
    assertThat(told.state()).isEqualTo("held");
    assertThat(told.detail()).isEqualTo("Kim: thin skin");
    assertThat(items(Part.ROLLS, "Blown 9")).isEmpty();
    test.plant().rolls().dispose(decision(RollState.RELEASED, 1, "measured again"));
    assertThat(items(Part.ROLLS, "")).isEmpty();
  }

  private static RollDecision decision(RollState state, int seen, String reason) {
    return new RollDecision(Map.of(ROLL, seen), state, "Kim", reason, OptionalLong.of(1));
  }

  private static Decision because(String reason) {
    return new Decision("Kim", reason, NOW);
  }

  private Item only(Part part) {
    assertThat(items(part, "")).hasSize(1);
    return items(part, "").get(0);
  }

  private List<Item> items(Part part, String line) {
    Shift early = new ShiftDesk(test.plant()).book().at(NOW);
    return new HandoverReader(test.plant())
        .read(line, early).sections().stream()
            .filter(section -> section.part() == part)
            .findFirst()
            .orElseThrow()
            .items();
  }
}
