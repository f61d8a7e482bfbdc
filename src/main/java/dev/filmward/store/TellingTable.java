package dev.filmward.store;

import dev.filmward.telling.Escalation.Raised;
import dev.filmward.telling.RuleVersion;
import dev.filmward.telling.Secret;
import dev.filmward.telling.SecretChange;
import dev.filmward.telling.SettingsVersion;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/**
 * Who is told of what and how; versions are added and never changed. Passwords go in, and come out
 * for the sender alone.
 */
public final class TellingTable {
  private static final String NEWEST =
      "SELECT r.* FROM telling_rule r WHERE r.version ="
          + " (SELECT max(version) FROM telling_rule WHERE rule_id = r.rule_id)"
          + " AND r.state <> 'removed'";

  private final Handle handle;

  TellingTable(Handle handle) {
    this.handle = handle;
  }

  /** All rules that are not removed, on or off, in the order in which they were made. */
  public List<RuleVersion> rules() {
    return handle
        .createQuery(NEWEST + " ORDER BY r.rule_id")
        .map((row, context) -> TellingRow.read(row, this::lines))
        .list();
  }

  public Optional<RuleVersion> rule(long id) {
    return handle
        .createQuery(NEWEST + " AND r.rule_id = :id")
        .bind("id", id)
        .map((row, context) -> TellingRow.read(row, this::lines))
        .findFirst();
  }

  /** Adds the next version of a rule, the first one where it has no id yet. */
  public RuleVersion keep(RuleVersion asked) {
    long id = asked.rule().id() == 0 ? next("rule_id", "1 = 1") : asked.rule().id();
    int version = (int) next("version", "rule_id = " + id);
    RuleVersion kept =
        new RuleVersion(asked.rule().withId(id), version, asked.state(), asked.decided());
    TellingRow.bind(handle.createUpdate(TellingRow.INSERT), kept).execute();
    for (String line : kept.rule().scope().lines()) {
      handle
          .createUpdate(
              "INSERT INTO telling_line (rule_id, version, line) VALUES (:id, :version, :line)")
          .bind("id", id)
          .bind("version", version)
          .bind("line", line)
          .execute();
    }
    return kept;
  }

  private long next(String column, String which) {
    return 1
        + handle
            .createQuery("SELECT coalesce(max(" + column + "), 0) FROM telling_rule WHERE " + which)
            .mapTo(Long.class)
            .one();
  }

  private Set<String> lines(long ruleId, int version) {
    return handle
        .createQuery("SELECT line FROM telling_line WHERE rule_id = :id AND version = :version")
        .bind("id", ruleId)
        .bind("version", version)
        .mapTo(String.class)
        .collect(Collectors.toSet());
  }

  public SettingsVersion settings() {
    return handle
        .createQuery("SELECT * FROM telling_settings ORDER BY version DESC LIMIT 1")
        .map((row, context) -> SettingsRow.read(row))
        .findFirst()
        .orElse(SettingsVersion.BEGINNING);
  }

  /** Adds the next version of the settings. */
  public void keep(SettingsVersion settings) {
    SettingsRow.bind(handle.createUpdate(SettingsRow.INSERT), settings).execute();
  }

  public Optional<Secret> secret(String name) {
    return handle
        .createQuery("SELECT secret FROM telling_secret WHERE name = :name")
        .bind("name", name)
        .mapTo(String.class)
        .findFirst()
        .map(Secret::new);
  }

  public void change(String name, SecretChange change) {
    if (change.what() == SecretChange.What.KEEP) {
      return;
    }
    handle
        .createUpdate("DELETE FROM telling_secret WHERE name = :name")
        .bind("name", name)
        .execute();
    change
        .secret()
        .ifPresent(
            secret ->
                handle
                    .createUpdate("INSERT INTO telling_secret (name, secret) VALUES (:name, :it)")
                    .bind("name", name)
                    .bind("it", secret.reveal())
                    .execute());
  }

  /** When the server raised an alarm; empty for one that nobody could be told of. */
  public Optional<Raised> raised(long alarmId) {
    return handle
        .createQuery("SELECT * FROM telling_alarm WHERE alarm_id = :id")
        .bind("id", alarmId)
        .map((row, context) -> raised(row))
        .findFirst();
  }

  /** Alarms that were raised and are waiting for somebody to take them, oldest first. */
  public List<Raised> waiting() {
    return handle
        .createQuery(
            "SELECT t.* FROM telling_alarm t JOIN alarm a ON a.id = t.alarm_id"
                + " WHERE a.state = 'unacknowledged' ORDER BY t.alarm_id")
        .map((row, context) -> raised(row))
        .list();
  }

  static Raised raised(ResultSet row) throws SQLException {
    Instant at = Times.toInstant(row.getLong("raised_at"));
    long alarmId = row.getLong("alarm_id");
    long escalated = row.getLong("escalated_at");
    return new Raised(
        alarmId, at, row.wasNull() ? Optional.empty() : Optional.of(Times.toInstant(escalated)));
  }

  /** Notes when the server raised an alarm, or raised it anew. */
  public void keep(Raised raised) {
    forget(raised.alarmId());
    handle
        .createUpdate(
            "INSERT INTO telling_alarm (alarm_id, raised_at, escalated_at)"
                + " VALUES (:id, :at, :escalated)")
        .bind("id", raised.alarmId())
        .bind("at", Times.toMicros(raised.at()))
        .bind("escalated", raised.escalatedAt().map(Times::toMicros).orElse(null))
        .execute();
  }

  /** Forgets an alarm that is there no more. */
  public void forget(long alarmId) {
    handle
        .createUpdate("DELETE FROM telling_alarm WHERE alarm_id = :id")
        .bind("id", alarmId)
        .execute();
  }
}
