package dev.filmward.store;

import dev.filmward.alarm.Priority;
import dev.filmward.people.Role;
import dev.filmward.telling.Address;
import dev.filmward.telling.Channel;
import dev.filmward.telling.Decided;
import dev.filmward.telling.Happening;
import dev.filmward.telling.QuietHours;
import dev.filmward.telling.QuietRules;
import dev.filmward.telling.QuietRules.Night;
import dev.filmward.telling.Rule;
import dev.filmward.telling.RuleVersion;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jdbi.v3.core.statement.Update;

/** How a version of a rule is written in a row. */
final class TellingRow {
  static final String INSERT =
      "INSERT INTO telling_rule (rule_id, version, state, name, role, channel, address,"
          + " least_priority, events, quiet_from, quiet_to, night, most_an_hour, again_minutes,"
          + " author, reason, decided_at) VALUES (:id, :version, :state, :name, :role, :channel,"
          + " :address, :least, :events, :quietFrom, :quietTo, :night, :most, :again, :author,"
          + " :reason, :at)";

  private TellingRow() {}

  /** For which lines a version of a rule holds. */
  @FunctionalInterface
  interface Lines {
    Set<String> of(long ruleId, int version);
  }

  static Update bind(Update update, RuleVersion version) {
    Rule rule = version.rule();
    Rule.Recipient to = rule.recipient();
    Optional<QuietHours> hours = rule.quiet().hours();
    return update
        .bind("id", rule.id())
        .bind("version", version.version())
        .bind("state", version.state().word())
        .bind("name", to.name())
        .bind("role", to.role().map(Role::word).orElse(null))
        .bind("channel", to.address().channel().word())
        .bind("address", to.address().text())
        .bind("least", rule.scope().least().name())
        .bind("events", words(rule.scope().happenings()))
        .bind("quietFrom", hours.map(QuietHours::from).map(TellingRow::minutes).orElse(null))
        .bind("quietTo", hours.map(QuietHours::to).map(TellingRow::minutes).orElse(null))
        .bind("night", rule.quiet().night().name())
        .bind("most", rule.quiet().mostAnHour())
        .bind("again", rule.quiet().sameAgainAfter().toMinutes())
        .bind("author", version.decided().by())
        .bind("reason", version.decided().reason())
        .bind("at", Times.toMicros(version.decided().at()));
  }

  static RuleVersion read(ResultSet row, Lines lines) throws SQLException {
    long id = row.getLong("rule_id");
    int version = row.getInt("version");
    Rule.Scope scope =
        new Rule.Scope(
            lines.of(id, version),
            Priority.valueOf(row.getString("least_priority")),
            happenings(row.getString("events")));
    return new RuleVersion(
        new Rule(id, recipient(row), scope, quiet(row)),
        version,
        RuleVersion.State.fromWord(row.getString("state")),
        new Decided(
            row.getString("author"),
            row.getString("reason"),
            Times.toInstant(row.getLong("decided_at"))));
  }

  private static Rule.Recipient recipient(ResultSet row) throws SQLException {
    return new Rule.Recipient(
        row.getString("name"),
        new Address(Channel.fromWord(row.getString("channel")), row.getString("address")),
        Optional.ofNullable(row.getString("role")).map(Role::fromWord));
  }

  private static QuietRules quiet(ResultSet row) throws SQLException {
    int from = row.getInt("quiet_from");
    Optional<QuietHours> hours =
        row.wasNull()
            ? Optional.empty()
            : Optional.of(new QuietHours(time(from), time(row.getInt("quiet_to"))));
    return new QuietRules(
        hours,
        Night.valueOf(row.getString("night")),
        row.getInt("most_an_hour"),
        Duration.ofMinutes(row.getLong("again_minutes")));
  }

  private static String words(Set<Happening> happenings) {
    return new TreeSet<>(happenings).stream().map(Happening::word).collect(Collectors.joining(" "));
  }

  private static Set<Happening> happenings(String words) {
    return Arrays.stream(words.split(" ", -1)).map(Happening::fromWord).collect(Collectors.toSet());
  }

  private static int minutes(LocalTime time) {
    return time.getHour() * 60 + time.getMinute();
  }

  private static LocalTime time(int minutes) {
    return LocalTime.of(minutes / 60, minutes % 60);
  }
}
