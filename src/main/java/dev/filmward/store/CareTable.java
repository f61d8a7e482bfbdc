package dev.filmward.store;

import dev.filmward.alarm.CodedFinding;
import dev.filmward.alarm.Comment;
import dev.filmward.alarm.DoneCheck;
import dev.filmward.alarm.Finding;
import dev.filmward.alarm.Ownership;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jdbi.v3.core.statement.Update;

/** What people did about alarms beyond taking them; rows are only ever added. */
public final class CareTable {
  private static final List<String> TABLES =
      List.of("alarm_finding", "alarm_comment", "alarm_check", "alarm_owner", "roll_disposition");

  private final Handle handle;

  CareTable(Handle handle) {
    this.handle = handle;
  }

  /** Whether any of it is about that alarm. */
  public boolean isTouched(long alarmId) {
    String any =
        TABLES.stream()
            .map(table -> "EXISTS (SELECT 1 FROM " + table + " WHERE alarm_id = :id)")
            .collect(Collectors.joining(" OR "));
    return about(alarmId, "SELECT CASE WHEN " + any + " THEN 1 ELSE 0 END")
            .mapTo(Integer.class)
            .one()
        == 1;
  }

  public void add(long alarmId, CodedFinding found) {
    Finding finding = found.finding();
    insert(
            alarmId,
            "INSERT INTO alarm_finding (alarm_id, code, cause, note, action, by_whom, at, searched)"
                + " VALUES (:id, :code, :cause, :note, :action, :by, :at, :searched)")
        .bind("code", found.code())
        .bind("cause", Nul.shown(finding.cause()))
        .bind("note", Nul.shown(found.note()))
        .bind("action", Nul.shown(finding.action()))
        .bind("by", Nul.shown(finding.by()))
        .bind("at", Times.toMicros(finding.at()))
        .bind("searched", searched(finding.cause(), found.note(), finding.action(), finding.by()))
        .execute();
  }

  /** All that was ever found about an alarm, oldest first. */
  public List<CodedFinding> findings(long alarmId) {
    return about(alarmId, "SELECT * FROM alarm_finding WHERE alarm_id = :id ORDER BY id")
        .map((row, context) -> finding(row))
        .list();
  }

  static CodedFinding finding(ResultSet row) throws SQLException {
    return new CodedFinding(
        row.getString("code"),
        row.getString("note"),
        new Finding(
            row.getString("cause"),
            row.getString("action"),
            row.getString("by_whom"),
            Times.toInstant(row.getLong("at"))));
  }

  public void add(long alarmId, Comment comment) {
    insert(
            alarmId,
            "INSERT INTO alarm_comment (alarm_id, words, by_whom, at, searched)"
                + " VALUES (:id, :words, :by, :at, :searched)")
        .bind("words", Nul.shown(comment.words()))
        .bind("by", Nul.shown(comment.by()))
        .bind("at", Times.toMicros(comment.at()))
        .bind("searched", searched(comment.words(), comment.by()))
        .execute();
  }

  static Comment comment(ResultSet row) throws SQLException {
    return new Comment(
        row.getString("words"), row.getString("by_whom"), Times.toInstant(row.getLong("at")));
  }

  public void add(long alarmId, DoneCheck check) {
    insert(
            alarmId,
            "INSERT INTO alarm_check (alarm_id, words, outcome, note, by_whom, at)"
                + " VALUES (:id, :words, :outcome, :note, :by, :at)")
        .bind("words", Nul.shown(check.words()))
        .bind("outcome", check.outcome().word())
        .bind("note", Nul.shown(check.note()))
        .bind("by", Nul.shown(check.by()))
        .bind("at", Times.toMicros(check.at()))
        .execute();
  }

  static DoneCheck check(ResultSet row) throws SQLException {
    return new DoneCheck(
        row.getString("words"),
        DoneCheck.Outcome.fromWord(row.getString("outcome")),
        row.getString("note"),
        row.getString("by_whom"),
        Times.toInstant(row.getLong("at")));
  }

  public void add(long alarmId, Ownership owner) {
    insert(
            alarmId,
            "INSERT INTO alarm_owner (alarm_id, owner, why, by_whom, at)"
                + " VALUES (:id, :owner, :why, :by, :at)")
        .bind("owner", Nul.shown(owner.owner()))
        .bind("why", Nul.shown(owner.why()))
        .bind("by", Nul.shown(owner.by()))
        .bind("at", Times.toMicros(owner.at()))
        .execute();
  }

  /** To whom an alarm was handed on last. */
  public Optional<Ownership> handedOn(long alarmId) {
    return about(alarmId, "SELECT * FROM alarm_owner WHERE alarm_id = :id ORDER BY id DESC LIMIT 1")
        .map((row, context) -> ownership(row))
        .findOne();
  }

  static Ownership ownership(ResultSet row) throws SQLException {
    return new Ownership(
        row.getString("owner"),
        row.getString("why"),
        row.getString("by_whom"),
        Times.toInstant(row.getLong("at")));
  }

  /** Alarms whose comments and findings have a text in them, in whatever case; newest first. */
  public List<Long> search(String text, int most) {
    String like =
        "%" + searched(text).replace("!", "!!").replace("%", "!%").replace("_", "!_") + "%";
    return handle
        .createQuery(
            "SELECT alarm_id FROM alarm_comment WHERE searched LIKE :like ESCAPE '!'"
                + " UNION SELECT alarm_id FROM alarm_finding WHERE searched LIKE :like ESCAPE '!'"
                + " ORDER BY alarm_id DESC LIMIT :most")
        .bind("like", like)
        .bind("most", most)
        .mapTo(Long.class)
        .list();
  }

  private static String searched(String... texts) {
    return Stream.of(texts)
        .map(text -> Nul.shown(text).toLowerCase(Locale.ROOT))
        .collect(Collectors.joining("\n"));
  }

  private Query about(long alarmId, String sql) {
    return handle.createQuery(sql).bind("id", alarmId);
  }

  private Update insert(long alarmId, String sql) {
    return handle.createUpdate(sql).bind("id", alarmId);
  }
}
