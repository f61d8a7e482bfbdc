package dev.filmward.pipeline;

import dev.filmward.alarm.Deviation;
import dev.filmward.alarm.Disposition;
import dev.filmward.alarm.Hold;
import dev.filmward.alarm.HoldScope;
import dev.filmward.alarm.RollState;
import dev.filmward.pipeline.Handover.Item;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;

/** The sections of a handover that tell of what was put aside: alarms, and rolls. Stateless. */
final class HandoverAside {
  private static final int MOST_ROLLS = 500;
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  private HandoverAside() {}

  /** What is shelved and what is out of service. */
  static List<Item> alarms(HandoverScope scope) {
    return scope.tables().holds().goingOn().stream()
        .filter(hold -> scope.covers(hold.scope().line()))
        .map(hold -> item(scope, hold))
        .toList();
  }

  static List<Item> rolls(HandoverScope scope) {
    return scope.tables().rolls().newest(Optional.of(RollState.HELD), MOST_ROLLS).stream()
        .filter(held -> scope.covers(held.roll().line()))
        .map(HandoverAside::item)
        .toList();
  }

  private static Item item(HandoverScope scope, Hold hold) {
    String until =
        hold.until()
            .map(end -> "until " + MINUTE.format(end.atZone(scope.plant().zone())) + ", ")
            .orElse("");
    return new Item(
        "hold " + hold.id(),
        hold.scope().line(),
        what(hold.scope()),
        hold.kind().word(),
        until + hold.decision().author() + ": " + hold.decision().reason(),
        Optional.of(hold.decision().at()));
  }

  private static String what(HoldScope scope) {
    String film = scope.structure().map(code -> ", " + code).orElse("");
    String way = scope.deviation().map(Deviation::words).map(words -> ", " + words).orElse("");
    return layers(scope) + film + way;
  }

  private static String layers(HoldScope scope) {
    if (scope.positions().isEmpty()) {
      return "All layers";
    }
    return String.join(
        ", ",
        new TreeSet<>(scope.positions())
            .stream().map(at -> at == 0 ? "Total" : "Layer " + at).toList());
  }

  private static Item item(Disposition held) {
    return new Item(
        "roll " + held.roll(),
        held.roll().line(),
        "Roll " + held.roll().roll() + " of " + held.roll().structure(),
        held.state().word(),
        held.revision().author() + ": " + held.revision().reason(),
        Optional.of(held.revision().at()));
  }
}
