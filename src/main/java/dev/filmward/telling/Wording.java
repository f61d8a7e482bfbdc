package dev.filmward.telling;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.util.RawValue;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/**
 * Puts what is told into words, and into the JSON of webhooks, whose form is {@value
 * #WEBHOOK_VERSION}. Immutable.
 */
public final class Wording {
  /** Told to receivers; grows when the form changes so that old receivers would not read it. */
  public static final int WEBHOOK_VERSION = 1;

  /** What must stand wherever a person could act on a suggestion. */
  static final String CAUTIONS =
      "A chart is not a safety interlock and not a release test. Checks at a running line mean hot"
          + " dies, nips and cutters: follow the lock-out procedure of the site and local rules."
          + " Barrier, food-contact and medical film is released by the responsible person under"
          + " the applicable regulations.";

  private static final int LONGEST_NAME = 120;
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm (xxx)", Locale.ROOT);

  private final ZoneId zone;

  /**
   * @param zone in which times are said
   */
  public Wording(ZoneId zone) {
    this.zone = zone;
  }

  /** A message of one thing. */
  public Message message(Channel channel, String key, News news) {
    String subject = subject(news);
    return new Message(
        key, subject, channel == Channel.EMAIL ? text(news) : json(key, subject, news).toString());
  }

  /** One message in place of several that were held back. */
  public Message summary(Channel channel, String key, List<Message> held) {
    String subject = held.size() + " messages about alarms that were held back";
    if (channel == Channel.EMAIL) {
      return new Message(key, subject, summaryText(held));
    }
    ObjectNode body = head(key, "summary", subject);
    ArrayNode messages = body.putArray("messages");
    held.forEach(each -> messages.addRawValue(new RawValue(each.body())));
    return new Message(key, subject, body.toString());
  }

  /** A message by which an administrator sees that the way is open. */
  public Message test(Channel channel, String key, Instant now) {
    String subject = "Test message, nothing happened";
    String words =
        "This is a test, sent on " + time(now) + ". It reached you, so messages about alarms will.";
    return new Message(
        key,
        subject,
        channel == Channel.EMAIL
            ? words + "\n"
            : head(key, "test", subject).put("text", words).toString());
  }

  private String subject(News news) {
    AlarmFacts alarm = news.alarm();
    return String.join(
        ", ",
        opening(news.happening()) + name(alarm.title()),
        name(alarm.made().line()),
        alarm.priority().word() + " priority");
  }

  private static String opening(Happening happening) {
    return switch (happening) {
      case OPENED -> "Alarm: ";
      case ESCALATED -> "Not taken: ";
      case RETURNED -> "As usual again: ";
      case CLOSED -> "Closed: ";
    };
  }

  private String text(News news) {
    AlarmFacts alarm = news.alarm();
    StringBuilder text = new StringBuilder();
    line(text, opening(news.happening()) + name(alarm.title()) + ".");
    if (!news.told().isEmpty()) {
      line(text, Plain.line(news.told()));
    }
    line(text, "");
    line(text, "Line:      " + name(alarm.made().line()));
    line(text, "Film:      " + name(alarm.made().structure()));
    line(text, "Layers:    " + layers(alarm));
    line(text, "Since:     " + time(alarm.since()) + ", the time of the sample");
    line(
        text, "Priority:  " + alarm.priority().word() + (alarm.outOfSpec() ? ", out of spec" : ""));
    line(text, "Alarm:     " + alarm.id() + ", " + alarm.state().replace('-', ' '));
    if (news.happening() == Happening.OPENED || news.happening() == Happening.ESCALATED) {
      addChecks(text, alarm);
    }
    alarm.link().ifPresent(link -> line(text, "\nSee and take it: " + link));
    return text.toString();
  }

  private static void addChecks(StringBuilder text, AlarmFacts alarm) {
    if (alarm.firstChecks().isEmpty()) {
      return;
    }
    line(text, "\nCheck first:");
    int number = 1;
    for (String check : alarm.firstChecks()) {
      line(text, "  " + number++ + ". " + Plain.line(check));
    }
    line(text, "\n" + CAUTIONS);
  }

  private static String summaryText(List<Message> held) {
    StringBuilder text = new StringBuilder("While you were left in peace:\n\n");
    held.forEach(each -> line(text, "- " + each.subject()));
    line(text, "\nThe newest of them in full:\n");
    return text.append(held.get(held.size() - 1).body()).toString();
  }

  private ObjectNode json(String key, String subject, News news) {
    AlarmFacts facts = news.alarm();
    ObjectNode body = head(key, news.happening().word(), subject).put("text", text(news));
    body.put("at", news.at().toString());
    ObjectNode alarm = body.putObject("alarm");
    alarm
        .put("id", facts.id())
        .put("line", facts.made().line())
        .put("structure", facts.made().structure())
        .put("title", facts.title());
    facts.layers().forEach(alarm.putArray("layers")::add);
    alarm
        .put("priority", facts.priority().word())
        .put("outOfSpec", facts.outOfSpec())
        .put("state", facts.state())
        .put("since", facts.since().toString())
        .put("link", facts.link().orElse(null));
    facts.firstChecks().forEach(alarm.putArray("firstChecks")::add);
    alarm.put("caution", CAUTIONS);
    return body;
  }

  private static ObjectNode head(String key, String event, String subject) {
    return JsonNodeFactory.instance
        .objectNode()
        .put("version", WEBHOOK_VERSION)
        .put("id", key)
        .put("event", event)
        .put("subject", subject);
  }

  private static String layers(AlarmFacts alarm) {
    return alarm.layers().isEmpty()
        ? "not known"
        : String.join(", ", alarm.layers().stream().map(Wording::name).toList());
  }

  private static String name(String name) {
    return Plain.line(name, LONGEST_NAME);
  }

  private String time(Instant instant) {
    return MINUTE.format(instant.atZone(zone));
  }

  private static void line(StringBuilder text, String line) {
    text.append(line).append('\n');
  }
}
