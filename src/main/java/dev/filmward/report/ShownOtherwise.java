package dev.filmward.report;

import dev.filmward.chart.LimitsVersion;
import dev.filmward.film.Characteristic;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import dev.filmward.gauge.calibration.LayerScalings;
import dev.filmward.gauge.calibration.ScaleStep;
import dev.filmward.gauge.calibration.Scaling;
import dev.filmward.gauge.calibration.TemperatureModel;
import dev.filmward.pipeline.ScaledLimits;
import dev.filmward.report.FilmWeek.ScalingWeek;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * Reads how a film's readings of a week are shown otherwise than the gauge exported them, and which
 * limits were computed of readings at another velocity. Within one transaction, for one thread.
 */
final class ShownOtherwise {
  private final Tables tables;
  private final String line;
  private final Structure structure;
  private final ReportWeek week;

  ShownOtherwise(Tables tables, String line, Structure structure, ReportWeek week) {
    this.tables = tables;
    this.line = line;
    this.structure = structure;
    this.week = week;
  }

  /**
   * By the time from which they hold, then by layer; what held when the week began is the first.
   */
  List<ScalingWeek> scalings() {
    List<ScalingWeek> found = new ArrayList<>();
    for (ReportedLayer layer : structure.reported()) {
      LayerScalings versions = tables.scalings().of(line, structure.code()).of(layer.position());
      moments(versions).stream()
          .flatMap(moment -> shown(layer, versions, moment).stream())
          .distinct()
          .forEach(found::add);
    }
    found.sort(Comparator.comparing(ScalingWeek::from).thenComparingInt(ScalingWeek::position));
    return found;
  }

  private NavigableSet<Instant> moments(LayerScalings versions) {
    NavigableSet<Instant> moments = new TreeSet<>();
    moments.add(week.from());
    versions.versions().stream()
        .flatMap(version -> version.steps().stream())
        .map(ScaleStep::holdsFrom)
        .filter(week::contains)
        .forEach(moments::add);
    return moments;
  }

  private static Optional<ScalingWeek> shown(
      ReportedLayer layer, LayerScalings versions, Instant moment) {
    Optional<Scaling> version = versions.inForceAt(moment);
    return version
        .flatMap(held -> held.at(moment))
        .map(step -> shown(layer, version.orElseThrow(), step));
  }

  private static ScalingWeek shown(ReportedLayer layer, Scaling version, ScaleStep step) {
    return new ScalingWeek(
        step.holdsFrom(),
        layer.position(),
        layer.name(),
        version.version(),
        step.scale().factor(),
        step.scale().offsetUm(),
        step.velocityMps(),
        number(step.temperature().map(TemperatureModel::percentPerKelvin)),
        number(step.temperature().map(TemperatureModel::atC)),
        version.word().by(),
        version.word().reason());
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }

  /** Versions of limits that held in the week and do not fit what they are drawn over. */
  List<Integer> limits() {
    TreeSet<Integer> otherwise = new TreeSet<>();
    for (Characteristic each : characteristics()) {
      Series series = new Series(line, structure.code(), each.position());
      List<LimitsVersion> versions = tables.limits().of(series);
      ScaledLimits.of(tables, series).otherwise(versions).stream()
          .filter(number -> holds(versions, number))
          .forEach(otherwise::add);
    }
    return List.copyOf(otherwise);
  }

  private boolean holds(List<LimitsVersion> versions, int number) {
    return versions.stream()
        .filter(version -> version.holdsFrom().isBefore(week.to()))
        .anyMatch(version -> version.version() == number);
  }

  private List<Characteristic> characteristics() {
    List<Characteristic> all = new ArrayList<>();
    all.add(Characteristic.total());
    structure.reported().forEach(layer -> all.add(Characteristic.layer(layer)));
    return all;
  }
}
