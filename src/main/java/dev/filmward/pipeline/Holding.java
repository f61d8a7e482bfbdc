package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm.Arrival;
import dev.filmward.alarm.AlarmState;
import dev.filmward.alarm.Excursion;
import dev.filmward.alarm.Hold;
import dev.filmward.alarm.LineMode;
import dev.filmward.alarm.LineModeChange;
import dev.filmward.store.Tables;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What holds alarms back at a moment: shelves, what is out of service, and what lines are doing.
 * For one transaction.
 */
final class Holding {
  /** Samples older than this when they come raise no horn. Common practice, no source. */
  private static final Duration OLD_NEWS = Duration.ofHours(2);

  private final Tables tables;
  private final Instant now;
  private final Instant oldNews;
  private final List<Hold> holds;
  private final Map<String, LineMode> modes = new HashMap<>();

  Holding(Tables tables, Instant now) {
    this(tables, now, now.minus(OLD_NEWS));
  }

  private Holding(Tables tables, Instant now, Instant oldNews) {
    this.tables = tables;
    this.now = now;
    this.oldNews = oldNews;
    this.holds = tables.holds().goingOn().stream().filter(hold -> !hold.isOver(now)).toList();
  }

  Instant now() {
    return now;
  }

  /** Whether an alarm that opened then is news. */
  Arrival arrival(Instant openedAt) {
    return openedAt.isBefore(oldNews) ? Arrival.HISTORICAL : Arrival.FRESH;
  }

  /** The same, where what opened before a moment is no news either. */
  Holding oldBefore(Instant moment) {
    return moment.isAfter(oldNews) ? new Holding(tables, now, moment) : this;
  }

  /** The state in which an alarm is held back, where something holds it. */
  Optional<AlarmState> of(Excursion excursion, AlarmState before) {
    boolean asks = excursion.isActive() || before.isWaiting() || before.isHeld();
    Optional<AlarmState> byPeople = asks ? byPeople(excursion) : Optional.empty();
    return byPeople.isPresent() || !excursion.isActive() || !isSuppressed(excursion)
        ? byPeople
        : Optional.of(AlarmState.SUPPRESSED);
  }

  /** What a line is doing, as people said it; a start ends with its samples. */
  LineMode mode(String line) {
    return modes.computeIfAbsent(
        line,
        name ->
            tables
                .lineModes()
                .of(name)
                .at(now)
                .filter(change -> !hasPassed(change))
                .map(LineModeChange::mode)
                .orElse(LineMode.RUNNING));
  }

  private Optional<AlarmState> byPeople(Excursion excursion) {
    return holds.stream()
        .filter(hold -> hold.scope().covers(excursion.subject()))
        .map(hold -> hold.kind().state())
        .max(AlarmState::compareTo);
  }

  private boolean isSuppressed(Excursion excursion) {
    return excursion.mode().suppresses() || mode(excursion.subject().line()).suppresses();
  }

  private boolean hasPassed(LineModeChange change) {
    return change.mode().passes()
        && change.samples() > 0
        && tables.samples().countSince(change.line(), change.since(), change.samples())
            >= change.samples();
  }
}
