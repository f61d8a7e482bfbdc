package dev.filmward.store;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.CodedFinding;
import dev.filmward.alarm.Comment;
import dev.filmward.alarm.DoneCheck;
import dev.filmward.alarm.Ownership;
import dev.filmward.store.AlarmTable.AlarmSignal;
import dev.filmward.store.AlarmTable.HistoryEntry;
import dev.filmward.telling.Escalation.Raised;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/**
 * What belongs to some alarms: the signals behind them, what happened to them, what people did
 * about them. Each table is asked once for all of them. Read when it is made; unchanging.
 */
public final class AlarmDetails {
  private final Handle handle;
  private final IdLists ids;
  private final Map<Long, List<Counted>> signals;
  private final Map<Long, List<HistoryEntry>> history;
  private final Map<Long, List<CodedFinding>> findings;
  private final Map<Long, List<Comment>> comments;
  private final Map<Long, List<DoneCheck>> checks;
  private final Map<Long, List<Ownership>> owners;
  private final Map<Long, List<Raised>> raised;

  /**
   * @param mostSignals of each alarm, the newest
   */
  AlarmDetails(Handle handle, List<Alarm> alarms, int mostSignals) {
    this.handle = handle;
    this.ids = IdLists.of(alarms.stream().map(Alarm::id).toList());
    this.signals = all(newestSignals(mostSignals), Counted::read);
    this.history = all(ordered("alarm_history"), AlarmTable::historyEntry);
    this.findings = all(ordered("alarm_finding"), CareTable::finding);
    this.comments = all(ordered("alarm_comment"), CareTable::comment);
    this.checks = all(ordered("alarm_check"), CareTable::check);
    this.owners = all(ordered("alarm_owner"), CareTable::ownership);
    this.raised =
        all("SELECT * FROM telling_alarm WHERE alarm_id IN (<ids>)", TellingTable::raised);
  }

  /** A signal, and how many its alarm has. */
  private record Counted(AlarmSignal signal, long of) {
    static Counted read(ResultSet row) throws SQLException {
      return new Counted(AlarmTable.alarmSignal(row), row.getLong("signals"));
    }
  }

  private interface Reading<T> {
    T of(ResultSet row) throws SQLException;
  }

  private static String ordered(String table) {
    return "SELECT * FROM " + table + " WHERE alarm_id IN (<ids>) ORDER BY id";
  }

  private static String newestSignals(int most) {
    return "SELECT * FROM (SELECT g.*, s.roll, s.sample, s.taken_at,"
        + " count(*) OVER (PARTITION BY g.alarm_id) AS signals,"
        + " row_number() OVER (PARTITION BY g.alarm_id ORDER BY "
        + AlarmTable.NEWEST_SIGNAL_FIRST
        + ") AS place FROM alarm_signal g JOIN sample s ON s.id = g.sample_id"
        + " WHERE g.alarm_id IN (<ids>)) AS placed WHERE place <= "
        + most
        + " ORDER BY alarm_id, place";
  }

  private <T> Map<Long, List<T>> all(String sql, Reading<T> reading) {
    Map<Long, List<T>> byAlarm = new HashMap<>();
    for (List<Long> some : ids.lists()) {
      handle
          .createQuery(sql)
          .bindList("ids", some)
          .map(
              (row, context) ->
                  byAlarm
                      .computeIfAbsent(row.getLong("alarm_id"), id -> new ArrayList<>())
                      .add(reading.of(row)))
          .list();
    }
    return byAlarm;
  }

  /** The newest signals behind an alarm, newest first. */
  public List<AlarmSignal> signals(Alarm alarm) {
    return of(signals, alarm).stream().map(Counted::signal).toList();
  }

  /** How many signals are behind an alarm. */
  public long signalCount(Alarm alarm) {
    return of(signals, alarm).stream().findFirst().map(Counted::of).orElse(0L);
  }

  /** Oldest first. */
  public List<HistoryEntry> history(Alarm alarm) {
    return of(history, alarm);
  }

  /** What is found about an alarm, with its code; empty where nothing is, or it was reopened. */
  public Optional<CodedFinding> finding(Alarm alarm) {
    return alarm.finding().isEmpty() ? Optional.empty() : last(of(findings, alarm));
  }

  /** Oldest first. */
  public List<Comment> comments(Alarm alarm) {
    return of(comments, alarm);
  }

  /** Oldest first. */
  public List<DoneCheck> checks(Alarm alarm) {
    return of(checks, alarm);
  }

  /** With whom an alarm is. */
  public Optional<Ownership> owner(Alarm alarm) {
    return Ownership.of(alarm, last(of(owners, alarm)));
  }

  /** When the server raised it; empty for one that nobody could be told of. */
  public Optional<Raised> raised(Alarm alarm) {
    return last(of(raised, alarm));
  }

  private static <T> List<T> of(Map<Long, List<T>> byAlarm, Alarm alarm) {
    return byAlarm.getOrDefault(alarm.id(), List.of());
  }

  private static <T> Optional<T> last(List<T> all) {
    return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
  }
}
