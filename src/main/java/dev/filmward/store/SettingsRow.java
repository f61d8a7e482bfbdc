package dev.filmward.store;

import dev.filmward.alarm.Priority;
import dev.filmward.telling.Address;
import dev.filmward.telling.Decided;
import dev.filmward.telling.Escalation;
import dev.filmward.telling.MailServer;
import dev.filmward.telling.Settings;
import dev.filmward.telling.SettingsVersion;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.statement.Update;
import org.jspecify.annotations.Nullable;

/** How a version of the settings is written in a row. */
final class SettingsRow {
  static final String INSERT =
      "INSERT INTO telling_settings (version, mail_host, mail_port, mail_security, mail_user,"
          + " mail_from, public_address, high_minutes, medium_minutes, low_minutes, again_minutes,"
          + " author, reason, decided_at) VALUES (:version, :host, :port, :security, :user, :from,"
          + " :address, :high, :medium, :low, :again, :author, :reason, :at)";

  private SettingsRow() {}

  static Update bind(Update update, SettingsVersion version) {
    Settings settings = version.settings();
    Optional<MailServer> mail = settings.mail();
    Decided decided = version.decided().orElseThrow();
    return update
        .bind("version", version.version())
        .bind("host", mail.map(MailServer::host).orElse(null))
        .bind("port", mail.map(MailServer::port).orElse(null))
        .bind("security", mail.map(each -> each.security().word()).orElse(null))
        .bind("user", mail.map(MailServer::user).orElse(null))
        .bind("from", mail.map(each -> each.from().text()).orElse(null))
        .bind("address", settings.publicAddress().map(Object::toString).orElse(null))
        .bind("high", after(settings, Priority.HIGH))
        .bind("medium", after(settings, Priority.MEDIUM))
        .bind("low", after(settings, Priority.LOW))
        .bind("again", settings.escalation().again().map(Duration::toMinutes).orElse(null))
        .bind("author", decided.by())
        .bind("reason", decided.reason())
        .bind("at", Times.toMicros(decided.at()));
  }

  static SettingsVersion read(ResultSet row) throws SQLException {
    Optional<String> address = Optional.ofNullable(row.getString("public_address"));
    return new SettingsVersion(
        new Settings(mail(row), address.map(Settings::publicAddress), escalation(row)),
        row.getInt("version"),
        Optional.of(
            new Decided(
                row.getString("author"),
                row.getString("reason"),
                Times.toInstant(row.getLong("decided_at")))));
  }

  private static Optional<MailServer> mail(ResultSet row) throws SQLException {
    String host = row.getString("mail_host");
    if (host == null) {
      return Optional.empty();
    }
    return Optional.of(
        new MailServer(
            host,
            row.getInt("mail_port"),
            MailServer.Security.fromWord(row.getString("mail_security")),
            row.getString("mail_user"),
            Address.email(row.getString("mail_from"))));
  }

  private static Escalation escalation(ResultSet row) throws SQLException {
    Map<Priority, Duration> after = new EnumMap<>(Priority.class);
    for (Priority priority : Priority.values()) {
      minutes(row, priority.word() + "_minutes").ifPresent(time -> after.put(priority, time));
    }
    return new Escalation(after, minutes(row, "again_minutes"));
  }

  private static Optional<Duration> minutes(ResultSet row, String column) throws SQLException {
    long minutes = row.getLong(column);
    return row.wasNull() ? Optional.empty() : Optional.of(Duration.ofMinutes(minutes));
  }

  private static @Nullable Long after(Settings settings, Priority priority) {
    Duration time = settings.escalation().after().get(priority);
    return time == null ? null : time.toMinutes();
  }
}
