package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlarmTitle;
import dev.filmward.alarm.Priority;
import dev.filmward.alarm.Subject;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.store.Tables;
import dev.filmward.telling.AlarmFacts;
import dev.filmward.telling.AlarmFacts.Made;
import dev.filmward.telling.Happening;
import dev.filmward.telling.Message;
import dev.filmward.telling.News;
import dev.filmward.telling.OutboxEntry;
import dev.filmward.telling.OutboxEntry.Due;
import dev.filmward.telling.OutboxEntry.Hold;
import dev.filmward.telling.OutboxEntry.Progress;
import dev.filmward.telling.OutboxEntry.Topic;
import dev.filmward.telling.Rule;
import dev.filmward.telling.RuleVersion;
import dev.filmward.telling.Settings;
import dev.filmward.telling.Wording;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;

/** Puts messages into the outbox, as the rules say. For one thread, for one transaction. */
final class Teller {
  private final Tables tables;
  private final List<Rule> rules;
  private final Settings settings;
  private final ZoneId zone;
  private final Instant now;

  private Teller(Tables tables, ZoneId zone, Instant now) {
    this.tables = tables;
    this.rules =
        tables.telling().rules().stream().filter(RuleVersion::isOn).map(RuleVersion::rule).toList();
    this.settings = tables.telling().settings().settings();
    this.zone = zone;
    this.now = now;
  }

  static Teller begin(Tables tables, ZoneId zone, Instant now) {
    return new Teller(tables, zone, now);
  }

  /**
   * That somebody is being told.
   *
   * @param heldUntil where quiet rules hold it back
   */
  record Told(String name, Optional<Instant> heldUntil) {}

  boolean tellsAnybody() {
    return !rules.isEmpty();
  }

  boolean wants(String line, Priority priority, Happening happening) {
    return rules.stream().anyMatch(rule -> rule.wants(line, priority, happening));
  }

  Instant now() {
    return now;
  }

  Settings settings() {
    return settings;
  }

  /** Tells all whose rules want it, but for those who were told the same lately. */
  List<Told> tell(News news, Subject subject) {
    List<Told> told = new ArrayList<>();
    AlarmFacts alarm = news.alarm();
    for (Rule rule : rules) {
      Topic topic =
          new Topic(
              Optional.of(alarm.id()), news.happening().word(), about(subject), alarm.priority());
      if (rule.wants(alarm.made().line(), alarm.priority(), news.happening())
          && !isToldLately(rule, topic)) {
        told.add(add(rule, topic, news));
      }
    }
    return told;
  }

  /** What an alarm's message says of it. */
  AlarmFacts facts(Alarm alarm, Structures structures) {
    Subject subject = alarm.subject();
    Optional<Structure> structure = structures.find(subject.structure());
    return new AlarmFacts(
        alarm.id(),
        new Made(subject.line(), subject.structure()),
        structure.map(known -> AlarmTitle.of(subject, known)).orElse(subject.deviation().words()),
        subject.members().stream().map(Characteristic::name).toList(),
        alarm.excursion().priority(),
        alarm.excursion().outOfSpec(),
        alarm.state().word(),
        alarm.excursion().course().openedAt(),
        structure
            .map(known -> tables.checks().current().of(subject.pattern(known)))
            .orElse(List.of()),
        settings.link(alarm.id()));
  }

  private boolean isToldLately(Rule rule, Topic topic) {
    if (rule.quiet().sameAgainAfter().isZero()) {
      return false;
    }
    return tables.outbox().told(rule.id(), topic, now.minus(rule.quiet().sameAgainAfter())).stream()
        .anyMatch(priority -> priority.compareTo(topic.priority()) >= 0);
  }

  private Told add(Rule rule, Topic topic, News news) {
    Optional<Instant> until =
        rule.quiet().heldUntil(now, zone, topic.priority(), tables.outbox().lately(rule.id(), now));
    Message message =
        new Wording(zone)
            .message(rule.recipient().address().channel(), UUID.randomUUID().toString(), news);
    Instant due = until.orElse(now);
    Hold hold = until.isPresent() ? Hold.HELD : Hold.NOT_HELD;
    tables
        .outbox()
        .add(
            new OutboxEntry(
                0, rule.id(), topic, message, new Due(now, due, due, hold), Progress.WAITING));
    return new Told(rule.recipient().name(), until);
  }

  private static String about(Subject subject) {
    return subject.members().stream()
        .map(member -> member.kind().word() + member.position())
        .collect(
            Collectors.joining(
                " ",
                subject.line() + "\n" + subject.structure() + "\n" + subject.deviation() + "\n",
                ""));
  }
}
