package dev.filmward.pipeline;

import dev.filmward.intake.Words;
import dev.filmward.pipeline.Board.LineState;
import dev.filmward.pipeline.Handover.Item;
import dev.filmward.store.FigureColumns;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SampleTable;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The sections of a handover that tell how lines stand and where samples are missing. Stateless.
 */
final class HandoverLines {
  private HandoverLines() {}

  static List<Item> lines(HandoverScope scope) {
    return scope.lines().stream().map(line -> item(scope, line)).toList();
  }

  private static Item item(HandoverScope scope, LineState line) {
    int samples = times(scope, line.line()).size();
    return new Item(
        "line " + line.line(),
        line.line(),
        line.structure().code() + ", " + line.structure().name(),
        line.ask().name().toLowerCase(Locale.ROOT),
        Words.count(samples, "sample")
            + " in the shift; roll "
            + line.lastSample().roll()
            + "; limits "
            + line.limits().state().word()
            + (line.limits().version() > 0 ? ", version " + line.limits().version() : ""),
        Optional.of(line.lastTakenAt()));
  }

  /** Times without samples that are longer than the line's pace allows. */
  static List<Item> gaps(HandoverScope scope) {
    List<Item> gaps = new ArrayList<>();
    for (LineState line : scope.lines()) {
      line.interval().ifPresent(usual -> addGaps(scope, line.line(), usual, gaps));
    }
    return gaps;
  }

  private static void addGaps(HandoverScope scope, String line, Duration usual, List<Item> gaps) {
    List<Instant> edges = new ArrayList<>();
    edges.add(scope.shift().from());
    edges.addAll(times(scope, line));
    edges.add(scope.until());
    Duration allowed = usual.plus(usual.dividedBy(2)).plus(BoardReader.GRACE);
    for (int i = 1; i < edges.size(); i++) {
      Instant start = edges.get(i - 1);
      Duration length = Duration.between(start, edges.get(i));
      if (length.compareTo(allowed) > 0) {
        boolean goesOn = i == edges.size() - 1;
        gaps.add(gap(line, start, length, goesOn ? "to the end" : "ended"));
      }
    }
  }

  private static Item gap(String line, Instant start, Duration length, String state) {
    return new Item(
        "gap " + line + " " + start,
        line,
        "No samples",
        state,
        "for " + words(length),
        Optional.of(start));
  }

  private static String words(Duration length) {
    Duration rounded = length.truncatedTo(ChronoUnit.MINUTES);
    String minutes = rounded.toMinutesPart() + " min";
    return rounded.toHours() > 0
        ? rounded.toHours() + " h " + minutes
        : rounded.isZero() ? length.toSeconds() + " s" : minutes;
  }

  /** When a line's samples of the shift were taken, of all that it made. */
  private static List<Instant> times(HandoverScope scope, String line) {
    Span span = new Span(scope.shift().from(), scope.until().minus(1, ChronoUnit.MICROS));
    List<Instant> times = new ArrayList<>();
    for (SampleTable.Production made : scope.tables().samples().productions()) {
      if (made.line().equals(line)) {
        Series total = new Series(line, made.structure(), 0);
        FigureColumns columns = scope.tables().figures().columns(total, span);
        for (int i = 0; i < columns.count(); i++) {
          times.add(columns.takenAt(i));
        }
      }
    }
    times.sort(null);
    return times;
  }
}
