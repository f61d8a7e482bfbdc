package dev.filmward.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.alarm.CareFigures.CauseCount;
import dev.filmward.film.Characteristic;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Figures of alarm care, by arithmetic that is written out. */
class CareFiguresTest {
  private static final Instant MONDAY = Instant.parse("2026-11-16T06:00:00Z");
  private static final Characteristic SKIN =
      new Characteristic(Characteristic.Kind.LAYER, 1, "Skin");
  private static final Characteristic CORE =
      new Characteristic(Characteristic.Kind.LAYER, 2, "Core");

  @Test
  void ofNoAlarmsThereIsNoShareAndNoTime() {
    CareFigures none = CareFigures.of(List.of(), MONDAY);
    assertThat(none.alarms()).isZero();
    assertThat(none.toAcknowledge().median()).isEmpty();
    assertThat(none.shareWithoutCause()).isEmpty();
    assertThat(none.shareRepeated()).isEmpty();
    assertThat(none.pareto()).isEmpty();
  }

  /**
   * Taken after 1, 2, 3 and 10 minutes: half-way between 2 and 3, and 9 of 10 of four is the 4th.
   */
  @Test
  void theTimeToAcknowledgeIsCountedFromTheSampleThatOpenedIt() {
    List<CareRecord> records = new ArrayList<>();
    for (int minutes : new int[] {10, 1, 3, 2}) {
      records.add(new Draft().takenAfter(Duration.ofMinutes(minutes)).record());
    }
    records.add(new Draft().record());
    CareFigures.TimeTaken taken = CareFigures.of(records, MONDAY).toAcknowledge();
    assertThat(taken.count()).isEqualTo(4);
    assertThat(taken.median()).contains(Duration.ofSeconds((2 * 60 + 3 * 60) / 2));
    assertThat(taken.ninetieth()).contains(Duration.ofMinutes(10));
    assertThat(taken.longest()).contains(Duration.ofMinutes(10));
  }

  /** Of 1 to 10 minutes the 9th is the ninetieth percentile; the longest is beyond it. */
  @Test
  void theNinetiethIsTheNearestRank() {
    List<CareRecord> records = new ArrayList<>();
    for (int minutes = 1; minutes <= 10; minutes++) {
      records.add(new Draft().takenAfter(Duration.ofMinutes(minutes)).record());
    }
    CareFigures.TimeTaken taken = CareFigures.of(records, MONDAY).toAcknowledge();
    assertThat(taken.ninetieth()).contains(Duration.ofMinutes(9));
    assertThat(taken.longest()).contains(Duration.ofMinutes(10));
  }

  @Test
  void whatCameLateDoesNotCountAsSlowness() {
    Draft late = new Draft().takenAfter(Duration.ofDays(3));
    late.historical = true;
    CareFigures figures = CareFigures.of(List.of(late.record()), MONDAY);
    assertThat(figures.alarms()).isEqualTo(1);
    assertThat(figures.toAcknowledge().count()).isZero();
  }

  @Test
  void anAlarmThatWasTakenBeforeALateSampleMovedItsOpeningTookNoTime() {
    Draft moved = new Draft().takenAfter(Duration.ofMinutes(-5));
    assertThat(CareFigures.of(List.of(moved.record()), MONDAY).toAcknowledge().median())
        .contains(Duration.ZERO);
  }

  @Test
  void theTimeToCauseIsThatOfTheFirstCauseNamed() {
    CareRecord known = new Draft().cause("screen-blinded", Duration.ofMinutes(90)).record();
    CareRecord open = new Draft().record();
    CareFigures figures = CareFigures.of(List.of(known, open), MONDAY);
    assertThat(figures.toCause().count()).isEqualTo(1);
    assertThat(figures.toCause().median()).contains(Duration.ofMinutes(90));
    assertThat(figures.unexplained()).isEqualTo(1);
  }

  /** Of four closed alarms one is "no cause found"; one that is open does not count. */
  @Test
  void theShareWithoutCauseIsOfTheClosedOnes() {
    List<CareRecord> records =
        List.of(
            new Draft().cause("no-cause-found", Duration.ZERO).close().record(),
            new Draft().cause("screen-blinded", Duration.ZERO).close().record(),
            new Draft().cause("screen-blinded", Duration.ZERO).close().record(),
            new Draft().cause("other", Duration.ZERO).close().record(),
            new Draft().cause("no-cause-found", Duration.ZERO).record());
    CareFigures figures = CareFigures.of(records, MONDAY);
    assertThat(figures.closed()).isEqualTo(4);
    assertThat(figures.shareWithoutCause().orElseThrow()).isCloseTo(1 / 4.0, within(1e-12));
  }

