package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.pipeline.Teller.Told;
import dev.filmward.store.AlarmTable.HistoryEntry;
import dev.filmward.store.Tables;
import dev.filmward.telling.Change;
import dev.filmward.telling.Escalation.Raised;
import dev.filmward.telling.Happening;
import dev.filmward.telling.InWords;
import dev.filmward.telling.News;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Tells others as well of alarms that nobody took in time, and notes it in their history. What was
 * escalated is kept with it in one transaction, so that a restart escalates nothing twice.
 * Thread-safe.
 */
final class Escalating {
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  private final Plant plant;

  Escalating(Plant plant) {
    this.plant = plant;
  }

  /** Escalates what is due now. */
  void tick(Instant now) {
    if (plant.store().read(tables -> tables.telling().waiting()).isEmpty()) {
      return;
    }
    List<Alarm> escalated = plant.store().write(tables -> escalate(tables, now));
    for (Alarm alarm : escalated) {
      plant.tell(
          new PlantEvent.AlarmChanged(alarm.id(), alarm.subject().line(), alarm.state().word()));
    }
  }

  private List<Alarm> escalate(Tables tables, Instant now) {
    Teller teller = Teller.begin(tables, plant.zone(), now);
    List<Alarm> escalated = new ArrayList<>();
    for (Raised raised : tables.telling().waiting()) {
      Optional<Alarm> due =
          tables
              .alarms()
              .find(raised.alarmId())
              .filter(Change::isWaiting)
              .filter(alarm -> isDue(teller, raised, alarm));
      due.ifPresent(alarm -> escalate(tables, teller, alarm, raised));
      due.ifPresent(escalated::add);
    }
    return escalated;
  }

  private static boolean isDue(Teller teller, Raised raised, Alarm alarm) {
    return teller.settings().escalation().isDue(raised, alarm.excursion().priority(), teller.now())
        && teller.wants(alarm.subject().line(), alarm.excursion().priority(), Happening.ESCALATED);
  }

  private void escalate(Tables tables, Teller teller, Alarm alarm, Raised raised) {
    Instant now = teller.now();
    String waited = InWords.of(Duration.between(raised.at(), now));
    News news =
        new News(
            Happening.ESCALATED,
            teller.facts(alarm, plant.structures()),
            "Nobody has taken it for " + waited + ".",
            now);
    List<Told> told = teller.tell(news, alarm.subject());
    tables.telling().keep(new Raised(alarm.id(), raised.at(), Optional.of(now)));
    if (!told.isEmpty()) {
      String what = "not taken after " + waited + ": " + words(told);
      tables.alarms().note(alarm.id(), new HistoryEntry(now, AlarmKeeper.SYSTEM, what));
    }
  }

  private String words(List<Told> told) {
    return "told " + told.stream().map(this::words).collect(Collectors.joining(", "));
  }

  private String words(Told told) {
    return told.name()
        + told.heldUntil()
            .map(until -> " (at " + TIME.format(until.atZone(plant.zone())) + ", left alone now)")
            .orElse("");
  }
}
