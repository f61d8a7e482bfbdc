package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.Finding;
import dev.filmward.film.Structures;
import dev.filmward.store.Tables;
import dev.filmward.telling.Change;
import dev.filmward.telling.Escalation.Raised;
import dev.filmward.telling.Happening;
import dev.filmward.telling.News;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;

/**
 * Hears what one transaction does to alarms, and at its end puts what people are to be told of it
 * into the outbox, in the same transaction. Of an alarm that changes several times only the
 * difference between its first and its last state is told. For one thread, for one transaction.
 */
final class AlarmNews {
  private final Tables tables;
  private final Structures structures;
  private final ZoneId zone;
  private final Instant now;
  private final Map<Long, Change> changes = new LinkedHashMap<>();
  private final List<Alarm> withdrawn = new ArrayList<>();

  AlarmNews(Tables tables, Structures structures, ZoneId zone, Instant now) {
    this.tables = tables;
    this.structures = structures;
    this.zone = zone;
    this.now = now;
  }

  /** Makes what hears of one transaction. */
  @FunctionalInterface
  interface Source {
    AlarmNews begin(Tables tables);

    /** With the structures and the time of each transaction's beginning. */
    static Source of(Supplier<Structures> structures, ZoneId zone, Supplier<Instant> clock) {
      return tables -> new AlarmNews(tables, structures.get(), zone, clock.get());
    }
  }

  /** The tables of the transaction. */
  Tables tables() {
    return tables;
  }

  /**
   * An alarm is no longer as it was.
   *
   * @param before empty for a new one
   * @param after with its id
   */
  void changed(Optional<Alarm> before, Alarm after) {
    Change earlier = changes.get(after.id());
    changes.put(after.id(), new Change(earlier == null ? before : earlier.before(), after));
  }

  /** An alarm that nobody touched is there no more. */
  void withdrawn(Alarm alarm) {
    changes.remove(alarm.id());
    withdrawn.add(alarm);
  }

  /** Writes what people are to be told. */
  void write() {
    for (Alarm alarm : withdrawn) {
      tables.outbox().withdraw(alarm.id());
      tables.telling().forget(alarm.id());
    }
    List<Change> told =
        changes.values().stream().filter(change -> !change.happenings().isEmpty()).toList();
    if (told.isEmpty()) {
      return;
    }
    Teller teller = Teller.begin(tables, zone, now);
    if (teller.tellsAnybody()) {
      told.forEach(change -> tell(teller, change));
    }
  }

  private void tell(Teller teller, Change change) {
    Alarm alarm = change.now();
    Set<Happening> happenings = change.happenings();
    Optional<Raised> raised = tables.telling().raised(alarm.id());
    if (happenings.contains(Happening.OPENED) && (raised.isEmpty() || change.isBack())) {
      tables.telling().keep(new Raised(alarm.id(), now, Optional.empty()));
    } else if (raised.isEmpty()) {
      return;
    }
    for (Happening happening : happenings) {
      News news =
          new News(happening, teller.facts(alarm, structures), words(happening, change), now);
      teller.tell(news, alarm.subject());
    }
  }

  private static String words(Happening happening, Change change) {
    Alarm alarm = change.now();
    return switch (happening) {
      case OPENED -> opened(change);
      case ESCALATED -> "";
      case RETURNED ->
          alarm.acknowledgement().isPresent() ? "" : "Nobody has taken it while it went on.";
      case CLOSED -> alarm.finding().map(AlarmNews::found).orElse("");
    };
  }

  private static String opened(Change change) {
    if (!Change.isWaiting(change.now())) {
      return "It is over again already; nobody has taken it.";
    }
    if (change.before().isEmpty()) {
      return "";
    }
    return change.isBack() || !Change.isWaiting(change.before().get())
        ? "It signals again."
        : "It has become more urgent.";
  }

  private static String found(Finding finding) {
    return "Cause: " + finding.cause() + ". Action: " + finding.action() + ".";
  }
}
