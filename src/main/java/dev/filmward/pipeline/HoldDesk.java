package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.Hold;
import dev.filmward.alarm.Hold.Kind;
import dev.filmward.alarm.HoldScope;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.store.HoldTable.Kept;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * People hold alarms back: shelve them for a while, or take what they watch out of service.
 * Thread-safe; each change is one transaction.
 */
public final class HoldDesk {
  private final Plant plant;
  private final AlarmNews.Source news;
  private final Consumer<PlantEvent> listener;

  HoldDesk(Plant plant, AlarmNews.Source news, Consumer<PlantEvent> listener) {
    this.plant = plant;
    this.news = news;
    this.listener = listener;
  }

  /**
   * Shelves what an alarm is about: it and alarms to come of the same layers are held back until
   * then.
   *
   * @throws NoSuchElementException if there is no such alarm
   * @throws IllegalStateException if it is over, or held back before
   * @throws IllegalArgumentException if the end is not within {@link Hold#LONGEST_SHELF}
   */
  public Hold shelve(long alarmId, Instant until, Decision decision) {
    return change(
        tables -> {
          Alarm alarm =
              tables
                  .alarms()
                  .find(alarmId)
                  .orElseThrow(() -> new NoSuchElementException("no alarm " + alarmId));
          if (!alarm.state().asksForSomebody()) {
            throw new IllegalStateException(
                "there is nothing to shelve: the alarm is " + alarm.state().word());
          }
          HoldScope scope = HoldScope.of(alarm.subject());
          return add(tables, new Hold(0, Kind.SHELVED, scope, Optional.of(until), decision));
        });
  }

  /** Takes alarms out of service until somebody puts them back. */
  public Hold takeOut(HoldScope scope, Decision decision) {
    return change(
        tables -> {
          LineDesk.requireLine(tables, scope.line());
          return add(tables, new Hold(0, Kind.OUT_OF_SERVICE, scope, Optional.empty(), decision));
        });
  }

  /**
   * Ends a hold before its time.
   *
   * @throws NoSuchElementException if there is none of that kind and number
   * @throws IllegalStateException if it has ended
   */
  public void end(long holdId, Kind kind, Decision decision) {
    change(
        tables -> {
          Kept kept =
              tables
                  .holds()
                  .find(holdId)
                  .filter(found -> found.hold().kind() == kind)
                  .orElseThrow(
                      () ->
                          new NoSuchElementException(
                              "nothing is " + kind.word() + " as " + holdId));
          if (kept.end().isPresent()) {
            throw new IllegalStateException(
                kept.end().get().author() + " has ended it before: " + kept.end().get().reason());
          }
          return end(tables, kept.hold(), decision);
        });
  }

  /** Those that go on, oldest first. */
  public List<Hold> goingOn() {
    Instant now = plant.clock().instant();
    return plant.store().read(tables -> tables.holds().goingOn()).stream()
        .filter(hold -> !hold.isOver(now))
        .toList();
  }

  /** Ends those whose time is over, so that what goes on comes before people again. */
  public void endOver() {
    Instant now = plant.clock().instant();
    boolean some =
        plant.store().read(tables -> tables.holds().goingOn()).stream()
            .anyMatch(hold -> hold.isOver(now));
    if (some) {
      plant.store().write(tables -> endOver(tables, now)).forEach(listener);
    }
  }

  private List<PlantEvent> endOver(Tables tables, Instant now) {
    Decision over = new Decision(AlarmKeeper.SYSTEM, "its time on the shelf was over", now);
    List<PlantEvent> events = new ArrayList<>();
    for (Hold hold : tables.holds().goingOn()) {
      if (hold.isOver(now)) {
        events.addAll(end(tables, hold, over).events());
      }
    }
    return events;
  }

  private record Held(Hold hold, List<PlantEvent> events) {}

  private interface Change {
    Held in(Tables tables);
  }

  private Hold change(Change change) {
    Held held = plant.store().write(change::in);
    held.events().forEach(listener);
    return held.hold();
  }

  private Held add(Tables tables, Hold hold) {
    Hold kept = tables.holds().add(hold);
    tables.audit().add(Audited.held(kept));
    return new Held(kept, refresh(tables, kept, hold.decision()));
  }

  private Held end(Tables tables, Hold hold, Decision decision) {
    tables.holds().end(hold.id(), decision);
    tables.audit().add(Audited.released(hold, decision));
    return new Held(hold, refresh(tables, hold, decision));
  }

  private List<PlantEvent> refresh(Tables tables, Hold hold, Decision decision) {
    return AlarmMoves.refresh(news.begin(tables), hold.scope().line(), decision);
  }
}
