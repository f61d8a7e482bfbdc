package dev.filmward.store;

import dev.filmward.alarm.Acknowledgement;
import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.Course;
import dev.filmward.alarm.Finding;
import dev.filmward.film.Characteristic;
import dev.filmward.rule.Signal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import org.jdbi.v3.core.statement.Query;
import org.jdbi.v3.core.statement.SqlStatement;
import org.jdbi.v3.core.statement.Update;

/** Alarms, the signals behind them, and who did what about them. */
public final class AlarmTable {
  /** Says of a row what {@code !Alarm.isClosed()} says of an alarm; needs :notFoundYet. */
  static final String NOT_CLOSED =
      "NOT (state = 'normal' AND (shown_at IS NULL"
          + " OR (cause IS NOT NULL AND cause <> :notFoundYet AND action <> '')))";

  /** Of signals behind an alarm, {@code g}, with their samples, {@code s}. */
  static final String NEWEST_SIGNAL_FIRST =
      "s.taken_at DESC, s.roll DESC, s.sample DESC, g.position, g.chart, g.test";

  private final Handle handle;

  AlarmTable(Handle handle) {
    this.handle = handle;
  }

  /** A signal that belongs to an alarm. */
  public record AlarmSignal(
      int position, Signal signal, String roll, String sample, Instant takenAt) {}

  /** What happened to an alarm. */
  public record HistoryEntry(Instant at, String by, String what) {}

  /** Keeps an alarm as it is now, and gives it an id where it has none. */
  public Alarm save(Alarm alarm) {
    return alarm.id() == 0 ? insert(alarm) : update(alarm);
  }

  public Optional<Alarm> find(long id) {
    return list(handle.createQuery("SELECT * FROM alarm WHERE id = :id").bind("id", id)).stream()
        .findFirst();
  }

  /** Newest first. */
  public List<Alarm> newest(int most) {
    return list(
        handle.createQuery("SELECT * FROM alarm ORDER BY id DESC LIMIT :most").bind("most", most));
  }

  /** Those that opened at a moment or later, oldest first. */
  public List<Alarm> openedSince(Instant moment) {
    return list(
        handle
            .createQuery("SELECT * FROM alarm WHERE opened_at >= :moment ORDER BY opened_at, id")
            .bind("moment", Times.toMicros(moment)));
  }

  /** Those of a line that opened, returned or were taken at a moment or later, oldest first. */
  public List<Alarm> movedSince(String line, Instant moment) {
    return list(
        handle
            .createQuery(
                "SELECT * FROM alarm WHERE line = :line AND (opened_at >= :moment"
                    + " OR returned_at >= :moment OR acknowledged_at >= :moment)"
                    + " ORDER BY opened_at, id")
            .bind("line", line)
            .bind("moment", Times.toMicros(moment)));
  }

  /** Not closed: still going on, not seen, or without a cause or action. Newest first. */
  public List<Alarm> open() {
    return list(
        handle
            .createQuery("SELECT * FROM alarm WHERE " + NOT_CLOSED + " ORDER BY id DESC")
            .bind("notFoundYet", Finding.NOT_FOUND_YET));
  }

  /** Those of a production whose excursion may still go on, oldest first. */
  public List<Alarm> live(String line, String structure) {
    return list(
        handle
            .createQuery(
                "SELECT * FROM alarm WHERE line = :line AND structure = :structure"
                    + " AND settled_at IS NULL ORDER BY id")
            .bind("line", line)
            .bind("structure", structure));
  }

  /** Those of a line that people's words may move: live ones, and those held back. */
  public List<Alarm> movable(String line) {
    return list(
        handle
            .createQuery(
                "SELECT * FROM alarm WHERE line = :line AND (settled_at IS NULL"
                    + " OR state IN ('shelved', 'out-of-service', 'suppressed')) ORDER BY id")
            .bind("line", line));
  }

  /** Those of a line whose excursion may still go on, oldest first. */
  public List<Alarm> live(String line) {
    return list(
        handle
            .createQuery(
                "SELECT * FROM alarm WHERE line = :line AND settled_at IS NULL ORDER BY id")
            .bind("line", line));
  }

  /** Those of a production whose excursion was not over for good at a moment, oldest first. */
  public List<Alarm> unsettledAt(String line, String structure, Instant moment) {
    return list(
        handle
            .createQuery(
                "SELECT * FROM alarm WHERE line = :line AND structure = :structure"
                    + " AND (settled_at IS NULL OR settled_at >= :moment) ORDER BY opened_at, id")
            .bind("line", line)
            .bind("structure", structure)
            .bind("moment", Times.toMicros(moment)));
  }

