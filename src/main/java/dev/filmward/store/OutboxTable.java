package dev.filmward.store;

import dev.filmward.alarm.Priority;
import dev.filmward.telling.OutboxEntry;
import dev.filmward.telling.OutboxEntry.Hold;
import dev.filmward.telling.QuietRules.Lately;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/**
 * Messages on their way. They are added in the transaction of what they tell of, so that nothing is
 * lost and nobody is told of what was rolled back.
 */
public final class OutboxTable {
  private static final int MOST_AT_ONCE = 500;

  private final Handle handle;

  OutboxTable(Handle handle) {
    this.handle = handle;
  }

  /** Adds a message and gives its number. */
  public long add(OutboxEntry entry) {
    return OutboxRow.bind(handle.createUpdate(OutboxRow.INSERT), entry)
        .executeAndReturnGeneratedKeys("id")
        .mapTo(Long.class)
        .one();
  }

  /** Those to be tried now, oldest first, also those held back until now. */
  public List<OutboxEntry> due(Instant now) {
    return list(
        handle
            .createQuery(
                "SELECT * FROM outbox WHERE state = 'waiting' AND due_at <= :now"
                    + " ORDER BY id LIMIT :most")
            .bind("now", Times.toMicros(now))
            .bind("most", MOST_AT_ONCE));
  }

  /** All of a rule that are held back, oldest first. */
  public List<OutboxEntry> held(long ruleId) {
    return list(
        handle
            .createQuery(
                "SELECT * FROM outbox WHERE state = 'waiting' AND held = 1 AND rule_id = :rule"
                    + " ORDER BY id")
            .bind("rule", ruleId));
  }

  public List<OutboxEntry> newest(int most) {
    return list(
        handle.createQuery("SELECT * FROM outbox ORDER BY id DESC LIMIT :most").bind("most", most));
  }

  /** What somebody was told within the hour before a moment, and what is held back. */
  public Lately lately(long ruleId, Instant now) {
    Lately told =
        handle
            .createQuery(
                "SELECT count(*) AS many, min(first_due) AS oldest FROM outbox"
                    + " WHERE rule_id = :rule AND held = 0 AND state IN ('waiting', 'sent')"
                    + " AND first_due > :hourAgo")
            .bind("rule", ruleId)
            .bind("hourAgo", Times.toMicros(now.minus(Duration.ofHours(1))))
            .map(
                (row, context) ->
                    new Lately(
                        row.getInt("many"),
                        row.getInt("many") == 0
                            ? Optional.empty()
                            : Optional.of(Times.toInstant(row.getLong("oldest"))),
                        Optional.empty()))
            .one();
    Optional<Instant> heldUntil =
        held(ruleId).stream().findFirst().map(entry -> entry.due().next());
    return new Lately(told.messages(), told.oldest(), heldUntil);
  }

  /** With which priorities somebody was told the same of the same alarm since a moment. */
  public List<Priority> told(long ruleId, OutboxEntry.Topic topic, Instant since) {
    return handle
        .createQuery(
            "SELECT priority FROM outbox WHERE rule_id = :rule AND about = :about"
                + " AND event = :event AND made_at > :since AND state <> 'withdrawn'")
        .bind("rule", ruleId)
        .bind("about", topic.about())
        .bind("event", topic.event())
        .bind("since", Times.toMicros(since))
        .mapTo(String.class)
        .map(Priority::valueOf)
        .list();
  }

  /** Notes that the other side took a message. */
  public void sent(long id, Instant at, String address) {
    handle
        .createUpdate(
            "UPDATE outbox SET state = 'sent', attempts = attempts + 1, last_error = '',"
                + " tried_at = :at, sent_to = :to WHERE id = :id AND state = 'waiting'")
        .bind("at", Times.toMicros(at))
        .bind("to", address)
        .bind("id", id)
        .execute();
  }

  /** Notes that an attempt failed; without a next one it is given up. */
  public void failed(long id, Instant at, String words, Optional<Instant> next) {
    handle
        .createUpdate(
            "UPDATE outbox SET state = :state, attempts = attempts + 1, last_error = :words,"
                + " tried_at = :at, due_at = :next WHERE id = :id AND state = 'waiting'")
        .bind("state", next.isPresent() ? "waiting" : OutboxEntry.State.GIVEN_UP.word())
        .bind("words", words)
        .bind("at", Times.toMicros(at))
        .bind("next", Times.toMicros(next.orElse(at)))
        .bind("id", id)
        .execute();
  }

  /** Has the other messages by a rule wait as well, while there is no way to its recipient. */
  public void postpone(long ruleId, Instant until) {
    handle
        .createUpdate(
            "UPDATE outbox SET due_at = :until WHERE rule_id = :rule AND state = 'waiting'"
                + " AND held = 0 AND due_at < :until")
        .bind("until", Times.toMicros(until))
        .bind("rule", ruleId)
        .execute();
  }

  /** Lets a message go that was held back. */
  public void release(long id, Instant now) {
    handle
        .createUpdate("UPDATE outbox SET held = 0, first_due = :now, due_at = :now WHERE id = :id")
        .bind("now", Times.toMicros(now))
        .bind("id", id)
        .execute();
  }

  /** Notes in which summary a message that was held back is told. */
  public void sumUp(long id, long summaryId) {
    handle
        .createUpdate("UPDATE outbox SET state = 'summed-up', summary_id = :summary WHERE id = :id")
        .bind("summary", summaryId)
        .bind("id", id)
        .execute();
  }

  /** Takes back what waits to be told of an alarm that is there no more. */
  public void withdraw(long alarmId) {
    handle
        .createUpdate(
            "UPDATE outbox SET state = 'withdrawn' WHERE alarm_id = :id AND state = 'waiting'")
        .bind("id", alarmId)
        .execute();
  }

  /** Forgets what was dealt with before a moment. */
  public void forget(Instant before) {
    handle
        .createUpdate("DELETE FROM outbox WHERE state <> 'waiting' AND made_at < :before")
        .bind("before", Times.toMicros(before))
        .execute();
  }

  static Hold hold(int held) {
    return held == 0 ? Hold.NOT_HELD : Hold.HELD;
  }

  private static List<OutboxEntry> list(Query query) {
    return query.map((row, context) -> OutboxRow.read(row)).list();
  }
}
