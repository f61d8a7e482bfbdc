package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlarmChange;
import dev.filmward.alarm.Deviation;
import dev.filmward.alarm.Excursions;
import dev.filmward.alarm.SampleVerdict;
import dev.filmward.alarm.Verdict;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.ProductionJudge.JudgedSample;
import dev.filmward.rule.Signal;
import dev.filmward.store.AlarmTable;
import dev.filmward.store.AlarmTable.HistoryEntry;
import dev.filmward.store.SignalTable;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Turns verdicts on samples into alarms that are kept, within one transaction.
 *
 * <p>A sample that is newer than all before it moves the alarms that may still go on. One that
 * comes late only adds its signals to the alarm that covers its time, or opens one that is
 * historical and over. {@link #changed} tells which alarms differ afterwards.
 */
final class AlarmKeeper {
  private static final String SYSTEM = "Filmward";

  private final AlarmTable alarms;
  private final Structure structure;
  private final Excursions excursions;
  private final Map<Long, Alarm> changed = new LinkedHashMap<>();

  AlarmKeeper(Tables tables, Structure structure) {
    this.alarms = tables.alarms();
    this.structure = structure;
    this.excursions = new Excursions(structure);
  }

  /** The alarms that differ, as they are now. */
  List<Alarm> changed() {
    return List.copyOf(changed.values());
  }

  /** Judges a sample newer than all before it. */
  void inOrder(JudgedSample sample, boolean historical) {
    SampleVerdict verdict = verdict(sample, historical);
    List<Alarm> live =
        alarms.live(sample.key().line(), structure.code(), Excursions.SAME_EXCURSION);
    for (AlarmChange change : excursions.judge(verdict, live)) {
      keep(sample, change, stateBefore(live, change));
    }
  }

  /** Judges a sample that newer ones have overtaken. */
  void late(JudgedSample sample) {
    List<Alarm> covering = alarms.covering(sample.key().line(), structure.code(), sample.takenAt());
    for (AlarmChange change : excursions.judge(verdict(sample, true), covering)) {
      Optional<Alarm> known =
          covering.stream().filter(alarm -> alarm.id() == change.alarm().id()).findFirst();
      if (known.isPresent()) {
        addSignals(sample, known.get(), change.signalling());
      } else {
        Instant over = sample.takenAt();
        keep(sample, new AlarmChange(change.alarm().over(over), change.signalling()), "");
      }
    }
  }

  private static SampleVerdict verdict(JudgedSample sample, boolean historical) {
    return new SampleVerdict(sample.key(), sample.takenAt(), historical, sample.verdicts());
  }

  private static String stateBefore(List<Alarm> live, AlarmChange change) {
    return live.stream()
        .filter(alarm -> alarm.id() == change.alarm().id())
        .map(alarm -> alarm.state().word())
        .findFirst()
        .orElse("");
  }

  private void keep(JudgedSample sample, AlarmChange change, String before) {
    Alarm kept = alarms.save(change.alarm());
    addSignals(sample, kept, change.signalling());
    if (!before.equals(kept.state().word())) {
      String what = before.isEmpty() ? "opened" : "now " + kept.state().word();
      alarms.note(
          kept.id(),
          new HistoryEntry(sample.takenAt(), SYSTEM, what + " at sample " + sample.key().sample()));
      changed.put(kept.id(), kept);
    } else if (!change.signalling().isEmpty()) {
      changed.put(kept.id(), kept);
    }
  }

  private void addSignals(JudgedSample sample, Alarm alarm, List<Characteristic> signalling) {
    for (Verdict verdict : sample.verdicts()) {
      if (signalling.contains(verdict.characteristic())) {
        List<SignalTable.Stored> signals =
            verdict.now().stream()
                .filter(signal -> speaksOf(signal, alarm.subject().deviation()))
                .map(signal -> new SignalTable.Stored(sample.sampleId(), signal))
                .toList();
        alarms.addSignals(alarm.id(), verdict.characteristic().position(), signals);
      }
    }
  }

  private static boolean speaksOf(Signal signal, Deviation deviation) {
    return Deviation.of(signal).filter(deviation::equals).isPresent();
  }
}
