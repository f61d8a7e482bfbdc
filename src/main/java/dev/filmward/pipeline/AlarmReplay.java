package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlarmState;
import dev.filmward.alarm.Excursion;
import dev.filmward.alarm.ExcursionStep;
import dev.filmward.alarm.Excursions;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.ProductionJudge.JudgedSample;
import dev.filmward.store.AlarmBatch;
import dev.filmward.store.AlarmTable;
import dev.filmward.store.AlarmTable.HistoryEntry;
import dev.filmward.store.CareTable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Works the alarms of one production out again, after samples that came late or were corrected.
 *
 * <p>Excursions are a function of the samples alone, so they become what they would have been had
 * all samples come in order. An alarm whose excursion is still there keeps its number and what
 * people did about it; one that nobody touched and that has no excursion any more is forgotten; one
 * that somebody touched stays, and says so.
 */
final class AlarmReplay {
  private final AlarmNews news;
  private final AlarmTable alarms;
  private final CareTable care;
  private final AlarmBatch batch;
  private final Excursions excursions;
  private final List<Alarm> unclaimed;
  private final Holding holding;
  private final List<Track> tracks = new ArrayList<>();
  private final Map<Long, String> changed = new LinkedHashMap<>();

  /**
   * Begins where no excursion was going on.
   *
   * @param news hears what becomes of alarms
   * @param known alarms whose excursions lie in the samples to come
   * @param holding says also which alarms that were not known are historical
   */
  AlarmReplay(AlarmNews news, Structure structure, List<Alarm> known, Holding holding) {
    this.news = news;
    this.holding = holding;
    this.alarms = news.tables().alarms();
    this.care = news.tables().care();
    this.batch = alarms.batch();
    this.excursions = new Excursions(structure);
    this.unclaimed = new ArrayList<>(known);
  }

  private record Step(JudgedSample sample, ExcursionStep step) {}

  private static final class Track {
    private final List<Step> steps = new ArrayList<>();

    private Excursion now() {
      return steps.get(steps.size() - 1).step().now();
    }
  }

  /** The states of the alarms that differ, by id. */
  Map<Long, String> run(List<JudgedSample> samples) {
    samples.forEach(this::follow);
    tracks.forEach(this::keep);
    unclaimed.forEach(this::letGo);
    batch.write();
    return changed;
  }

  private void follow(JudgedSample sample) {
    LongWork.current().goOn();
    List<Excursion> known = tracks.stream().map(Track::now).toList();
    for (ExcursionStep step : excursions.judge(sample.verdict(), known)) {
      Track track =
          step.before()
              .flatMap(
                  before -> tracks.stream().filter(each -> each.now().equals(before)).findFirst())
              .orElseGet(this::begin);
      track.steps.add(new Step(sample, step));
    }
  }

  private Track begin() {
    Track track = new Track();
    tracks.add(track);
    return track;
  }

  private void keep(Track track) {
    Excursion now = track.now();
    Optional<Alarm> known = unclaimed.stream().filter(alarm -> isSame(alarm, now)).findFirst();
    known.ifPresent(unclaimed::remove);
    Alarm kept = batch.save(known.map(alarm -> moved(alarm, now)).orElseGet(() -> opened(now)));
    news.changed(known, kept);
    alarms.clearSignals(kept.id());
    track.steps.forEach(step -> AlarmSignals.add(batch, kept, step.sample(), step.step()));
    if (!known.equals(Optional.of(kept))) {
      note(kept, known.isPresent() ? "worked out again" : "opened");
    }
  }

  private Alarm moved(Alarm alarm, Excursion now) {
    return alarm.moved(now, holding.of(now, alarm.state()), holding.now());
  }

  private Alarm opened(Excursion now) {
    return Alarm.opened(
        now,
        holding.arrival(now.course().openedAt()),
        holding.of(now, AlarmState.UNACKNOWLEDGED),
        holding.now());
  }

  private static boolean isSame(Alarm alarm, Excursion now) {
    return alarm.subject().deviation() == now.subject().deviation()
        && !Collections.disjoint(alarm.subject().members(), now.subject().members())
        && !alarm.excursion().course().openedAt().isAfter(now.course().lastSignalAt())
        && !now.course().openedAt().isAfter(alarm.excursion().course().lastSignalAt());
  }

  private void letGo(Alarm alarm) {
    if (alarm.isTouched() || care.isTouched(alarm.id())) {
      note(alarm, "its signals are gone");
    } else {
      alarms.remove(alarm.id());
      news.withdrawn(alarm);
      changed.put(alarm.id(), "withdrawn");
    }
  }

  private void note(Alarm alarm, String what) {
    String state = alarm.state().word();
    changed.put(alarm.id(), state);
    batch.note(
        alarm.id(),
        new HistoryEntry(
            alarm.excursion().course().lastSignalAt(),
            AlarmKeeper.SYSTEM,
            what + " after late or corrected readings; now " + state));
  }
}
