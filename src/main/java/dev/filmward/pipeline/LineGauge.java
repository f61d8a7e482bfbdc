package dev.filmward.pipeline;

import dev.filmward.gauge.calibration.GaugeUse;
import dev.filmward.store.GaugeTable.Kept;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Which gauge measured a line at a moment, as people said. Within one transaction. */
final class LineGauge {
  private final List<GaugeUse> uses;
  private final List<Kept> gauges;

  private LineGauge(List<GaugeUse> uses, List<Kept> gauges) {
    this.uses = uses;
    this.gauges = gauges;
  }

  static LineGauge of(Tables tables, String line) {
    List<GaugeUse> uses =
        tables.gauges().uses().stream().filter(use -> use.line().equals(line)).toList();
    return new LineGauge(uses, uses.isEmpty() ? List.of() : tables.gauges().all());
  }

  /** Its name; empty where nobody said which gauge it was. */
  String nameAt(Instant moment) {
    Optional<GaugeUse> held = Optional.empty();
    for (GaugeUse use : uses) {
      boolean holds = !use.holdsFrom().isAfter(moment);
      if (holds && held.map(known -> !use.holdsFrom().isBefore(known.holdsFrom())).orElse(true)) {
        held = Optional.of(use);
      }
    }
    return held.map(GaugeUse::gauge).orElse("");
  }

  /** Its centre frequency; empty where nobody said which gauge it was. */
  OptionalDouble mhzAt(Instant moment) {
    String name = nameAt(moment);
    return gauges.stream()
        .filter(kept -> kept.gauge().name().equals(name))
        .mapToDouble(kept -> kept.gauge().centreMhz())
        .findFirst();
  }
}
