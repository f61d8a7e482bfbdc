package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.alarm.Alarm;
import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.pipeline.LimitsProposal.Proposed;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.LimitsTable.Exclusion;
import dev.filmward.store.LimitsTable.VersionKey;
import dev.filmward.store.TestDatabase;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.NoSuchElementException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class LimitsDeskTest {
  @Parameter private TestDatabase database;

  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");
  private static final Instant START = Instant.parse("2026-11-20T06:00:00Z");
  private static final Series LAYER = new Series("Blown 1", "ONE", 1);
  private static final String YAML =
      "structures:\n  - code: ONE\n    name: One layer\n    layers:\n      - name: Core\n"
          + "        role: core\n        target: 20 um\n        lower: 10 um\n";

  @TempDir private Path folder;
  private TestPlant plant;
  private int samples;

  @BeforeEach
  void learn() throws Exception {
    plant = new TestPlant(database, folder, NOW);
    plant.plant().learnStructures("structures.yaml", YAML.getBytes(StandardCharsets.UTF_8));
  }

  @AfterEach
  void close() {
    plant.close();
  }

  @Test
  void proposesLimitsAndThePointsToLookAtAndChangesNothing() {
    read(30, 20);
    read(1, 26);
    LimitsProposal proposal = propose(BaselineChoice.first(31));
    Proposed layer = proposal.characteristics().get(0);
    assertThat(layer.proposed()).isPresent();
    assertThat(layer.current()).isEmpty();
    assertThat(layer.pointsToLookAt())
        .extracting(point -> point.sample().sample())
        .contains("S030");
    assertThat(versions()).isEmpty();
  }

  @Test
  void saysHowFarTheRunLengthMayBeOff() {
    read(25, 20);
    Proposed layer = propose(BaselineChoice.first(25)).characteristics().get(0);
    assertThat(layer.warnings()).anyMatch(warning -> warning.contains("From 25 samples"));
    assertThat(propose(BaselineChoice.first(5)).characteristics().get(0).warnings())
        .singleElement()
        .asString()
        .contains("too few");
  }

  @Test
  void saysWhenTheBaselineIsNotNormal() {
    read(30, 20);
    read(30, 24);
    assertThat(propose(BaselineChoice.first(60)).characteristics().get(0).warnings())
        .anyMatch(warning -> warning.contains("not normal"));
  }

  @Test
  void leavesASampleOutOnlyForACause() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Exclusion("R1", "S030", " "))
        .withMessageContaining("for what cause");
    read(30, 20);
    read(1, 26);
    Exclusion cause = new Exclusion("R1", "S030", "probe lifted off");
    BaselineChoice choice = BaselineChoice.first(31).without(List.of(cause));
    putInForce(choice, LimitsState.FROZEN);
    LimitsVersion version = versions().get(0);
    assertThat(version.baseline().subgroups()).isEqualTo(30);
    assertThat(version.baseline().excluded()).isEqualTo(1);
    List<Exclusion> kept = plant.plant().store().read(tables -> tables.limits().exclusions(key(1)));
    assertThat(kept).containsExactly(cause);
  }

  @Test
  void showsTheAlarmsOfOldAndNewLimitsSideBySide() {
    read(30, 20);
    putInForce(BaselineChoice.first(30), LimitsState.FROZEN);
    read(30, 22);
    LimitsProposal proposal = propose(BaselineChoice.last(30));
    assertThat(proposal.underCurrent())
        .extracting(alarm -> alarm.title() + " " + alarm.first().sample())
        .containsExactly("Core: thicker than usual S030");
    assertThat(proposal.underProposed())
        .extracting(alarm -> alarm.title() + " " + alarm.first().sample())
        .containsExactly("Core: thinner than usual S000");
  }

  @Test
  void laterLimitsHoldFromTheNextSampleOnAndThePastStaysJudged() {
    read(30, 20);
    putInForce(BaselineChoice.first(30), LimitsState.FROZEN);
    read(30, 22);
    List<Alarm> before = alarms();
    putInForce(BaselineChoice.last(30), LimitsState.FROZEN);
    assertThat(alarms()).isEqualTo(before).hasSize(1);
    read(20, 22);
    assertThat(alarms()).hasSize(1);
    assertThat(alarms().get(0).excursion().isActive()).isFalse();
    assertThat(versions()).extracting(LimitsVersion::version).containsExactly(1, 2);
  }

  @Test
  void underProvisionalLimitsOnlyAMeanBeyondThemRaisesAnAlarm() {
    read(30, 20);
    putInForce(BaselineChoice.first(30), LimitsState.PROVISIONAL);
    read(12, 20.25);
    assertThat(alarms()).isEmpty();
    plant.plant().moveLimits(key(1), change(LimitsState.FROZEN));
    read(2, 22);
    assertThat(alarms()).hasSize(1);
  }

  @Test
  void retiredLimitsRaiseNoAlarm() {
    read(30, 20);
    putInForce(BaselineChoice.first(30), LimitsState.FROZEN);
    plant.plant().moveLimits(key(1), new StateChange(LimitsState.RETIRED, decision(START)));
    read(5, 30);
    assertThat(alarms()).isEmpty();
  }

  @Test
  void movesOnlyAsAPersonMay() {
    read(30, 20);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> putInForce(BaselineChoice.first(30), LimitsState.SUSPECT));
    assertThatThrownBy(() -> plant.plant().moveLimits(key(1), change(LimitsState.FROZEN)))
        .isInstanceOf(NoSuchElementException.class);
    putInForce(BaselineChoice.first(30), LimitsState.FROZEN);
    plant.plant().moveLimits(key(1), change(LimitsState.SUSPECT));
    plant.plant().moveLimits(key(1), change(LimitsState.RETIRED));
    assertThatIllegalStateException()
        .isThrownBy(() -> plant.plant().moveLimits(key(1), change(LimitsState.FROZEN)))
        .withMessageContaining("retired cannot become frozen");
    assertThat(versions().get(0).changes())
        .extracting(StateChange::state)
        .containsExactly(LimitsState.FROZEN, LimitsState.SUSPECT, LimitsState.RETIRED);
  }

  @Test
  void refusesABaselineThatIsTooSmall() {
    read(10, 20);
    assertThatIllegalStateException()
        .isThrownBy(() -> putInForce(BaselineChoice.first(25), LimitsState.FROZEN))
        .withMessageContaining("at least 20");
  }

  private LimitsProposal propose(BaselineChoice choice) {
    return plant.plant().proposeLimits("Blown 1", "ONE", choice);
  }

  private void putInForce(BaselineChoice choice, LimitsState state) {
    plant.plant().putInForce("Blown 1", "ONE", choice, change(state));
  }

  private static StateChange change(LimitsState state) {
    return new StateChange(state, decision(START.minusSeconds(60)));
  }

  private static Decision decision(Instant at) {
    return new Decision("Kim", "looked at it", at);
  }

  private static VersionKey key(int version) {
    return new VersionKey("Blown 1", "ONE", version);
  }

  private List<LimitsVersion> versions() {
    return plant.plant().store().read(tables -> tables.limits().of(LAYER));
  }

  private List<Alarm> alarms() {
    return plant.plant().store().read(tables -> tables.alarms().newest(10));
  }

  /** Samples of four lanes that spread by one micrometre and alternate by a tenth. */
  private void read(int count, double um) {
    StringBuilder csv =
        new StringBuilder("taken_at,line,structure,roll,sample,lane,layer,thickness_um\n");
    for (int i = 0; i < count; i++, samples++) {
      double mean = um + (samples % 2 == 0 ? 0.1 : -0.1);
      for (int lane = 0; lane < 4; lane++) {
        csv.append(
            String.format(
                Locale.ROOT,
                "%s,Blown 1,ONE,R1,S%03d,%d,1,%.3f%n",
                START.plusSeconds(60L * samples),
                samples,
                lane,
                mean + (lane - 1.5) / 3));
      }
    }
    plant.read("readings-" + samples + ".csv", csv.toString());
  }
}
