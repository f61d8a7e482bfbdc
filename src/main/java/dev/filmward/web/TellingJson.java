package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.alarm.Priority;
import dev.filmward.people.Role;
import dev.filmward.pipeline.Passwords;
import dev.filmward.pipeline.TellingDesk.RuleLook;
import dev.filmward.pipeline.TellingDesk.SettingsLook;
import dev.filmward.telling.Decided;
import dev.filmward.telling.Escalation;
import dev.filmward.telling.Happening;
import dev.filmward.telling.MailServer;
import dev.filmward.telling.OutboxEntry;
import dev.filmward.telling.QuietRules;
import dev.filmward.telling.Rule;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.TreeSet;

/** How rules, settings and messages look as JSON; passwords do not. */
final class TellingJson {
  private final ZoneId zone;

  TellingJson(ZoneId zone) {
    this.zone = zone;
  }

  ObjectNode rule(RuleLook look) {
    Rule rule = look.version().rule();
    ObjectNode node =
        Wire.object()
            .put("id", rule.id())
            .put("version", look.version().version())
            .put("state", look.version().state().word())
            .put("name", rule.recipient().name())
            .put("role", rule.recipient().role().map(Role::word).orElse(null))
            .put("channel", rule.recipient().address().channel().word())
            .put("address", rule.recipient().address().text())
            .put("signed", look.signing() == RuleLook.Signing.SIGNED);
    ArrayNode lines = node.putArray("lines");
    new TreeSet<>(rule.scope().lines()).forEach(lines::add);
    node.put("priority", rule.scope().least().word());
    ArrayNode events = node.putArray("events");
    new TreeSet<>(rule.scope().happenings()).stream().map(Happening::word).forEach(events::add);
    node.set("quiet", quiet(rule.quiet()));
    node.set("decided", decided(look.version().decided()));
    return node;
  }

  private static ObjectNode quiet(QuietRules quiet) {
    return Wire.object()
        .put("from", quiet.hours().map(hours -> hours.from().toString()).orElse(null))
        .put("to", quiet.hours().map(hours -> hours.to().toString()).orElse(null))
        .put("highGoesThrough", quiet.night() == QuietRules.Night.HIGH_GOES_THROUGH)
        .put("mostAnHour", quiet.mostAnHour())
        .put("sameAgainAfterMinutes", quiet.sameAgainAfter().toMinutes());
  }

  private ObjectNode decided(Decided decided) {
    return Wire.object()
        .put("by", decided.by())
        .put("reason", decided.reason())
        .put("at", time(decided.at()));
  }

  ObjectNode settings(SettingsLook look) {
    ObjectNode node = Wire.object().put("version", look.version().version());
    node.putNull("mail");
    look.version().settings().mail().ifPresent(mail -> node.set("mail", mail(mail)));
    node.put("password", password(look.password()));
    node.put(
        "publicAddress",
        look.version().settings().publicAddress().map(Object::toString).orElse(null));
    node.set("escalation", escalation(look.version().settings().escalation()));
    node.putNull("decided");
    look.version().decided().ifPresent(decided -> node.set("decided", decided(decided)));
    return node;
  }

  private static ObjectNode mail(MailServer mail) {
    return Wire.object()
        .put("host", mail.host())
        .put("port", mail.port())
        .put("security", mail.security().word())
        .put("user", mail.user())
        .put("from", mail.from().text());
  }

  private static String password(Passwords.Kept kept) {
    return switch (kept) {
      case NOWHERE -> "none";
      case IN_THE_DATABASE -> "set";
      case IN_THE_ENVIRONMENT -> "environment";
    };
  }

  private static ObjectNode escalation(Escalation escalation) {
    ObjectNode node = Wire.object();
    for (Priority priority : Priority.values()) {
      minutes(
          node, priority.word() + "Minutes", Optional.ofNullable(escalation.after().get(priority)));
    }
    minutes(node, "againMinutes", escalation.again());
    return node;
  }

  private static void minutes(ObjectNode node, String name, Optional<Duration> time) {
    node.put(name, time.map(Duration::toMinutes).orElse(null));
  }

  /** A message as the page shows it; its text stays behind. */
  ObjectNode message(OutboxEntry entry, String name) {
    return Wire.object()
        .put("id", entry.id())
        .put("rule", entry.ruleId())
        .put("name", name)
        .put("alarm", entry.topic().alarmId().orElse(null))
        .put("event", entry.topic().event())
        .put("subject", entry.message().subject())
        .put("state", entry.progress().state().word())
        .put("held", entry.isHeld())
        .put("madeAt", time(entry.due().made()))
        .put("dueAt", time(entry.due().next()))
        .put("attempts", entry.progress().attempts())
        .put("triedAt", entry.progress().triedAt().map(this::time).orElse(null))
        .put("lastError", entry.progress().lastError())
        .put("sentTo", entry.progress().sentTo());
  }

  private String time(Instant instant) {
    return Wire.time(instant, zone);
  }
}
