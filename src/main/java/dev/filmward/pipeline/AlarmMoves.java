package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.store.AlarmTable.HistoryEntry;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Moves the alarms of a line after people said what is held back. Stateless. */
final class AlarmMoves {
  private AlarmMoves() {}

  /** The alarms that are in another state now, to be told of after the commit. */
  static List<PlantEvent> refresh(AlarmNews news, String line, Decision why) {
    Tables tables = news.tables();
    Instant now = why.at();
    Holding holding = new Holding(tables, now);
    List<PlantEvent> events = new ArrayList<>();
    for (Alarm alarm : tables.alarms().movable(line)) {
      Alarm moved =
          alarm.moved(alarm.excursion(), holding.of(alarm.excursion(), alarm.state()), now);
      if (moved.state() != alarm.state()) {
        tables.alarms().save(moved);
        news.changed(Optional.of(alarm), moved);
        String what = "now " + moved.state().word() + ": " + why.reason();
        tables.alarms().note(moved.id(), new HistoryEntry(now, why.author(), what));
        events.add(new PlantEvent.AlarmChanged(moved.id(), line, moved.state().word()));
      }
    }
    news.write();
    return events;
  }
}
