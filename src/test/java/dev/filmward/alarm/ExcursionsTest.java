package dev.filmward.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.alarm.Alarm.Arrival;
import dev.filmward.chart.ChartKind;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Films;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.rule.AlarmDelays;
import dev.filmward.rule.Side;
import dev.filmward.rule.Signal;
import dev.filmward.rule.SignalTest;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ExcursionsTest {
  private static final Instant START = Instant.parse("2026-11-02T06:00:00Z");
  private static final Signal BEYOND_LOW =
      new Signal(ChartKind.XBAR, SignalTest.BEYOND_LIMIT, Side.LOW);
  private static final Signal BEYOND_HIGH =
      new Signal(ChartKind.XBAR, SignalTest.BEYOND_LIMIT, Side.HIGH);
  private static final Signal RUN_LOW =
      new Signal(ChartKind.XBAR, SignalTest.EIGHT_IN_A_ROW, Side.LOW);
  private static final Signal WIDE =
      new Signal(ChartKind.RANGE, SignalTest.BEYOND_LIMIT, Side.HIGH);

  private static final double GROSS = 4.5;

  private final Structure structure = Films.fedBy("F-5", "A", "B", "C", "A", "D");
  private final Excursions excursions = new Excursions(structure);
  private final List<Alarm> alarms = new ArrayList<>();
  private int samples;

  @Test
  void aMeanJustBeyondItsLimitOpensAnAlarmAtTheSecondLook() {
    Characteristic layer = characteristic(2);
    sample(verdict(layer, -3.5, List.of(BEYOND_LOW), List.of()));
    assertThat(alarms).isEmpty();
    sample(verdict(layer, -2.5, List.of(RUN_LOW), List.of(BEYOND_LOW)));
    assertThat(alarms).hasSize(1);
  }

  @Test
  void aMeanFarBeyondItsLimitOpensAnAlarmAtOnce() {
    sample(now(2, BEYOND_LOW));
    assertThat(alarms).hasSize(1);
    assertThat(alarms.get(0).subject().deviation()).isEqualTo(Deviation.THINNER);
    assertThat(alarms.get(0).state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
    assertThat(alarms.get(0).excursion().priority()).isEqualTo(Priority.MEDIUM);
  }

  @Test
  void anotherTestOpensOneOnlyWhenItSignalsTwiceInARow() {
    sample(now(2, RUN_LOW));
    assertThat(alarms).isEmpty();
    sample(quiet(2));
    sample(now(2, RUN_LOW));
    assertThat(alarms).isEmpty();
    sample(again(2, RUN_LOW));
    assertThat(alarms).hasSize(1);
    assertThat(alarms.get(0).excursion().priority()).isEqualTo(Priority.LOW);
  }

  @Test
  void oneExcursionIsOneAlarmHoweverManyPointsSignal() {
    sample(now(2, BEYOND_LOW));
    for (int i = 0; i < 20; i++) {
      sample(again(2, BEYOND_LOW));
    }
    assertThat(alarms).hasSize(1);
  }

  @Test
  void layersOfOneExtruderAreOneAlarm() {
    sample(now(1, BEYOND_LOW));
    sample(again(1, BEYOND_LOW), now(4, BEYOND_LOW));
    assertThat(alarms).hasSize(1);
    assertThat(names(alarms.get(0))).containsExactly("Layer 1", "Layer 4");
  }

  @Test
  void layersOfDifferentExtrudersAreAlarmsOfTheirOwn() {
    sample(now(2, BEYOND_LOW), now(5, BEYOND_LOW));
    assertThat(alarms).hasSize(2);
  }

  @Test
  void thickerAndThinnerAreAlarmsOfTheirOwn() {
    sample(now(2, BEYOND_LOW), now(3, BEYOND_HIGH));
    assertThat(alarms).hasSize(2);
  }

  @Test
  void whenMostLayersMoveTogetherItIsOneAlarmOnAllLayers() {
    sample(now(2, BEYOND_LOW));
    sample(again(2, BEYOND_LOW), now(1, BEYOND_LOW), now(3, BEYOND_LOW));
    sample(
        again(1, BEYOND_LOW),
        again(2, BEYOND_LOW),
        again(3, BEYOND_LOW),
        now(4, BEYOND_LOW),
        now(5, BEYOND_LOW),
        total(BEYOND_LOW));
    assertThat(alarms).hasSize(1);
    assertThat(alarms.get(0).subject().members()).contains(Characteristic.total());
    assertThat(AlarmTitle.of(alarms.get(0).subject(), structure))
        .isEqualTo("All layers: thinner than usual");
  }

  @Test
  void rangesOfSeveralLayersAreOneAlarmAcrossTheWeb() {
    sample(now(2, WIDE), now(5, WIDE));
    sample(again(2, WIDE), again(5, WIDE));
    assertThat(alarms).hasSize(1);
    assertThat(alarms.get(0).subject().deviation()).isEqualTo(Deviation.SPREAD);
  }

  @Test
  void returnsWithTheNextValidSampleAndNotWithOneThatDidNotMeasureIt() {
    sample(now(2, BEYOND_LOW));
    sample(quiet(3));
    assertThat(alarms.get(0).state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
    sample(quiet(2));
    assertThat(alarms.get(0).state()).isEqualTo(AlarmState.RETURNED_UNACKNOWLEDGED);
    Course course = alarms.get(0).excursion().course();
    assertThat(course.returnedAt()).contains(START.plusSeconds(2 * 60));
    assertThat(course.wentBackAt()).contains(START.plusSeconds(2 * 60));
    assertThat(course.endedAt(START.plusSeconds(9 * 60)).wentBackAt())
        .as("it was quiet before its line went on to something else")
        .contains(START.plusSeconds(2 * 60));
  }

  @Test
  void whatOnlyEndsBecauseTheLineWentOnDidNotGoBack() {
    sample(now(2, BEYOND_LOW));
    Course ended = alarms.get(0).excursion().course().endedAt(START.plusSeconds(60));
    assertThat(ended.returnedAt()).contains(START.plusSeconds(60));
    assertThat(ended.wentBackAt()).isEmpty();
  }

  @Test
  void aSignalSoonAfterBelongsToTheSameExcursionAndStaysAcknowledged() {
    sample(now(2, BEYOND_LOW));
    alarms.set(0, alarms.get(0).acknowledge(new Acknowledgement("Kim", START)));
    for (int i = 0; i < Course.SAME_EXCURSION - 1; i++) {
      sample(quiet(2));
    }
    assertThat(alarms.get(0).state()).isEqualTo(AlarmState.NORMAL);
    sample(now(2, BEYOND_LOW));
    assertThat(alarms).hasSize(1);
    assertThat(alarms.get(0).state()).isEqualTo(AlarmState.ACKNOWLEDGED);
  }

  @Test
  void aSignalAfterManyQuietSamplesIsANewAlarm() {
    sample(now(2, BEYOND_LOW));
    for (int i = 0; i < Course.SAME_EXCURSION; i++) {
      sample(quiet(2));
    }
    sample(now(2, BEYOND_LOW));
    assertThat(alarms).hasSize(2);
  }

  @Test
  void outOfSpecificationOnABarrierIsOfHighPriority() {
    sample(
        new Verdict(
            characteristic(3), -3.5, heard(List.of(BEYOND_LOW), List.of()), stakes(true, true)),
        new Verdict(
            characteristic(2), 3.5, heard(List.of(BEYOND_HIGH), List.of()), stakes(true, false)));
    assertThat(alarms.stream().map(alarm -> alarm.excursion().priority()))
        .containsExactlyInAnyOrder(Priority.HIGH, Priority.MEDIUM);
  }

  @Test
  void isClosedOnlyWhenOverSeenAndExplained() {
    sample(now(2, BEYOND_LOW));
    Alarm alarm = alarms.get(0).acknowledge(new Acknowledgement("Kim", START));
    assertThat(alarm.isClosed()).isFalse();
    Finding yet = new Finding(Finding.NOT_FOUND_YET, "watched it", "Kim", START);
    alarms.set(0, alarm.explain(yet));
    sample(quiet(2));
    assertThat(alarms.get(0).isClosed()).as("its cause is not found yet").isFalse();
    Finding found = new Finding("feeder or hopper", "cleared the throat", "Kim", START);
    assertThat(alarms.get(0).explain(found).isClosed()).isTrue();
    assertThat(alarm.explain(found).isClosed()).as("it goes on").isFalse();
  }

  private void sample(Verdict... verdicts) {
    SampleKey key = new SampleKey("Blown 1", structure.code(), "R1", "S" + samples);
    Instant takenAt = START.plus(Duration.ofMinutes(samples++));
    List<Excursion> known = alarms.stream().map(Alarm::excursion).toList();
    for (ExcursionStep step :
        excursions.judge(
            new SampleVerdict(key, takenAt, List.of(verdicts), LineMoment.RUNNING), known)) {
      if (step.before().isEmpty()) {
        alarms.add(Alarm.opened(step.now(), Arrival.FRESH, Optional.empty(), takenAt));
      } else {
        int index = known.indexOf(step.before().get());
        alarms.set(index, alarms.get(index).moved(step.now(), Optional.empty(), takenAt));
      }
    }
  }

  private Verdict now(int position, Signal signal) {
    return verdict(characteristic(position), GROSS, List.of(signal), List.of());
  }

  private Verdict again(int position, Signal signal) {
    return verdict(characteristic(position), GROSS, List.of(signal), List.of(signal));
  }

  private Verdict quiet(int position) {
    return verdict(characteristic(position), GROSS, List.of(), List.of());
  }

  private static Verdict total(Signal signal) {
    return verdict(Characteristic.total(), GROSS, List.of(signal), List.of());
  }

  private static Verdict verdict(
      Characteristic about, double zMean, List<Signal> now, List<Signal> before) {
    return new Verdict(about, zMean, heard(now, before), stakes(false, false));
  }

  private static Heard heard(List<Signal> now, List<Signal> before) {
    return new Heard(List.of(now, before), AlarmDelays.STANDARD);
  }

  private static Stakes stakes(boolean outOfSpec, boolean critical) {
    return new Stakes(outOfSpec, critical, Optional.empty());
  }

  private Characteristic characteristic(int position) {
    return Characteristic.layer(structure.reported().get(position - 1));
  }

  private static List<String> names(Alarm alarm) {
    return alarm.subject().members().stream().map(Characteristic::name).toList();
  }
}
