package dev.filmward.pipeline;

import dev.filmward.gauge.calibration.CheckReading;
import dev.filmward.gauge.calibration.GaugeUse;
import dev.filmward.pipeline.CheckDesk.Charted;
import dev.filmward.pipeline.CheckDesk.Doubt;
import dev.filmward.pipeline.Handover.Item;
import dev.filmward.store.AuditEntry;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The section of a handover that tells of gauges: calibrations, readings that were given another
 * velocity, check standards of the shift, and doubtful samples that nobody has decided about.
 * Stateless.
 */
final class HandoverGauges {
  private static final Set<String> TOLD = Set.of("calibrate", "rescale", "gauge");

  private HandoverGauges() {}

  static List<Item> items(HandoverScope scope) {
    List<Item> items = new ArrayList<>();
    CheckDesk.All checks = CheckDesk.read(scope.tables());
    for (Doubt doubt : checks.doubts()) {
      if (doubt.verdict().isEmpty() && doubt.failed().at().isBefore(scope.shift().to())) {
        doubt.samples().forEach((line, count) -> addDoubt(items, scope, doubt, line));
      }
    }
    scope.tables().shiftFacts(scope.shift().from(), scope.shift().to()).audited().stream()
        .filter(entry -> TOLD.contains(entry.action()))
        .filter(entry -> isOfLine(scope, entry))
        .map(HandoverGauges::audited)
        .forEach(items::add);
    checks.standards().forEach(standard -> addChecks(items, scope, standard));
    return items;
  }

  private static void addDoubt(List<Item> items, HandoverScope scope, Doubt doubt, String line) {
    if (scope.covers(line)) {
      items.add(
          new Item(
              "doubt " + doubt.failed().id() + " " + line,
              line,
              "Doubtful samples of " + line + ", gauge " + doubt.gauge(),
              "to decide",
              words("a check read %.2f um, beyond its limits", doubt.failed().um()),
              Optional.of(doubt.failed().at())));
    }
  }

  /** The subject of a re-scaling begins with its line; anything else is about a gauge. */
  private static boolean isOfLine(HandoverScope scope, AuditEntry entry) {
    return !entry.action().equals("rescale")
        || scope.line().isEmpty()
        || entry.subject().startsWith(scope.line() + ", ");
  }

  private static Item audited(AuditEntry entry) {
    String line = entry.action().equals("rescale") ? entry.subject().split(", ", 2)[0] : "";
    return new Item(
        entry.action() + " " + entry.subject() + " " + entry.at(),
        line,
        entry.subject(),
        entry.action().equals("rescale") ? "re-scaled" : entry.action(),
        entry.by() + ": " + entry.detail(),
        Optional.of(entry.at()));
  }

  private static void addChecks(List<Item> items, HandoverScope scope, Charted standard) {
    String gauge = standard.standard().gauge();
    for (CheckReading reading : standard.readings()) {
      boolean isOfShift =
          !reading.at().isBefore(scope.shift().from()) && reading.at().isBefore(scope.shift().to());
      if (isOfShift && measures(scope, gauge, reading.at())) {
        items.add(check(standard, reading));
      }
    }
  }

  private static Item check(Charted standard, CheckReading reading) {
    String film = standard.standard().film().name();
    String note = reading.note().isEmpty() ? "" : ": " + reading.note();
    return new Item(
        "check " + reading.id(),
        "",
        "Check standard " + film + ", gauge " + standard.standard().gauge(),
        standard.chart().isBeyond(reading.um()) ? "failed" : "good",
        words("%.2f um, ", reading.um()) + reading.by() + note,
        Optional.of(reading.at()));
  }

  /** Whether a gauge measured the line of the handover at a moment; of all lines, any gauge. */
  private static boolean measures(HandoverScope scope, String gauge, Instant at) {
    Map<String, GaugeUse> held = new TreeMap<>();
    for (GaugeUse use : scope.tables().gauges().uses()) {
      if (!use.holdsFrom().isAfter(at)) {
        held.merge(use.line(), use, (a, b) -> b.holdsFrom().isBefore(a.holdsFrom()) ? a : b);
      }
    }
    Set<String> lines =
        held.values().stream()
            .filter(use -> use.gauge().equals(gauge))
            .map(GaugeUse::line)
            .collect(Collectors.toSet());
    return scope.line().isEmpty() || lines.contains(scope.line());
  }

  private static String words(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