  /** Five explained: screen 3, then feeder and other 1 each in the order of their codes. */
  @Test
  void causesComeByHowOftenTheyWereNamedWithTheSumSoFar() {
    List<CareRecord> records = new ArrayList<>();
    for (String code :
        List.of("other", "screen-blinded", "feeder-hopper", "screen-blinded", "screen-blinded")) {
      records.add(new Draft().cause(code, Duration.ZERO).record());
    }
    records.add(new Draft().record());
    assertThat(CareFigures.of(records, MONDAY).pareto())
        .containsExactly(
            new CauseCount("screen-blinded", 3, 3 / 5.0),
            new CauseCount("feeder-hopper", 1, 4 / 5.0),
            new CauseCount("other", 1, 1.0));
  }

  @Test
  void anAlarmOfTheSameLayerInTheSameWayWithinSevenDaysIsARepeat() {
    CareRecord first = new Draft().record();
    assertThat(repeats(first, after(Duration.ofDays(7)))).isEqualTo(1);
    assertThat(repeats(first, after(Duration.ofDays(7).plusSeconds(1)))).isZero();
  }

  /** It opened nine days later, but only six after the last signal. */
  @Test
  void sevenDaysRunFromTheLastSignal() {
    Draft first = new Draft();
    first.lasted = Duration.ofDays(3);
    assertThat(repeats(first.record(), after(Duration.ofDays(9)))).isEqualTo(1);
    assertThat(repeats(first.record(), after(Duration.ofDays(11)))).isZero();
  }

  @Test
  void anotherLayerLineOrDirectionIsNoRepeat() {
    CareRecord first = new Draft().record();
    Draft core = draftAfter(Duration.ofDays(1));
    core.members = Set.of(CORE);
    assertThat(repeats(first, core.record())).isZero();
    Draft thicker = draftAfter(Duration.ofDays(1));
    thicker.deviation = Deviation.THICKER;
    assertThat(repeats(first, thicker.record())).isZero();
    Draft line = draftAfter(Duration.ofDays(1));
    line.line = "Cast 2";
    assertThat(repeats(first, line.record())).isZero();
    Draft both = draftAfter(Duration.ofDays(1));
    both.members = Set.of(SKIN, CORE);
    assertThat(repeats(first, both.record())).as("they share the skin").isEqualTo(1);
  }

  @Test
  void whatOpenedBeforeTheSpanOnlyTellsWhatCameAgain() {
    CareRecord before = new Draft().record();
    CareRecord now = after(Duration.ofDays(2));
    CareFigures figures = CareFigures.of(List.of(before, now), MONDAY.plus(Duration.ofDays(1)));
    assertThat(figures.alarms()).isEqualTo(1);
    assertThat(figures.repeats()).isEqualTo(1);
    assertThat(figures.shareRepeated().orElseThrow()).isCloseTo(1.0, within(1e-12));
  }

  private static int repeats(CareRecord... records) {
    return CareFigures.of(List.of(records), MONDAY).repeats();
  }

  private static CareRecord after(Duration time) {
    return draftAfter(time).record();
  }

  private static Draft draftAfter(Duration time) {
    Draft draft = new Draft();
    draft.openedAt = MONDAY.plus(time);
    return draft;
  }

  /** An alarm of the skin, thinner, that signalled once. */
  private static final class Draft {
    private String line = "Blown 1";
    private Deviation deviation = Deviation.THINNER;
    private Set<Characteristic> members = Set.of(SKIN);
    private boolean historical;
    private Instant openedAt = MONDAY;
    private Duration lasted = Duration.ZERO;
    private Optional<Duration> taken = Optional.empty();
    private Optional<Duration> explained = Optional.empty();
    private Optional<String> code = Optional.empty();
    private boolean closed;

    private Draft takenAfter(Duration time) {
      taken = Optional.of(time);
      return this;
    }

    private Draft cause(String named, Duration after) {
      code = Optional.of(named);
      explained = Optional.of(after);
      return this;
    }

    private Draft close() {
      closed = true;
      return this;
    }

    private CareRecord record() {
      return new CareRecord(
          new Subject(line, "DUO-50", deviation, new TreeSet<>(members)),
          historical,
          openedAt,
          openedAt.plus(lasted),
          taken.map(openedAt::plus),
          explained.map(openedAt::plus),
          code,
          closed);
    }
  }
}