  /** Forgets an alarm that no person has touched. */
  public void remove(long id) {
    for (String table : List.of("alarm_signal", "alarm_member", "alarm_history")) {
      handle
          .createUpdate("DELETE FROM " + table + " WHERE alarm_id = :id")
          .bind("id", id)
          .execute();
    }
    handle.createUpdate("DELETE FROM alarm WHERE id = :id").bind("id", id).execute();
  }

  /** Forgets which signals are behind an alarm. */
  public void clearSignals(long id) {
    handle.createUpdate("DELETE FROM alarm_signal WHERE alarm_id = :id").bind("id", id).execute();
  }

  /** A signal and the alarm and characteristic to which it belongs. */
  record SignalOf(long alarmId, int position, SignalTable.Stored stored) {}

  /** Something that happened, and the alarm to which it did. */
  record EntryOf(long alarmId, HistoryEntry entry) {}

  /** What is noted of alarms while many samples are judged, and written at its end. */
  public AlarmBatch batch() {
    return new AlarmBatch(this);
  }

  /** Signals that are there already stay. */
  void addSignals(List<SignalOf> signals) {
    try (RowInsert rows =
        new BatchInsert(
            handle,
            "alarm_signal",
            List.of("alarm_id", "sample_id", "position", "chart", "test", "side"),
            BatchInsert.Twice.PASSED_OVER)) {
      for (SignalOf each : signals) {
        Signal signal = each.stored.signal();
        rows.number(each.alarmId)
            .number(each.stored.sampleId())
            .number(each.position)
            .text(signal.chart().word())
            .text(signal.test().word())
            .text(signal.side().word())
            .endRow();
      }
    }
  }

  static AlarmSignal alarmSignal(ResultSet row) throws SQLException {
    return new AlarmSignal(
        row.getInt("position"),
        SignalTable.signal(row),
        row.getString("roll"),
        row.getString("sample"),
        Times.toInstant(row.getLong("taken_at")));
  }

  /** What belongs to alarms, with so many of the signals of each. */
  public AlarmDetails details(List<Alarm> alarms, int mostSignals) {
    return new AlarmDetails(handle, alarms, mostSignals);
  }

  public void note(long alarmId, HistoryEntry entry) {
    note(List.of(new EntryOf(alarmId, entry)));
  }

  void note(List<EntryOf> entries) {
    try (RowInsert rows =
        new BatchInsert(
            handle,
            "alarm_history",
            List.of("alarm_id", "at", "by_whom", "what"),
            BatchInsert.Twice.FAILS)) {
      for (EntryOf each : entries) {
        rows.number(each.alarmId)
            .number(Times.toMicros(each.entry.at()))
            .text(each.entry.by())
            .text(each.entry.what())
            .endRow();
      }
    }
  }

  public List<HistoryEntry> history(long alarmId) {
    return handle
        .createQuery("SELECT * FROM alarm_history WHERE alarm_id = :id ORDER BY id")
        .bind("id", alarmId)
        .map((row, context) -> historyEntry(row))
        .list();
  }

  static HistoryEntry historyEntry(ResultSet row) throws SQLException {
    return new HistoryEntry(
        Times.toInstant(row.getLong("at")), row.getString("by_whom"), row.getString("what"));
  }

  private Alarm insert(Alarm alarm) {
    Update update =
        handle.createUpdate(
            "INSERT INTO alarm (line, structure, deviation, state, priority, historical,"
                + " out_of_spec, roll, sample, opened_at, last_signal_at, returned_at,"
                + " quiet_samples, settled_at, acknowledged_by, acknowledged_at, cause, action,"
                + " finding_by, finding_at, shown_at, line_mode, raised,"
                + " out_of_spec_at) VALUES (:line, :structure, :deviation, :state,"
                + " :priority, :historical, :outOfSpec, :roll, :sample, :openedAt, :lastSignalAt,"
                + " :returnedAt, :quiet, :settledAt, :ackBy, :ackAt, :cause, :action, :findingBy,"
                + " :findingAt, :shownAt, :mode, :raised, :outOfSpecAt)");
    update
        .bind("line", alarm.subject().line())
        .bind("structure", alarm.subject().structure())
        .bind("deviation", alarm.subject().deviation().name())
        .bind("historical", alarm.historical() ? 1 : 0);
    long id = bindState(update, alarm).executeAndReturnGeneratedKeys("id").mapTo(Long.class).one();
    Alarm kept = alarm.withId(id);
    saveMembers(kept);
    return kept;
  }

  private Alarm update(Alarm alarm) {
    update(List.of(alarm));
    return alarm;
  }

