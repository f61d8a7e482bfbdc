package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.Course;
import dev.filmward.alarm.LineMode;
import dev.filmward.alarm.LineModeChange;
import dev.filmward.diagnosis.Boundary;
import dev.filmward.diagnosis.Diagnosis;
import dev.filmward.diagnosis.DiagnosisEngine;
import dev.filmward.diagnosis.FilmHistory;
import dev.filmward.diagnosis.LineEntry;
import dev.filmward.diagnosis.Observation;
import dev.filmward.diagnosis.Signatures;
import dev.filmward.diagnosis.Since;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.shift.Shift;
import dev.filmward.shift.ShiftBook;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
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
            .withBoundaries(boundaries(production.line(), window));
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
    Charted charted = Charted.asKept(tables);
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
              if (!stored.isThinned() && since[0] <= SAMPLES_SINCE) {
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

  private List<Boundary> boundaries(String line, Span window) {
    List<Boundary> boundaries = new ArrayList<>();
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

  private static boolean isIn(Span window, Instant moment) {
    return !moment.isBefore(window.from()) && !moment.isAfter(window.to());
  }
}
