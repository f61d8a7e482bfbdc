package dev.filmward.store;

import dev.filmward.alarm.Priority;
import dev.filmward.telling.Message;
import dev.filmward.telling.OutboxEntry;
import dev.filmward.telling.OutboxEntry.Due;
import dev.filmward.telling.OutboxEntry.Progress;
import dev.filmward.telling.OutboxEntry.State;
import dev.filmward.telling.OutboxEntry.Topic;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.statement.Update;

/** How a message is written in a row. */
final class OutboxRow {
  static final String INSERT =
      "INSERT INTO outbox (message_key, rule_id, alarm_id, event, about, priority, subject, body,"
          + " made_at, first_due, due_at, held, state) VALUES (:key, :rule, :alarm, :event, :about,"
          + " :priority, :subject, :body, :made, :first, :next, :held, :state)";

  private OutboxRow() {}

  static Update bind(Update update, OutboxEntry entry) {
    return update
        .bind("key", entry.message().key())
        .bind("rule", entry.ruleId())
        .bind("alarm", entry.topic().alarmId().orElse(null))
        .bind("event", entry.topic().event())
        .bind("about", entry.topic().about())
        .bind("priority", entry.topic().priority().name())
        .bind("subject", entry.message().subject())
        .bind("body", entry.message().body())
        .bind("made", Times.toMicros(entry.due().made()))
        .bind("first", Times.toMicros(entry.due().first()))
        .bind("next", Times.toMicros(entry.due().next()))
        .bind("held", entry.isHeld() ? 1 : 0)
        .bind("state", entry.progress().state().word());
  }

  static OutboxEntry read(ResultSet row) throws SQLException {
    return new OutboxEntry(
        row.getLong("id"),
        row.getLong("rule_id"),
        new Topic(
            micros(row, "alarm_id"),
            row.getString("event"),
            row.getString("about"),
            Priority.valueOf(row.getString("priority"))),
        new Message(row.getString("message_key"), row.getString("subject"), row.getString("body")),
        new Due(
            at(row, "made_at"),
            at(row, "first_due"),
            at(row, "due_at"),
            OutboxTable.hold(row.getInt("held"))),
        new Progress(
            State.fromWord(row.getString("state")),
            row.getInt("attempts"),
            row.getString("last_error"),
            micros(row, "tried_at").map(Times::toInstant),
            row.getString("sent_to")));
  }

  private static Instant at(ResultSet row, String column) throws SQLException {
    return Times.toInstant(row.getLong(column));
  }

  private static Optional<Long> micros(ResultSet row, String column) throws SQLException {
    long number = row.getLong(column);
    return row.wasNull() ? Optional.empty() : Optional.of(number);
  }
}