  /** Keeps alarms that are there as they are now. */
  void update(Collection<Alarm> all) {
    if (all.isEmpty()) {
      return;
    }
    PreparedBatch batch =
        handle.prepareBatch(
            "UPDATE alarm SET state = :state, priority = :priority, out_of_spec = :outOfSpec,"
                + " roll = :roll, sample = :sample, opened_at = :openedAt, settled_at = :settledAt,"
                + " last_signal_at = :lastSignalAt, returned_at = :returnedAt,"
                + " quiet_samples = :quiet, acknowledged_by = :ackBy, acknowledged_at = :ackAt,"
                + " cause = :cause, action = :action, finding_by = :findingBy,"
                + " finding_at = :findingAt, shown_at = :shownAt, line_mode = :mode,"
                + " raised = :raised,"
                + " out_of_spec_at = :outOfSpecAt WHERE id = :id");
    for (Alarm alarm : all) {
      bindState(batch.bind("id", alarm.id()), alarm).add();
    }
    batch.execute();
    all.forEach(this::saveMembers);
  }

  private static <S extends SqlStatement<S>> S bindState(S statement, Alarm alarm) {
    Course course = alarm.excursion().course();
    Optional<Acknowledgement> seen = alarm.acknowledgement();
    Optional<Finding> found = alarm.finding();
    return statement
        .bind("state", alarm.state().word())
        .bind("priority", alarm.excursion().priority().name())
        .bind("outOfSpec", alarm.excursion().outOfSpec() ? 1 : 0)
        .bind("roll", course.first().roll())
        .bind("sample", course.first().sample())
        .bind("openedAt", Times.toMicros(course.openedAt()))
        .bind("settledAt", course.settledAt().map(Times::toMicros).orElse(null))
        .bind("lastSignalAt", Times.toMicros(course.lastSignalAt()))
        .bind("returnedAt", course.returnedAt().map(Times::toMicros).orElse(null))
        .bind("quiet", course.quietSamples())
        .bind("ackBy", seen.map(Acknowledgement::by).orElse(null))
        .bind("ackAt", seen.map(Acknowledgement::at).map(Times::toMicros).orElse(null))
        .bind("cause", found.map(Finding::cause).orElse(null))
        .bind("action", found.map(Finding::action).orElse(null))
        .bind("findingBy", found.map(Finding::by).orElse(null))
        .bind("findingAt", found.map(Finding::at).map(Times::toMicros).orElse(null))
        .bind("shownAt", alarm.shownAt().map(Times::toMicros).orElse(null))
        .bind("mode", alarm.excursion().mode().word())
        .bind("raised", alarm.excursion().raised() ? 1 : 0)
        .bind("outOfSpecAt", alarm.excursion().outOfSpecAt().map(Times::toMicros).orElse(null));
  }

  private void saveMembers(Alarm alarm) {
    handle
        .createUpdate("DELETE FROM alarm_member WHERE alarm_id = :id")
        .bind("id", alarm.id())
        .execute();
    for (Characteristic member : alarm.subject().members()) {
      handle
          .createUpdate(
              "INSERT INTO alarm_member (alarm_id, kind, position, name)"
                  + " VALUES (:id, :kind, :position, :name)")
          .bind("id", alarm.id())
          .bind("kind", member.kind().name())
          .bind("position", member.position())
          .bind("name", member.name())
          .execute();
    }
  }

  private List<Alarm> list(Query query) {
    List<AlarmRow> rows = query.map((row, context) -> AlarmRow.read(row)).list();
    if (rows.isEmpty()) {
      return List.of();
    }
    Map<Long, List<Characteristic>> members = members(rows.stream().map(AlarmRow::id).toList());
    return rows.stream()
        .map(row -> row.toAlarm(members.getOrDefault(row.id(), List.of())))
        .toList();
  }

  private Map<Long, List<Characteristic>> members(List<Long> alarmIds) {
    Map<Long, List<Characteristic>> members = new HashMap<>();
    for (List<Long> some : IdLists.of(alarmIds).lists()) {
      handle
          .createQuery("SELECT * FROM alarm_member WHERE alarm_id IN (<ids>)")
          .bindList("ids", some)
          .map(
              (row, context) ->
                  members
                      .computeIfAbsent(row.getLong("alarm_id"), id -> new ArrayList<>())
                      .add(member(row)))
          .list();
    }
    return members;
  }

  private static Characteristic member(ResultSet row) throws SQLException {
    return new Characteristic(
        Characteristic.Kind.valueOf(row.getString("kind")),
        row.getInt("position"),
        row.getString("name"));
  }
}
