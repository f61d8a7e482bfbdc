package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlarmTitle;
import dev.filmward.alarm.LineModeChange;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.diagnosis.LineEntry;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.gauge.calibration.ScaleStep;
import dev.filmward.gauge.calibration.Scaling;
import dev.filmward.pipeline.LineEvent.Kind;
import dev.filmward.store.FigureColumns;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SampleTable.Production;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.OptionalLong;

/**
 * Reads what happened at a line in a time: films and rolls, what people said and decided, alarms.
 * Within one transaction, for one thread.
 */
public final class LineEvents {
  private final Tables tables;
  private final Structures structures;
  private final String line;
  private final Span span;
  private final List<LineEvent> events = new ArrayList<>();

  /**
   * @param span both ends included
   */
  public LineEvents(Tables tables, Structures structures, String line, Span span) {
    this.tables = tables;
    this.structures = structures;
    this.line = line;
    this.span = span;
  }

  /**
   * Reads.
   *
   * @return oldest first
   * @throws NoSuchElementException if nothing has come from that line yet
   */
  public List<LineEvent> read() {
    LineDesk.requireLine(tables, line);
    tables.lineModes().of(line).changes().forEach(this::addMode);
    tables.alarms().openedSince(span.from()).forEach(this::addAlarm);
    tables.shiftNotes().within(span.from(), span.to()).stream()
        .filter(note -> note.line().equals(line))
        .forEach(note -> add(note.at(), Kind.NOTE, Map.of("text", note.text(), "by", note.by())));
    tables.lineLog().within(line, span).forEach(this::addEntry);
    List<Roll> rolls = new ArrayList<>();
    for (Production made : tables.samples().productions()) {
      if (made.line().equals(line)) {
        rolls.addAll(rolls(made.structure()));
        addLimits(made.structure());
        addScalings(made.structure());
      }
    }
    addRolls(rolls);
    events.sort(Comparator.comparing(LineEvent::at));
    return List.copyOf(events);
  }

  private void add(Instant at, Kind kind, Map<String, String> said) {
    add(LineEvent.of(at, kind, said));
  }

  private void add(LineEvent event) {
    if (!event.at().isBefore(span.from()) && !event.at().isAfter(span.to())) {
      events.add(event);
    }
  }

  private void addMode(LineModeChange change) {
    add(
        change.since(),
        Kind.MODE,
        Map.of(
            "mode", change.mode().word(),
            "by", change.decision().author(),
            "reason", change.decision().reason()));
  }

  private void addAlarm(Alarm alarm) {
    if (!alarm.subject().line().equals(line)) {
      return;
    }
    String title =
        structures
            .find(alarm.subject().structure())
            .map(known -> AlarmTitle.of(alarm.subject(), known))
            .orElse(alarm.subject().deviation().words());
    String structure = alarm.subject().structure();
    OptionalLong id = OptionalLong.of(alarm.id());
    add(
        new LineEvent(
            alarm.excursion().course().openedAt(),
            Kind.ALARM,
            id,
            Map.of("title", title, "structure", structure)));
    alarm
        .acknowledgement()
        .ifPresent(
            taken ->
                add(
                    new LineEvent(
                        taken.at(),
                        Kind.TAKEN,
                        id,
                        Map.of("title", title, "structure", structure, "by", taken.by()))));
  }

  private void addEntry(LineEntry entry) {
    if (entry.withdrawn().isEmpty()) {
      add(
          entry.what().at(),
          Kind.LOG,
          Map.of(
              "what", entry.what().kind().word(),
              "words", entry.what().words(),
              "by", entry.written().by()));
    }
  }

  private void addLimits(String structure) {
    for (LimitsVersion version : tables.limits().of(new Series(line, structure, 0))) {
      boolean isFirst = true;
      for (StateChange change : version.changes()) {
        add(
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

  private void addScalings(String structure) {
    tables
        .scalings()
        .of(line, structure)
        .byPosition()
        .forEach(
            (position, layer) -> {
              for (Scaling version : layer.versions()) {
                if (!layer.takenBack().contains(version.version())) {
                  version.steps().forEach(step -> addStep(structure, position, version, step));
                }
              }
            });
  }

  private void addStep(String structure, int position, Scaling version, ScaleStep step) {
    String layer =
        structures
            .find(structure)
            .map(Structure::reported)
            .filter(all -> position <= all.size())
            .map(all -> all.get(position - 1))
            .map(ReportedLayer::name)
            .orElse(String.valueOf(position));
    add(
        step.holdsFrom(),
        Kind.RESCALED,
        Map.of(
            "layer", layer,
            "version", String.valueOf(version.version()),
            "structure", structure,
            "by", version.word().by(),
            "reason", version.word().reason()));
  }

  /** The first sample of a roll within the span, as far as it can be told. */
  private record Roll(Instant at, String structure, String roll) {}

  private List<Roll> rolls(String structure) {
    FigureColumns columns = tables.figures().columns(new Series(line, structure, 0), span);
    List<Roll> rolls = new ArrayList<>();
    String before = "";
    for (int i = 0; i < columns.count(); i++) {
      String roll = columns.row(i).key().roll();
      if (i == 0 || !roll.equals(before)) {
        Instant at = Instant.EPOCH.plus(columns.takenAtMicros(i), ChronoUnit.MICROS);
        rolls.add(new Roll(at, structure, roll));
      }
      before = roll;
    }
    return rolls;
  }

  /** What was on the line when the time begins has begun before it. */
  private void addRolls(List<Roll> rolls) {
    rolls.sort(Comparator.comparing(Roll::at));
    for (int i = 1; i < rolls.size(); i++) {
      Roll roll = rolls.get(i);
      boolean isOther = !roll.structure.equals(rolls.get(i - 1).structure);
      add(
          roll.at,
          isOther ? Kind.FILM : Kind.ROLL,
          Map.of("roll", roll.roll, "structure", roll.structure));
    }
  }
}
