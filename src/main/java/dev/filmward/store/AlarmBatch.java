package dev.filmward.store;

import dev.filmward.alarm.Alarm;
import dev.filmward.store.AlarmTable.HistoryEntry;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What becomes of alarms while many samples are judged in one transaction. Nothing of it but new
 * alarms is in the tables before {@link #write}: of each alarm only the last state, all signals and
 * what happened in their order. For one thread.
 */
public final class AlarmBatch {
  private final AlarmTable alarms;
  private final Map<Long, Alarm> saved = new LinkedHashMap<>();
  private final Map<Long, Alarm> last = new LinkedHashMap<>();
  private final List<AlarmTable.SignalOf> signals = new ArrayList<>();
  private final List<AlarmTable.EntryOf> history = new ArrayList<>();

  AlarmBatch(AlarmTable alarms) {
    this.alarms = alarms;
  }

  /** Notes an alarm as it is now, and gives it an id where it has none. */
  public Alarm save(Alarm alarm) {
    if (alarm.id() == 0) {
      Alarm kept = alarms.save(alarm);
      saved.put(kept.id(), kept);
      return kept;
    }
    last.put(alarm.id(), alarm);
    return alarm;
  }

  public void addSignals(long alarmId, int position, List<SignalTable.Stored> stored) {
    stored.forEach(signal -> signals.add(new AlarmTable.SignalOf(alarmId, position, signal)));
  }

  public void note(long alarmId, HistoryEntry entry) {
    history.add(new AlarmTable.EntryOf(alarmId, entry));
  }

  /** Puts all of it into the tables, and begins anew. */
  public void write() {
    alarms.update(last.values().stream().filter(alarm -> !isSaved(alarm)).toList());
    alarms.addSignals(signals);
    alarms.note(history);
    saved.putAll(last);
    last.clear();
    signals.clear();
    history.clear();
  }

  private boolean isSaved(Alarm alarm) {
    return alarm.equals(saved.get(alarm.id()));
  }
}
