package dev.filmward.alarm;

import static dev.filmward.alarm.AlarmEvent.ACKNOWLEDGE;
import static dev.filmward.alarm.AlarmEvent.FREE_ACTIVE;
import static dev.filmward.alarm.AlarmEvent.FREE_QUIET;
import static dev.filmward.alarm.AlarmEvent.RETURN;
import static dev.filmward.alarm.AlarmEvent.SHELVE;
import static dev.filmward.alarm.AlarmEvent.SIGNAL;
import static dev.filmward.alarm.AlarmEvent.SIGNAL_AGAIN;
import static dev.filmward.alarm.AlarmEvent.SUPPRESS;
import static dev.filmward.alarm.AlarmEvent.TAKE_OUT;
import static dev.filmward.alarm.AlarmState.ACKNOWLEDGED;
import static dev.filmward.alarm.AlarmState.NORMAL;
import static dev.filmward.alarm.AlarmState.OUT_OF_SERVICE;
import static dev.filmward.alarm.AlarmState.RETURNED_UNACKNOWLEDGED;
import static dev.filmward.alarm.AlarmState.SHELVED;
import static dev.filmward.alarm.AlarmState.SUPPRESSED;
import static dev.filmward.alarm.AlarmState.UNACKNOWLEDGED;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * The alarm state machine: from each state, what follows on each event; what is not here cannot
 * happen.
 *
 * <p>Source: IEC 62682 / ISA-18.2 (from memory). Letting go of an alarm that goes on makes it
 * unacknowledged, whoever had taken it on before. One choice of ours: an excursion that signals
 * again soon after is the same alarm, so that it stays with the person who took it on.
 */
final class AlarmTransitions {
  private static final Map<AlarmState, Map<AlarmEvent, AlarmState>> TABLE =
      new EnumMap<>(AlarmState.class);

  static {
    from(NORMAL)
        .on(SIGNAL, UNACKNOWLEDGED)
        .on(SIGNAL_AGAIN, ACKNOWLEDGED)
        .on(RETURN, NORMAL)
        .held();
    from(UNACKNOWLEDGED)
        .on(SIGNAL, UNACKNOWLEDGED)
        .on(RETURN, RETURNED_UNACKNOWLEDGED)
        .on(ACKNOWLEDGE, ACKNOWLEDGED)
        .held();
    from(ACKNOWLEDGED).on(SIGNAL_AGAIN, ACKNOWLEDGED).on(RETURN, NORMAL).held();
    from(RETURNED_UNACKNOWLEDGED)
        .on(SIGNAL, UNACKNOWLEDGED)
        .on(RETURN, RETURNED_UNACKNOWLEDGED)
        .on(ACKNOWLEDGE, NORMAL)
        .held();
    for (AlarmState held : new AlarmState[] {SHELVED, OUT_OF_SERVICE, SUPPRESSED}) {
      from(held)
          .on(SIGNAL, held)
          .on(SIGNAL_AGAIN, held)
          .on(RETURN, held)
          .on(FREE_ACTIVE, UNACKNOWLEDGED)
          .on(FREE_QUIET, NORMAL)
          .held();
    }
  }

  private AlarmTransitions() {}

  /** Empty where that cannot happen in that state. */
  static Optional<AlarmState> next(AlarmState state, AlarmEvent event) {
    return Optional.ofNullable(row(state).get(event));
  }

  private static Map<AlarmEvent, AlarmState> row(AlarmState state) {
    return TABLE.computeIfAbsent(state, missing -> new EnumMap<>(AlarmEvent.class));
  }

  private static Row from(AlarmState state) {
    return new Row(row(state));
  }

  private record Row(Map<AlarmEvent, AlarmState> cells) {
    private Row on(AlarmEvent event, AlarmState next) {
      cells.put(event, next);
      return this;
    }

    /** Whatever it is, it can be held back. */
    private void held() {
      on(SHELVE, SHELVED).on(TAKE_OUT, OUT_OF_SERVICE).on(SUPPRESS, SUPPRESSED);
    }
  }
}
