package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.alarm.Priority;
import dev.filmward.people.Role;
import dev.filmward.telling.Address;
import dev.filmward.telling.Channel;
import dev.filmward.telling.Escalation;
import dev.filmward.telling.Happening;
import dev.filmward.telling.MailServer;
import dev.filmward.telling.QuietHours;
import dev.filmward.telling.QuietRules;
import dev.filmward.telling.QuietRules.Night;
import dev.filmward.telling.Rule;
import dev.filmward.telling.Secret;
import dev.filmward.telling.SecretChange;
import dev.filmward.telling.Settings;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Reads who is to be told of what, and how, from a request. */
final class TellingRequests {
  private static final int LONGEST_NAME = 4000;

  private TellingRequests() {}

  static Rule rule(JsonNode body) {
    Channel channel = Channel.fromWord(Requests.field(body, "channel"));
    return new Rule(
        body.path("id").asLong(0),
        new Rule.Recipient(
            Requests.field(body, "name"),
            new Address(channel, Requests.field(body, "address")),
            text(body, "role").map(Role::fromWord)),
        new Rule.Scope(
            words(body, "lines"),
            priority(Requests.field(body, "priority")),
            words(body, "events").stream().map(Happening::fromWord).collect(Collectors.toSet())),
        quiet(body.path("quiet")));
  }

  private static QuietRules quiet(JsonNode quiet) {
    Optional<QuietHours> hours =
        text(quiet, "from")
            .map(from -> new QuietHours(time(from), time(Requests.field(quiet, "to"))));
    boolean highGoesThrough = quiet.path("highGoesThrough").asBoolean(true);
    return new QuietRules(
        hours,
        highGoesThrough ? Night.HIGH_GOES_THROUGH : Night.EVERYTHING_WAITS,
        number(quiet, "mostAnHour").orElse(0),
        Duration.ofMinutes(number(quiet, "sameAgainAfterMinutes").orElse(0)));
  }

  static Settings settings(JsonNode body) {
    JsonNode mail = body.path("mail");
    Optional<MailServer> server =
        mail.isObject()
            ? Optional.of(
                new MailServer(
                    Requests.field(mail, "host"),
                    number(mail, "port")
                        .orElseThrow(() -> new IllegalArgumentException("\"port\" is missing")),
                    MailServer.Security.fromWord(Requests.field(mail, "security")),
                    text(mail, "user").orElse(""),
                    Address.email(Requests.field(mail, "from"))))
            : Optional.empty();
    return new Settings(
        server,
        text(body, "publicAddress").map(Settings::publicAddress),
        escalation(body.path("escalation")));
  }

  private static Escalation escalation(JsonNode asked) {
    Map<Priority, Duration> after = new EnumMap<>(Priority.class);
    for (Priority priority : Priority.values()) {
      number(asked, priority.word() + "Minutes")
          .ifPresent(minutes -> after.put(priority, Duration.ofMinutes(minutes)));
    }
    return new Escalation(after, number(asked, "againMinutes").map(Duration::ofMinutes));
  }

  /** What is done to a secret: left alone where it is missing, taken away where it is null. */
  static SecretChange secret(JsonNode body, String name) {
    JsonNode given = body.path(name);
    if (given.isMissingNode()) {
      return SecretChange.KEEP;
    }
    if (given.isNull()) {
      return SecretChange.FORGET;
    }
    return SecretChange.set(new Secret(given.asText()));
  }

  private static Priority priority(String word) {
    return Arrays.stream(Priority.values())
        .filter(each -> each.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "priority is low, medium or high, not \"" + word + "\""));
  }

  private static LocalTime time(String text) {
    try {
      return LocalTime.parse(text).withSecond(0).withNano(0);
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(
          "quiet hours are times like 22:00, not \"" + text + "\"", e);
    }
  }

  private static Set<String> words(JsonNode body, String name) {
    Set<String> words = new LinkedHashSet<>();
    for (JsonNode each : body.path(name)) {
      if (!each.isTextual() || each.asText().isBlank() || each.asText().length() > LONGEST_NAME) {
        throw new IllegalArgumentException("\"" + name + "\" is a list of names");
      }
      words.add(each.asText());
    }
    return words;
  }

  private static Optional<String> text(JsonNode body, String name) {
    return body.path(name).asText("").isBlank()
        ? Optional.empty()
        : Optional.of(Requests.field(body, name));
  }

  private static Optional<Integer> number(JsonNode body, String name) {
    JsonNode given = body.path(name);
    if (given.isMissingNode() || given.isNull()) {
      return Optional.empty();
    }
    if (!given.isInt()) {
      throw new IllegalArgumentException("\"" + name + "\" is a whole number");
    }
    return Optional.of(given.asInt());
  }
}
