package dev.filmward.pipeline;

import dev.filmward.store.Tables;
import dev.filmward.telling.Message;
import dev.filmward.telling.OutboxEntry;
import dev.filmward.telling.OutboxEntry.Due;
import dev.filmward.telling.OutboxEntry.Hold;
import dev.filmward.telling.OutboxEntry.Progress;
import dev.filmward.telling.OutboxEntry.Topic;
import dev.filmward.telling.Post;
import dev.filmward.telling.Rule;
import dev.filmward.telling.RuleVersion;
import dev.filmward.telling.Sent;
import dev.filmward.telling.Sent.Outcome;
import dev.filmward.telling.Wording;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Sends what is due in the outbox. Each rule's messages go one after another, different rules side
 * by side, so that a recipient that cannot be reached holds up nobody else. A message is noted as
 * sent after it was taken: where the process ends between, it goes once more under the same key;
 * where only the database cannot be written, it is noted later and not sent again. Thread-safe.
 */
final class Sender {
  private static final Logger LOG = LoggerFactory.getLogger(Sender.class);

  private final Plant plant;
  private final Post post;
  private final Passwords passwords;
  private final Executor executor;
  private final Set<Long> underWay = ConcurrentHashMap.newKeySet();
  private final Map<Long, Sent> notNoted = new ConcurrentHashMap<>();

  Sender(Plant plant, Post post, Passwords passwords, Executor executor) {
    this.plant = plant;
    this.post = post;
    this.passwords = passwords;
    this.executor = executor;
  }

  /** Hands all that is due to the executor, but for rules whose messages are under way. */
  void round() {
    Instant now = plant.clock().instant();
    Map<Long, List<OutboxEntry>> due = due(now);
    if (due.values().stream().flatMap(List::stream).anyMatch(OutboxEntry::isHeld)) {
      letGo(due, now);
      due = due(now);
    }
    due.forEach(this::hand);
  }

  private Map<Long, List<OutboxEntry>> due(Instant now) {
    Map<Long, List<OutboxEntry>> byRule = new LinkedHashMap<>();
    for (OutboxEntry entry : plant.store().read(tables -> tables.outbox().due(now))) {
      byRule.computeIfAbsent(entry.ruleId(), id -> new ArrayList<>()).add(entry);
    }
    return byRule;
  }

  private void hand(long ruleId, List<OutboxEntry> entries) {
    if (underWay.add(ruleId)) {
      executor.execute(
          () -> {
            try {
              sendAll(entries);
            } catch (RuntimeException e) {
              LOG.warn("What became of a message could not be noted; tried again", e);
            } finally {
              underWay.remove(ruleId);
            }
          });
    }
  }

  /** What was held back goes as it is where it is one message, else as one summary. */
  private void letGo(Map<Long, List<OutboxEntry>> due, Instant now) {
    plant
        .store()
        .change(
            tables ->
                due.forEach(
                    (ruleId, entries) -> {
                      if (entries.stream().anyMatch(OutboxEntry::isHeld)) {
                        letGo(tables, ruleId, now);
                      }
                    }));
  }

  private void letGo(Tables tables, long ruleId, Instant now) {
    List<OutboxEntry> held = tables.outbox().held(ruleId);
    if (held.size() == 1) {
      tables.outbox().release(held.get(0).id(), now);
    } else if (!held.isEmpty()) {
      long summary = tables.outbox().add(summary(tables, held, now));
      held.forEach(entry -> tables.outbox().sumUp(entry.id(), summary));
    }
  }

  private OutboxEntry summary(Tables tables, List<OutboxEntry> held, Instant now) {
    OutboxEntry newest = held.get(held.size() - 1);
    Message message =
        tables
            .telling()
            .rule(newest.ruleId())
            .map(version -> version.rule().recipient().address().channel())
            .map(
                channel ->
                    new Wording(plant.zone())
                        .summary(
                            channel,
                            UUID.randomUUID().toString(),
                            held.stream().map(OutboxEntry::message).toList()))
            .orElse(newest.message());
    return new OutboxEntry(
        0,
        newest.ruleId(),
        new Topic(Optional.empty(), OutboxEntry.SUMMARY, "", newest.topic().priority()),
        message,
        new Due(now, now, now, Hold.NOT_HELD),
        Progress.WAITING);
  }

  private void sendAll(List<OutboxEntry> entries) {
    for (OutboxEntry entry : entries) {
      Outcome outcome = send(entry);
      if (outcome == Outcome.NO_WAY || Thread.currentThread().isInterrupted()) {
        return;
      }
    }
  }

  private Outcome send(OutboxEntry entry) {
    Optional<RuleVersion> rule =
        plant
            .store()
            .read(tables -> tables.telling().rule(entry.ruleId()))
            .filter(RuleVersion::isOn);
    if (rule.isEmpty()) {
      giveUp(entry);
      return Outcome.REFUSED;
    }
    Rule.Recipient to = rule.get().rule().recipient();
    Sent sent = notNoted.get(entry.id());
    if (sent == null) {
      sent = attempt(entry, rule.get().rule());
      notNoted.put(entry.id(), sent);
    }
    note(entry, sent, to);
    notNoted.remove(entry.id());
    return sent.outcome();
  }

  private Sent attempt(OutboxEntry entry, Rule rule) {
    Passwords.Way way = passwords.with(plant.store(), rule);
    try {
      return way.send(post, entry.message());
    } catch (RuntimeException e) {
      LOG.warn("Message {} cannot be sent", entry.id(), e);
      return new Sent(Outcome.REFUSED, "it cannot be sent as it is; the server's log has details");
    }
  }

  private void note(OutboxEntry entry, Sent sent, Rule.Recipient to) {
    plant.store().change(tables -> note(tables, entry, sent, to));
  }

  private void giveUp(OutboxEntry entry) {
    Instant now = plant.clock().instant();
    String words = "the rule was turned off or removed before it could be sent";
    plant
        .store()
        .change(tables -> tables.outbox().failed(entry.id(), now, words, Optional.empty()));
  }

  private void note(Tables tables, OutboxEntry entry, Sent sent, Rule.Recipient to) {
    Instant now = plant.clock().instant();
    if (sent.isTaken()) {
      tables.outbox().sent(entry.id(), now, to.address().text());
      return;
    }
    Optional<Instant> next = entry.tryAgain(now);
    tables.outbox().failed(entry.id(), now, sent.words(), next);
    if (sent.outcome() == Outcome.NO_WAY) {
      next.ifPresent(until -> tables.outbox().postpone(entry.ruleId(), until));
    }
  }
}
