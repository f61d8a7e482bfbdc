package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.Course;
import dev.filmward.alarm.LineMode;
import dev.filmward.alarm.LineModeChange;
import dev.filmward.diagnosis.Boundary;
import dev.filmward.diagnosis.Diagnosis;
import dev.filmward.diagnosis.DiagnosisEngine;
import dev.filmward.diagnosis.FilmHistory;
import dev.filmward.diagnosis.GaugeFlag;
import dev.filmward.diagnosis.LineEntry;
import dev.filmward.diagnosis.Observation;
import dev.filmward.diagnosis.Signatures;
import dev.filmward.diagnosis.Since;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.gauge.calibration.GaugeSetting;
import dev.filmward.gauge.calibration.GaugeUse;
import dev.filmward.gauge.screen.Flag;
import dev.filmward.shift.Shift;
import dev.filmward.shift.ShiftBook;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.ScreenedSample;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Gathers what is known around an alarm and has it diagnosed: samples before and since, how the
 * layers usually are, what happened at the line. For one thread.
 */
final class DiagnosisReader {
  private static final int SAMPLES_BEFORE = 150;
  private static final int SAMPLES_SINCE = 150;

  private final Tables tables;
  private final ZoneId zone;

  DiagnosisReader(Tables tables, ZoneId zone) {
    this.tables = tables;
    this.zone = zone;
  }

  Explained of(Alarm alarm, Structure structure) {
    Production production = new Production(alarm.subject().line(), structure);
    Course course = alarm.excursion().course();
    List<Sample> samples = samples(production, course);
    Optional<FilmReference.Found> usual =
        new FilmReference(tables, production).at(course.openedAt());
    Span window = window(samples, course);
    FilmHistory history =
        FilmHistory.of(structure, samples, course.openedAt())
            .withReference(usual.map(FilmReference.Found::layers).orElse(List.of()))
            .withBoundaries(boundaries(production, window))
            .withFlags(flags(production, window));
    Signatures signatures = tables.signatures().current();
    Diagnosis diagnosis = new DiagnosisEngine(signatures).diagnose(history);
    return new Explained(
        structure,
        window,
        samples.size(),
        usual.map(found -> OptionalInt.of(found.version())).orElse(OptionalInt.empty()),
        diagnosis,
        since(diagnosis).map(at -> BeforeAfter.of(structure, samples, at)));
  }

  private static Optional<Instant> since(Diagnosis diagnosis) {
    return diagnosis.changed().stream()
        .map(Observation::since)
        .flatMap(Optional::stream)
        .map(Since::at)
        .findFirst();
  }

  private List<Sample> samples(Production production, Course course) {
    Series total = new Series(production.line(), production.structure().code(), 0);
    Instant from =
        tables.figures().before(total, course.openedAt(), SAMPLES_BEFORE).stream()
            .map(FigureRow::takenAt)
            .min(Comparator.naturalOrder())
            .orElse(course.openedAt());
    Instant to = course.settledAt().or(course::returnedAt).orElse(Span.always().to());
    Charted charted = Charted.withMisread(tables);
    List<Sample> samples = new ArrayList<>();
    int[] since = {0};
    tables
        .samples()
        .within(
            production.line(),
            production.structure().code(),
            new Span(from, to),
            stored -> {
              since[0] += stored.sample().takenAt().isBefore(course.openedAt()) ? 0 : 1;
              if (production.hasLayersOf(stored.sample()) && since[0] <= SAMPLES_SINCE) {
                charted.of(stored.sample()).ifPresent(samples::add);
              }
            });
    return samples;
  }

  private static Span window(List<Sample> samples, Course course) {
    return samples.isEmpty()
        ? new Span(course.openedAt(), course.lastSignalAt())
        : new Span(samples.get(0).takenAt(), samples.get(samples.size() - 1).takenAt());
  }

  /** Of samples that are out of the charts; the engine leaves their readings out as well. */
  private List<GaugeFlag> flags(Production production, Span window) {
    List<GaugeFlag> flags = new ArrayList<>();
    for (ScreenedSample screened :
        tables.screening().flagged(production.line(), production.structure().code(), window)) {
      if (screened.isOutOfCharts()) {
        SampleKey sample = screened.stored().sample().key();
        for (Flag flag : screened.flags()) {
          flags.add(new GaugeFlag(sample, flag.kind().word(), flag.positions()));
        }
      }
    }
    return flags;
  }

  private List<Boundary> boundaries(Production production, Span window) {
    String line = production.line();
    List<Boundary> boundaries = gaugeBoundaries(production, window);
    tables.lineLog().within(line, window).stream()
        .filter(entry -> entry.withdrawn().isEmpty())
        .map(LineEntry::what)
        .forEach(boundaries::add);
    for (LineModeChange change : tables.lineModes().of(line).changes()) {
      if (change.mode() == LineMode.STARTING && isIn(window, change.since())) {
        boundaries.add(Boundary.of(Boundary.Kind.RESTART, change.since()));
      }
    }
    for (Shift shift :
        new ShiftBook(tables.shifts().versions(), zone)
            .within(window.from(), window.to().plusMillis(1))) {
      if (isIn(window, shift.from())) {
        boundaries.add(Boundary.of(Boundary.Kind.SHIFT, shift.from()));
      }
    }
    return boundaries;
  }

  /** When another velocity was set in the gauge, or another gauge took over. */
  private List<Boundary> gaugeBoundaries(Production production, Span window) {
    List<Boundary> boundaries = new ArrayList<>();
    String line = production.line();
    for (GaugeSetting setting : tables.gauges().settings(line, production.structure().code())) {
      if (isIn(window, setting.holdsFrom())) {
        List<Integer> positions =
            production.structure().reported().stream()
                .filter(
                    layer ->
                        layer.members().stream().anyMatch(m -> m.name().equals(setting.layer())))
                .map(ReportedLayer::position)
                .toList();
        boundaries.add(
            new Boundary(
                Boundary.Kind.CALIBRATION,
                setting.holdsFrom(),
                positions,
                "velocity of " + setting.layer()));
      }
    }
    for (GaugeUse use : tables.gauges().uses()) {
      if (use.line().equals(line) && isIn(window, use.holdsFrom())) {
        boundaries.add(
            new Boundary(Boundary.Kind.CALIBRATION, use.holdsFrom(), List.of(), use.gauge()));
      }
    }
    return boundaries;
  }

  private static boolean isIn(Span window, Instant moment) {
    return !moment.isBefore(window.from()) && !moment.isAfter(window.to());
  }
}
