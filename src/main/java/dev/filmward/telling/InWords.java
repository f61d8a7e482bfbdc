package dev.filmward.telling;

import dev.filmward.alarm.Priority;
import dev.filmward.people.Role;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Rules and settings in words, for the audit chain. No passwords. */
public final class InWords {
  private InWords() {}

  public static String of(RuleVersion version) {
    Rule rule = version.rule();
    Rule.Recipient to = rule.recipient();
    return String.join(
        "; ",
        List.of(
            version.state().word(),
            to.name() + to.role().map(Role::word).map(role -> " (" + role + ")").orElse(""),
            to.address().channel().word() + " " + to.address().text(),
            "lines: " + lines(rule),
            rule.scope().least().word() + " priority and above",
            "told of " + happenings(rule),
            quiet(rule.quiet())));
  }

  public static String of(Settings settings) {
    return String.join(
        "; ",
        List.of(
            settings.mail().map(InWords::mail).orElse("no mail server"),
            settings
                .publicAddress()
                .map(address -> "public address " + address)
                .orElse("no public address"),
            "escalation " + escalation(settings.escalation())));
  }

  /** A time as people say it: {@code 10 minutes}, {@code 1 hour}, {@code 2 days}. */
  public static String of(Duration time) {
    long minutes = time.toMinutes();
    if (minutes >= 1440 && minutes % 1440 == 0) {
      return count(minutes / 1440, "day");
    }
    return minutes >= 60 && minutes % 60 == 0
        ? count(minutes / 60, "hour")
        : count(minutes, "minute");
  }

  private static String lines(Rule rule) {
    return rule.scope().lines().isEmpty()
        ? "all"
        : String.join(", ", new TreeSet<>(rule.scope().lines()));
  }

  private static String happenings(Rule rule) {
    return new TreeSet<>(rule.scope().happenings())
        .stream().map(Happening::word).collect(Collectors.joining(", "));
  }

  private static String quiet(QuietRules quiet) {
    String hours =
        quiet
            .hours()
            .map(each -> "quiet " + each.from() + " to " + each.to() + night(quiet))
            .orElse("no quiet hours");
    String most =
        quiet.mostAnHour() == 0 ? "no bound" : "at most " + quiet.mostAnHour() + " an hour";
    return hours + "; " + most + "; the same again after " + of(quiet.sameAgainAfter());
  }

  private static String night(QuietRules quiet) {
    return quiet.night() == QuietRules.Night.HIGH_GOES_THROUGH ? " but for high priority" : "";
  }

  private static String mail(MailServer mail) {
    return "mail by "
        + mail.host()
        + ":"
        + mail.port()
        + " "
        + mail.security().word()
        + (mail.user().isEmpty() ? "" : " as " + mail.user())
        + " from "
        + mail.from().text();
  }

  private static String escalation(Escalation escalation) {
    String after =
        Arrays.stream(Priority.values())
            .filter(escalation.after()::containsKey)
            .map(priority -> priority.word() + " after " + of(after(escalation, priority)))
            .collect(Collectors.joining(", "));
    return (after.isEmpty() ? "never" : after)
        + escalation.again().map(time -> ", again after " + of(time)).orElse(", once");
  }

  private static Duration after(Escalation escalation, Priority priority) {
    return escalation.after().getOrDefault(priority, Duration.ZERO);
  }

  private static String count(long many, String what) {
    return many + " " + what + (many == 1 ? "" : "s");
  }
}
