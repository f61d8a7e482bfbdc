package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlarmTitle;
import dev.filmward.pipeline.Board.LineState;
import dev.filmward.shift.Shift;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.List;

/**
 * What a handover is put together from. For one transaction.
 *
 * @param line empty for all
 */
record HandoverScope(Plant plant, Tables tables, Board board, String line, Shift shift) {

  /** Whether something of a line belongs here; what is about the plant always does. */
  boolean covers(String ofLine) {
    return line.isEmpty() || ofLine.isEmpty() || line.equals(ofLine);
  }

  List<LineState> lines() {
    return board.lines().stream().filter(state -> covers(state.line())).toList();
  }

  /** Until when there can be anything to tell. */
  Instant until() {
    return board.now().isBefore(shift.to()) ? board.now() : shift.to();
  }

  /** Not closed, and opened before the shift ended. */
  List<Alarm> openAlarms() {
    return tables.alarms().open().stream()
        .filter(alarm -> covers(alarm.subject().line()))
        .filter(alarm -> alarm.excursion().course().openedAt().isBefore(shift.to()))
        .toList();
  }

  String title(Alarm alarm) {
    return plant
        .structures()
        .find(alarm.subject().structure())
        .map(structure -> AlarmTitle.of(alarm.subject(), structure))
        .orElse(alarm.subject().deviation().words());
  }
}
