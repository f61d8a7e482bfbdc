package dev.filmward.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.alarm.Alarm.Arrival;
import dev.filmward.film.Characteristic;
import dev.filmward.film.SampleKey;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class AlarmTest {
  private static final Instant START = Instant.parse("2026-11-02T06:00:00Z");
  private static final Instant LATER = START.plusSeconds(3600);
  private static final Acknowledgement KIM = new Acknowledgement("Kim", START);
  private static final Optional<AlarmState> SHELVED = Optional.of(AlarmState.SHELVED);
  private static final Optional<AlarmState> FREE = Optional.empty();

  private final Excursion active = excursion(LineMode.RUNNING);

  @Test
  void whatIsHeldBackAndGoesOnSoundsAgainWhenItIsLetGoWhoeverHadTakenIt() {
    Alarm taken = opened(FREE).acknowledge(KIM);
    Alarm shelved = taken.moved(active, SHELVED, START);
    assertThat(shelved.state()).isEqualTo(AlarmState.SHELVED);
    Alarm back = shelved.moved(active, FREE, LATER);
    assertThat(back.state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
    assertThat(back.acknowledgement()).isEmpty();
    assertThat(back.shownAt()).contains(LATER);
  }

  @Test
  void whatIsOverWhenItIsLetGoAsksNobodyForAnAcknowledgement() {
    Alarm shelved = opened(FREE).moved(active, SHELVED, START);
    Alarm back = shelved.moved(active.endedAt(LATER), FREE, LATER);
    assertThat(back.state()).isEqualTo(AlarmState.NORMAL);
    assertThat(back.isClosed()).as("people had seen it: it wants a cause").isFalse();
  }

  @Test
  void whatWasNeverMoreThanHeldBackIsClosedWhenItIsOver() {
    Alarm held = opened(SHELVED);
    assertThat(held.shownAt()).isEmpty();
    assertThat(held.moved(active.endedAt(LATER), FREE, LATER).isClosed()).isTrue();
  }

  @Test
  void whatWasOverWhileHeldBackAndSignalsAgainComesBeforePeopleAndWantsACause() {
    Alarm quiet = opened(SHELVED).moved(active.endedAt(START), FREE, START);
    Alarm again = quiet.moved(active, FREE, LATER);
    assertThat(again.state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
    assertThat(again.shownAt()).contains(LATER);
    Alarm over = again.acknowledge(KIM).moved(active.endedAt(LATER), FREE, LATER);
    assertThat(over.state()).isEqualTo(AlarmState.NORMAL);
    assertThat(over.isClosed()).isFalse();
  }

  @Test
  void isTakenByOnePersonAndTheNextIsToldByWhom() {
    Alarm taken = opened(FREE).acknowledge(KIM);
    assertThatThrownBy(() -> taken.acknowledge(new Acknowledgement("Sam", LATER)))
        .isInstanceOf(AlreadyTakenException.class)
        .hasMessageContaining("Kim");
  }

  @Test
  void whatIsHeldBackCannotBeTaken() {
    assertThatIllegalStateException()
        .isThrownBy(() -> opened(SHELVED).acknowledge(KIM))
        .withMessageContaining("shelved");
  }

  @Test
  void onceMoreWithTheSameChangesNothing() {
    Alarm taken = opened(FREE).acknowledge(KIM);
    assertThat(taken.moved(active, FREE, LATER)).isEqualTo(taken);
    Alarm held = opened(SHELVED);
    assertThat(held.moved(active, SHELVED, LATER)).isEqualTo(held);
    Alarm over = taken.moved(active.endedAt(LATER), FREE, LATER);
    assertThat(over.moved(over.excursion(), FREE, LATER)).isEqualTo(over);
  }

  @Test
  void workedOutAfterwardsItStandsAsIfItHadBeenFollowed() {
    Excursion overWhileDown = excursion(LineMode.DOWN).endedAt(LATER);
    Alarm alarm = Alarm.opened(overWhileDown, Arrival.HISTORICAL, FREE, LATER);
    assertThat(alarm.state()).isEqualTo(AlarmState.NORMAL);
    assertThat(alarm.isClosed()).isTrue();
    Alarm followed =
        Alarm.opened(
                excursion(LineMode.DOWN),
                Arrival.HISTORICAL,
                Optional.of(AlarmState.SUPPRESSED),
                START)
            .moved(overWhileDown, FREE, LATER);
    assertThat(followed).isEqualTo(alarm);
  }

  private Alarm opened(Optional<AlarmState> held) {
    return Alarm.opened(active, Arrival.FRESH, held, START);
  }

  private static Excursion excursion(LineMode mode) {
    SampleKey first = new SampleKey("Blown 1", "F-5", "R1", "S1");
    return new Excursion(
        Subject.of(first, Deviation.THINNER, Characteristic.total()),
        Priority.LOW,
        false,
        Course.opened(first, START),
        mode,
        !mode.suppresses(),
        Optional.empty());
  }
}
