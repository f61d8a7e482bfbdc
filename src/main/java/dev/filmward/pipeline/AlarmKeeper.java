package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlarmState;
import dev.filmward.alarm.Excursion;
import dev.filmward.alarm.ExcursionStep;
import dev.filmward.alarm.Excursions;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.ProductionJudge.JudgedSample;
import dev.filmward.store.AlarmBatch;
import dev.filmward.store.AlarmTable.HistoryEntry;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Turns judged samples into alarms that are kept, within one transaction, for one production.
 *
 * <p>Begins with the alarms that may still go on at a moment, and takes the samples from then on in
 * time order.
 */
final class AlarmKeeper {
  static final String SYSTEM = "Filmward";

  private final AlarmNews news;
  private final AlarmBatch alarms;
  private final Excursions excursions;
  private final List<Alarm> current = new ArrayList<>();
  private final Map<Long, String> changed = new LinkedHashMap<>();
  private final Holding holding;

  /**
   * Begins with some alarms.
   *
   * @param news hears what becomes of alarms
   * @param going alarms that the samples to come may go on with
   */
  AlarmKeeper(AlarmNews news, Structure structure, List<Alarm> going, Holding holding) {
    this.news = news;
    this.alarms = news.tables().alarms().batch();
    this.excursions = new Excursions(structure);
    this.holding = holding;
    current.addAll(going);
  }

  /** Writes what became of the alarms, and gives the states of those that differ, by id. */
  Map<Long, String> finish() {
    alarms.write();
    return changed;
  }

  /** Takes the next sample in time order. */
  void next(JudgedSample sample) {
    List<Excursion> known = current.stream().map(Alarm::excursion).toList();
    for (ExcursionStep step : excursions.judge(sample.verdict(), known)) {
      take(sample, step);
    }
  }

  private void take(JudgedSample sample, ExcursionStep step) {
    Optional<Alarm> before = step.before().flatMap(this::alarmOf);
    Alarm now = before.map(alarm -> moved(alarm, step)).orElseGet(() -> opened(sample, step));
    String stateBefore = before.map(alarm -> alarm.state().word()).orElse("");
    Alarm kept = keep(now, stateBefore);
    news.changed(before, kept);
    before.ifPresent(current::remove);
    if (kept.excursion().course().settledAt().isEmpty()) {
      current.add(kept);
    }
    AlarmSignals.add(alarms, kept, sample, step);
    note(sample, kept, stateBefore);
  }

  private Alarm moved(Alarm alarm, ExcursionStep step) {
    return alarm.moved(step.now(), holding.of(step.now(), alarm.state()), holding.now());
  }

  private Alarm opened(JudgedSample sample, ExcursionStep step) {
    return Alarm.opened(
        step.now(),
        holding.arrival(sample.takenAt()),
        holding.of(step.now(), AlarmState.UNACKNOWLEDGED),
        holding.now());
  }

  private Optional<Alarm> alarmOf(Excursion excursion) {
    return current.stream().filter(alarm -> alarm.excursion().equals(excursion)).findFirst();
  }

  private Alarm keep(Alarm alarm, String stateBefore) {
    Alarm kept = alarms.save(alarm);
    String state = kept.state().word();
    if (!state.equals(stateBefore) || kept.excursion().isActive()) {
      changed.put(kept.id(), state);
    }
    return kept;
  }

  private void note(JudgedSample sample, Alarm alarm, String stateBefore) {
    String state = alarm.state().word();
    if (!state.equals(stateBefore)) {
      String what = stateBefore.isEmpty() ? "opened" : "now " + state;
      String where = " at sample " + sample.key().sample();
      alarms.note(alarm.id(), new HistoryEntry(sample.takenAt(), SYSTEM, what + where));
    }
  }
}
