package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlarmTitle;
import dev.filmward.alarm.LineModeChange;
import dev.filmward.diagnosis.LineEntry;
import dev.filmward.pipeline.LineEvent.Kind;
import dev.filmward.shift.Shift;
import dev.filmward.shift.ShiftBook;
import dev.filmward.store.FigureColumns;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SampleTable.Production;
import dev.filmward.store.ShiftNote;
import dev.filmward.store.Tables;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Reads what happened at a line in a time: films, rolls and shifts, what people said and decided,
 * alarms. Within one transaction, for one thread.
 */
public final class LineEvents {
  /** In a longer time shifts would be most of what is seen. */
  private static final Duration LONGEST_WITH_SHIFTS = Duration.ofDays(8);

  private final Plant plant;
  private final Tables tables;
  private final String line;
  private final Span span;
  private final ShiftBook shifts;
  private final List<LineEvent> events = new ArrayList<>();

  /**
   * @param span both ends included
   */
  public LineEvents(Plant plant, Tables tables, String line, Span span) {
    this.plant = plant;
    this.tables = tables;
    this.line = line;
    this.span = span;
    this.shifts = new ShiftDesk(plant).book(tables);
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
    tables.alarms().movedSince(line, span.from()).forEach(this::addAlarm);
    tables.shiftNotes().within(span.from(), span.to()).stream()
        .filter(note -> note.line().equals(line))
        .forEach(this::addNote);
    tables.lineLog().within(line, span).forEach(this::addEntry);
    List<String> structures =
        tables.samples().productions().stream()
            .filter(made -> made.line().equals(line))
            .map(Production::structure)
            .toList();
    new LineDecisions(plant, tables, line, this::add).tell(structures, span);
    List<Roll> rolls = rolls(structures);
    addRolls(rolls);
    if (!rolls.isEmpty()) {
      addShifts(rolls.get(0).at);
    }
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

  private String shift(Instant moment) {
    return shifts.at(moment).word();
  }

  private void addMode(LineModeChange change) {
    add(
        change.since(),
        Kind.MODE,
        Map.of(
            "mode", change.mode().word(),
            "by", change.decision().author(),
            "reason", change.decision().reason(),
            "shift", shift(change.since())));
  }

  private void addNote(ShiftNote note) {
    add(
        note.at(),
        Kind.NOTE,
        Map.of("text", note.text(), "by", note.by(), "shift", shift(note.at())));
  }

  private void addAlarm(Alarm alarm) {
    String structure = alarm.subject().structure();
    String title =
        plant
            .structures()
            .find(structure)
            .map(known -> AlarmTitle.of(alarm.subject(), known))
            .orElse(alarm.subject().deviation().words());
    OptionalLong id = OptionalLong.of(alarm.id());
    Map<String, String> said = Map.of("title", title, "structure", structure);
    add(new LineEvent(alarm.excursion().course().openedAt(), Kind.ALARM, id, said));
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
    wentBackByItself(alarm)
        .ifPresent(moment -> add(new LineEvent(moment, Kind.RETURNED, id, said)));
  }

  /** Not where it was held back from people, who could not take it. */
  private static Optional<Instant> wentBackByItself(Alarm alarm) {
    return alarm
        .excursion()
        .course()
        .wentBackAt()
        .filter(moment -> alarm.shownAt().isPresent())
        .filter(
            moment ->
                alarm.acknowledgement().filter(taken -> taken.at().isBefore(moment)).isEmpty());
  }

  private void addEntry(LineEntry entry) {
    if (entry.withdrawn().isEmpty()) {
      add(
          entry.what().at(),
          Kind.LOG,
          Map.of(
              "what", entry.what().kind().word(),
              "words", entry.what().words(),
              "by", entry.written().by(),
              "shift", shift(entry.what().at())));
    }
  }

  /** Those that began since the one of the first sample, while the line made film. */
  private void addShifts(Instant firstSample) {
    Instant now = plant.clock().instant();
    Instant end = span.to().isBefore(now) ? span.to() : now;
    if (firstSample.plus(LONGEST_WITH_SHIFTS).isBefore(end)) {
      return;
    }
    for (Shift shift : shifts.within(firstSample, end.plusMillis(1))) {
      add(
          shift.from(),
          Kind.SHIFT,
          Map.of("shift", shift.word(), "name", shift.name(), "crew", shift.crew().orElse("")));
    }
  }

  /** The first sample of a roll within the span, as far as it can be told. */
  private record Roll(Instant at, String structure, String roll) {}

  private List<Roll> rolls(List<String> structures) {
    List<Roll> rolls = new ArrayList<>();
    structures.forEach(structure -> rolls.addAll(rolls(structure)));
    rolls.sort(Comparator.comparing(Roll::at));
    return rolls;
  }

  private List<Roll> rolls(String structure) {
    FigureColumns columns = tables.figures().columns(new Series(line, structure, 0), span);
    List<Roll> rolls = new ArrayList<>();
    String before = "";
    for (int i = 0; i < columns.count(); i++) {
      String roll = columns.row(i).key().roll();
      if (i == 0 || !roll.equals(before)) {
        Instant at = columns.takenAt(i);
        rolls.add(new Roll(at, structure, roll));
      }
      before = roll;
    }
    return rolls;
  }

  /** What was on the line when the time begins has begun before it. */
  private void addRolls(List<Roll> rolls) {
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
