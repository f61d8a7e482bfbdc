package dev.filmward.pipeline;

import dev.filmward.alarm.Acknowledgement;
import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.Finding;
import dev.filmward.pipeline.Handover.Item;
import java.util.List;
import java.util.Optional;

/** The sections of a handover that tell of alarms. Stateless. */
final class HandoverAlarms {
  private HandoverAlarms() {}

  static List<Item> open(HandoverScope scope) {
    return scope.openAlarms().stream().map(alarm -> item(scope, alarm, taken(alarm))).toList();
  }

  /** Somebody took it, and nobody has said what it was. */
  static List<Item> withoutCause(HandoverScope scope) {
    return scope.openAlarms().stream()
        .filter(alarm -> alarm.acknowledgement().isPresent())
        .filter(alarm -> cause(alarm).filter(found -> !isWanting(found)).isEmpty())
        .map(alarm -> item(scope, alarm, taken(alarm)))
        .toList();
  }

  static List<Item> closed(HandoverScope scope) {
    return scope.tables().shiftFacts(scope.shift().from(), scope.shift().to()).explained().stream()
        .flatMap(id -> scope.tables().alarms().find(id).stream())
        .filter(alarm -> scope.covers(alarm.subject().line()) && alarm.isClosed())
        .map(alarm -> item(scope, alarm, found(alarm)))
        .toList();
  }

  private static Item item(HandoverScope scope, Alarm alarm, String detail) {
    return new Item(
        "alarm " + alarm.id(),
        alarm.subject().line(),
        scope.title(alarm),
        alarm.state().word(),
        alarm.excursion().priority().word() + " priority" + detail,
        Optional.of(alarm.excursion().course().openedAt()));
  }

  private static String taken(Alarm alarm) {
    return alarm
        .acknowledgement()
        .map(Acknowledgement::by)
        .map(by -> ", taken by " + by)
        .orElse("");
  }

  private static String found(Alarm alarm) {
    return alarm
        .finding()
        .map(found -> ", " + found.cause() + "; " + found.action() + " (" + found.by() + ")")
        .orElse("");
  }

  private static Optional<String> cause(Alarm alarm) {
    return alarm.finding().map(Finding::cause);
  }

  private static boolean isWanting(String cause) {
    return cause.equals(Finding.NOT_FOUND_YET);
  }
}
