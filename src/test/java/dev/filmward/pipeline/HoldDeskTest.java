package dev.filmward.pipeline;

import static dev.filmward.alarm.AlarmState.ACKNOWLEDGED;
import static dev.filmward.alarm.AlarmState.NORMAL;
import static dev.filmward.alarm.AlarmState.OUT_OF_SERVICE;
import static dev.filmward.alarm.AlarmState.RETURNED_UNACKNOWLEDGED;
import static dev.filmward.alarm.AlarmState.SHELVED;
import static dev.filmward.alarm.AlarmState.SUPPRESSED;
import static dev.filmward.alarm.AlarmState.UNACKNOWLEDGED;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlarmState;
import dev.filmward.alarm.Hold;
import dev.filmward.alarm.Hold.Kind;
import dev.filmward.alarm.HoldScope;
import dev.filmward.alarm.LineMode;
import dev.filmward.alarm.LineModeChange;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.store.TestDatabase;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** One layer of 20 um, a sample a minute; 30 quiet ones are the baseline, then it may be 22 um. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class HoldDeskTest {
  @Parameter private TestDatabase database;

  private static final Instant START = Instant.parse("2026-11-20T06:00:00Z");
  private static final double USUAL = 20;
  private static final double THICK = 22;
  private static final String HEADER = "taken_at,line,structure,roll,sample,lane,layer_1_um\n";

  @TempDir private Path folder;
  private TestPlant plant;
  private int samples;

  @BeforeEach
  void learn() throws Exception {
    plant = new TestPlant(database, folder, START.plus(Duration.ofMinutes(30)));
    plant.plant().learnStructures("structures.yaml", yaml().getBytes(StandardCharsets.UTF_8));
    plant.read("baseline.csv", baseline());
    plant.freeze("Blown 1", "ONE");
  }

  @AfterEach
  void close() {
    plant.close();
  }

  @Test
  void aShelvedAlarmIsQuietUntilItsTimeIsOverAndThenSoundsAgain() {
    read("ONE", 2, THICK);
    Alarm alarm = alarm();
    plant.plant().acknowledge(alarm.id(), "Kim");
    assertThat(state()).isEqualTo(ACKNOWLEDGED);
    Instant until = now().plus(Duration.ofHours(2));
    plant.plant().holds().shelve(alarm.id(), until, because("feeder is being changed"));
    read("ONE", 3, THICK);
    assertThat(state()).isEqualTo(SHELVED);
    plant.clockAt(until.minusSeconds(1));
    plant.plant().holds().endOver();
    assertThat(state()).isEqualTo(SHELVED);
    plant.clockAt(until);
    plant.plant().holds().endOver();
    assertThat(state()).isEqualTo(UNACKNOWLEDGED);
    assertThat(alarm().acknowledgement()).isEmpty();
    assertThat(alarm().shownAt()).contains(until);
    assertThat(plant.plant().holds().goingOn()).isEmpty();
    assertThat(history()).anyMatch(entry -> entry.contains("now shelved: feeder is being changed"));
  }

  @Test
  void aShelfHoldsBackLaterAlarmsOfTheSameLayersToo() {
    read("ONE", 2, THICK);
    plant.plant().holds().shelve(alarm().id(), now().plusSeconds(3600), because("known"));
    read("ONE", 20, USUAL);
    read("ONE", 2, THICK);
    assertThat(alarms()).extracting(Alarm::state).containsExactly(SHELVED, SHELVED);
    assertThat(alarms().get(0).shownAt()).as("the later one was never shown").isEmpty();
  }

  @Test
  void aShelfIsEndedByAPersonToo() {
    read("ONE", 2, THICK);
    Hold hold = plant.plant().holds().shelve(alarm().id(), now().plusSeconds(60), because("wait"));
    plant.plant().holds().end(hold.id(), Kind.SHELVED, because("done"));
    assertThat(state()).isEqualTo(UNACKNOWLEDGED);
    assertThatIllegalStateException()
        .isThrownBy(() -> plant.plant().holds().end(hold.id(), Kind.SHELVED, because("again")))
        .withMessageContaining("Kim has ended it before");
    assertThatThrownBy(
            () -> plant.plant().holds().end(hold.id(), Kind.OUT_OF_SERVICE, because("no")))
        .isInstanceOf(NoSuchElementException.class);
  }

  @Test
  void aShelfHasAnEndWithinAShiftAndAReason() {
    read("ONE", 2, THICK);
    long id = alarm().id();
    Instant late = now().plus(Hold.LONGEST_SHELF).plusSeconds(1);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plant.plant().holds().shelve(id, late, because("long")))
        .withMessageContaining("12 hours");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plant.plant().holds().shelve(id, now(), because("none")));
    assertThatIllegalArgumentException().isThrownBy(() -> because(" "));
    assertThat(plant.plant().holds().goingOn()).isEmpty();
  }

  @Test
  void whatIsOutOfServiceSoundsNoHornUntilItIsPutBack() {
    HoldScope layer = new HoldScope("Blown 1", Optional.empty(), Set.of(0, 1), Optional.empty());
    Hold hold = plant.plant().holds().takeOut(layer, because("gauge under repair"));
    read("ONE", 3, THICK);
    assertThat(state()).isEqualTo(OUT_OF_SERVICE);
    plant.restart();
    plant.plant().holds().end(hold.id(), Kind.OUT_OF_SERVICE, because("repaired"));
    assertThat(state()).isEqualTo(UNACKNOWLEDGED);
  }

  @Test
  void anAlarmOfAnotherLayerThanTheOneOutOfServiceIsHeard() {
    HoldScope other = new HoldScope("Blown 1", Optional.empty(), Set.of(2), Optional.empty());
    plant.plant().holds().takeOut(other, because("gauge under repair"));
    read("ONE", 2, THICK);
    assertThat(state()).isEqualTo(UNACKNOWLEDGED);
  }

  @Test
  void aLineThatIsDownRaisesNoAlarmAndWhatGoesOnIsSuppressed() {
    read("ONE", 2, THICK);
    assertThat(state()).isEqualTo(UNACKNOWLEDGED);
    say(LineMode.DOWN, now(), 0);
    assertThat(state()).isEqualTo(SUPPRESSED);
    read("ONE", 1, THICK);
    assertThat(state()).isEqualTo(SUPPRESSED);
    say(LineMode.RUNNING, now(), 0);
    read("ONE", 1, THICK);
    assertThat(state()).isEqualTo(UNACKNOWLEDGED);
  }

  @Test
  void whatWasUnusualOnlyWhileTheLineStartedNeverAsksAnybody() {
    say(LineMode.STARTING, now(), 4);
    read("ONE", 4, THICK);
    assertThat(state()).isEqualTo(SUPPRESSED);
    read("ONE", 1, USUAL);
    assertThat(state()).isEqualTo(NORMAL);
    assertThat(alarm().isClosed()).isTrue();
  }

  @Test
  void aStartEndsByItselfAfterItsSamples() {
    say(LineMode.STARTING, now(), 3);
    read("ONE", 3, THICK);
    assertThat(state()).isEqualTo(SUPPRESSED);
    assertThat(plant.plant().lines().now("Blown 1")).isEqualTo(LineMode.RUNNING);
    read("ONE", 1, THICK);
    assertThat(state()).isEqualTo(UNACKNOWLEDGED);
  }

  @Test
  void theFirstSamplesAfterAnotherFilmRaiseNoAlarm() {
    read("TWO", 5, USUAL);
    read("ONE", 3, THICK);
    assertThat(state()).isEqualTo(SUPPRESSED);
    read("ONE", 1, THICK);
    assertThat(state()).isEqualTo(UNACKNOWLEDGED);
  }

  @Test
  void aPersonMaySayThatItRunsBeforeTheChangeOverIsOver() {
    read("TWO", 5, USUAL);
    say(LineMode.RUNNING, now(), 0);
    read("ONE", 2, THICK);
    assertThat(state()).isEqualTo(UNACKNOWLEDGED);
  }

  @Test
  void whatIsSaidAfterwardsWorksTheAlarmsOutAgain() {
    read("ONE", 3, THICK);
    read("ONE", 1, USUAL);
    assertThat(state()).isEqualTo(RETURNED_UNACKNOWLEDGED);
    say(LineMode.DOWN, START.plus(Duration.ofMinutes(29)).plusSeconds(30), 0);
    say(LineMode.RUNNING, START.plus(Duration.ofMinutes(32)).plusSeconds(30), 0);
    assertThat(alarms()).extracting(Alarm::excursion).noneMatch(each -> each.raised());
  }

  @Test
  void theStreamGivesWhatTheBatchGivesUnderTheSameModes() throws Exception {
    say(LineMode.STARTING, now(), 2);
    read("ONE", 4, THICK);
    read("TWO", 2, USUAL);
    read("ONE", 5, THICK);
    read("ONE", 3, USUAL);
    List<String> followed = plant.picture();
    say(LineMode.RUNNING, now(), 0);
    plant
        .plant()
        .lines()
        .say(
            new LineModeChange(
                "Blown 1",
                LineMode.STARTING,
                START.plus(Duration.ofMinutes(30)),
                2,
                because("as before")));
    assertThat(plant.picture()).isEqualTo(followed);
  }

  @Test
  void whatWillBeCannotBeSaidNorOfALineThatIsNotThere() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> say(LineMode.DOWN, now().plusSeconds(1), 0));
    assertThatThrownBy(
            () ->
                plant
                    .plant()
                    .lines()
                    .say(new LineModeChange("Cast 9", LineMode.DOWN, now(), 0, because("off"))))
        .isInstanceOf(NoSuchElementException.class)
        .hasMessageContaining("Cast 9");
  }

  @Test
  void everyActStandsInTheAuditChain() {
    read("ONE", 2, THICK);
    Hold hold = plant.plant().holds().shelve(alarm().id(), now().plusSeconds(60), because("wait"));
    plant.plant().holds().end(hold.id(), Kind.SHELVED, because("done"));
    say(LineMode.DOWN, now(), 0);
    List<String> chain =
        plant.plant().store().read(tables -> tables.audit().newest(4)).stream()
            .map(link -> link.entry().action() + ": " + link.entry().detail())
            .toList();
    assertThat(chain)
        .anyMatch(text -> text.equals("line: from running to down since " + now() + ": said"));
    assertThat(chain).anyMatch(text -> text.equals("hold: ends: done"));
    assertThat(chain).anyMatch(text -> text.startsWith("hold: begins until "));
  }

  private void say(LineMode mode, Instant since, int ends) {
    Decision said = because("said");
    plant.plant().lines().say(new LineModeChange("Blown 1", mode, since, ends, said));
  }

  private Decision because(String reason) {
    return new Decision("Kim", reason, now());
  }

  private Instant now() {
    return plant.plant().clock().instant();
  }

  private AlarmState state() {
    return alarm().state();
  }

  private Alarm alarm() {
    assertThat(alarms()).hasSize(1);
    return alarms().get(0);
  }

  private List<Alarm> alarms() {
    return plant.plant().store().read(tables -> tables.alarms().newest(10));
  }

  private List<String> history() {
    return plant.plant().store().read(tables -> tables.alarms().history(alarm().id())).stream()
        .map(entry -> entry.by() + " " + entry.what())
        .toList();
  }

  private static String yaml() {
    return "structures:\n" + film("ONE") + film("TWO");
  }

  private static String film(String code) {
    return "  - code: "
        + code
        + "\n    name: One layer\n    layers:\n      - name: Core\n"
        + "        role: core\n        target: 20 um\n";
  }

  private String baseline() {
    StringBuilder csv = new StringBuilder(HEADER);
    for (int i = 0; i < 30; i++) {
      csv.append(rows("ONE", USUAL));
    }
    return csv.toString();
  }

  /** Samples come one by one, as they are taken. */
  private void read(String structure, int count, double um) {
    for (int i = 0; i < count; i++) {
      String csv = HEADER + rows(structure, um);
      plant.clockAt(START.plus(Duration.ofMinutes(samples)));
      plant.read("s.csv", csv);
    }
  }

  private String rows(String structure, double um) {
    StringBuilder rows = new StringBuilder();
    for (int lane = 1; lane <= 4; lane++) {
      rows.append(
          String.format(
              Locale.ROOT,
              "%s,Blown 1,%s,R1,S%03d,%d,%.4f%n",
              START.plus(Duration.ofMinutes(samples)),
              structure,
              samples,
              lane,
              um + 0.1 * Math.sin(samples * 1.7 + lane * 2.3)));
    }
    samples++;
    return rows.toString();
  }
}
