package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.Deviation;
import dev.filmward.alarm.ExcursionStep;
import dev.filmward.alarm.Verdict;
import dev.filmward.pipeline.ProductionJudge.JudgedSample;
import dev.filmward.rule.Signal;
import dev.filmward.store.AlarmBatch;
import dev.filmward.store.SignalTable;
import java.util.List;

/** Notes which signals are behind an alarm. */
final class AlarmSignals {
  private AlarmSignals() {}

  static void add(AlarmBatch alarms, Alarm alarm, JudgedSample sample, ExcursionStep step) {
    for (Verdict verdict : sample.verdicts()) {
      if (step.signalling().contains(verdict.characteristic())) {
        List<SignalTable.Stored> signals =
            verdict.heard().now().stream()
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
