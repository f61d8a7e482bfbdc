package dev.filmward.pipeline;

import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import dev.filmward.gauge.calibration.Calibration;
import dev.filmward.gauge.calibration.LayerScalings;
import dev.filmward.gauge.calibration.ScaleStep;
import dev.filmward.gauge.calibration.Scaling;
import dev.filmward.pipeline.LineEvent.Kind;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.StructureTable.Given;
import dev.filmward.store.StructureTable.KeptFile;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;

/**
 * What was decided about the films of a line, as events: limits, versions of structures,
 * re-scalings, calibrations of its gauge. Some of them lie outside the span. Within one
 * transaction, for one thread.
 */
final class LineDecisions {
  private final Plant plant;
  private final Tables tables;
  private final String line;
  private final Consumer<LineEvent> found;

  LineDecisions(Plant plant, Tables tables, String line, Consumer<LineEvent> found) {
    this.plant = plant;
    this.tables = tables;
    this.line = line;
    this.found = found;
  }

  /**
   * Tells of them in any order.
   *
   * @param structures codes of what the line makes
   */
  void tell(List<String> structures, Span span) {
    for (String structure : structures) {
      tellLimits(structure);
      tellScalings(structure);
    }
    tellStructures(structures, span);
    tellCalibrations(structures, span);
  }

  private void tell(Instant at, Kind kind, Map<String, String> said) {
    found.accept(LineEvent.of(at, kind, said));
  }

  private void tellLimits(String structure) {
    for (LimitsVersion version : tables.limits().of(new Series(line, structure, 0))) {
      boolean isFirst = true;
      for (StateChange change : version.changes()) {
        tell(
            isFirst ? version.holdsFrom() : change.decision().at(),
            Kind.LIMITS,
            Map.of(
                "version", String.valueOf(version.version()),
                "state", change.state().word(),
                "structure", structure,
                "by", change.decision().author(),
                "reason", change.decision().reason()));
        isFirst = false;
      }
    }
  }

  private void tellScalings(String structure) {
    tables
        .scalings()
        .of(line, structure)
        .byPosition()
        .forEach((position, layer) -> tellScalings(structure, position, layer));
  }

  /** A version that was taken back holds from no moment any more; that it was is told. */
  private void tellScalings(String structure, int position, LayerScalings layer) {
    for (Scaling version : layer.versions()) {
      if (version.isBack()) {
        String takesBack = String.valueOf(version.takesBack());
        tell(
            version.word().at(),
            Kind.RESCALED,
            with(said(structure, position, version), "takesBack", takesBack));
      } else if (!layer.takenBack().contains(version.version())) {
        for (ScaleStep step : version.steps()) {
          tell(step.holdsFrom(), Kind.RESCALED, said(structure, position, version));
        }
      }
    }
  }

  private Map<String, String> said(String structure, int position, Scaling version) {
    return Map.of(
        "layer", layer(structure, position),
        "position", String.valueOf(position),
        "version", String.valueOf(version.version()),
        "structure", structure,
        "by", version.word().by(),
        "reason", version.word().reason());
  }

  private String layer(String structure, int position) {
    return plant
        .structures()
        .find(structure)
        .map(Structure::reported)
        .filter(all -> position <= all.size())
        .map(all -> all.get(position - 1))
        .map(ReportedLayer::name)
        .orElse(String.valueOf(position));
  }

  /** The first version of a structure changes nothing. */
  private void tellStructures(List<String> structures, Span span) {
    List<KeptFile> files = tables.structures().all();
    if (files.stream().map(LineDecisions::heldFrom).noneMatch(at -> isWithin(at, span))) {
      return;
    }
    StructureHistory.of(files, List.of(), plant.clock().instant()).stream()
        .filter(known -> structures.contains(known.code()))
        .forEach(
            known ->
                known.versions().stream()
                    .filter(version -> version.number() > 1)
                    .filter(version -> version.standing() != StructureVersion.Standing.PLANNED)
                    .forEach(version -> tellVersion(known, version)));
  }

  private void tellVersion(KnownStructure known, StructureVersion version) {
    Given given = version.file().given();
    Map<String, String> said =
        Map.of(
            "structure", known.code(),
            "version", String.valueOf(version.number()),
            "by", given.by(),
            "reason", given.reason());
    tell(heldFrom(version.file()), Kind.STRUCTURE, said);
  }

  private static Instant heldFrom(KeptFile file) {
    return file.given().holdsFrom().orElse(file.given().receivedAt());
  }

  private static boolean isWithin(Instant at, Span span) {
    return !at.isBefore(span.from()) && !at.isAfter(span.to());
  }

  /** Of the gauge that measured the line then, for a film that the line makes or for any. */
  private void tellCalibrations(List<String> structures, Span span) {
    LineGauge gauge = LineGauge.of(tables, line);
    tables.calibrations().between(span.from(), span.to().plusMillis(1)).stream()
        .filter(done -> gauge.nameAt(done.word().at()).equals(done.subject().gauge()))
        .filter(
            done ->
                done.subject().structure().isEmpty()
                    || structures.contains(done.subject().structure()))
        .forEach(this::tellCalibration);
  }

  private void tellCalibration(Calibration done) {
    Calibration.Subject subject = done.subject();
    Map<String, String> said =
        Map.of(
            "calibration", String.valueOf(done.id()),
            "gauge", subject.gauge(),
            "layer", subject.layer().isEmpty() ? subject.resin() : subject.layer(),
            "by", done.word().by(),
            "reason", done.word().reason());
    tell(
        done.word().at(),
        Kind.CALIBRATED,
        subject.structure().isEmpty() ? said : with(said, "structure", subject.structure()));
  }

  private static Map<String, String> with(Map<String, String> said, String name, String value) {
    Map<String, String> more = new TreeMap<>(said);
    more.put(name, value);
    return more;
  }
}
