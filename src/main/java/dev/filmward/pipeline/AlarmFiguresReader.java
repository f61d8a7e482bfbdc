package dev.filmward.pipeline;

import dev.filmward.alarm.AlarmFigures;
import dev.filmward.alarm.AlarmFigures.Question;
import dev.filmward.alarm.AlarmSpan;
import dev.filmward.shift.ShiftBook;
import dev.filmward.store.SampleTable;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Reads how good the alarms of a time were. Thread-safe. */
public final class AlarmFiguresReader {
  private final Plant plant;
  private final ShiftDesk shifts;

  public AlarmFiguresReader(Plant plant) {
    this.plant = plant;
    this.shifts = new ShiftDesk(plant);
  }

  /**
   * The figures, and what they rest on.
   *
   * @param historical alarms that came as old news, so that nobody was called; not counted
   */
  public record Told(AlarmFigures figures, long historical, int linesPerOperator) {}

  /**
   * Reads.
   *
   * @param line empty for all lines
   */
  public Told read(AlarmSpan period, String line) {
    return plant
        .store()
        .read(
            tables -> {
              ShiftBook book = shifts.book(tables);
              int each = book.on(book.date(period.to())).linesPerOperator();
              Question question =
                  new Question(
                      period,
                      days(book, period),
                      shifts(book, period),
                      positions(tables, line, each));
              AlarmFigures figures =
                  AlarmFigures.of(
                      new AlarmRuns(tables, plant.structures()).read(period, line), question);
              long historical = tables.alarmMoments().historical(period.from(), period.to());
              return new Told(figures, historical, each);
            });
  }

  private List<AlarmSpan> days(ShiftBook book, AlarmSpan period) {
    List<AlarmSpan> days = new ArrayList<>();
    LocalDate last = book.date(period.to().minusMillis(1));
    for (LocalDate day = book.date(period.from()); !day.isAfter(last); day = day.plusDays(1)) {
      days.add(new AlarmSpan(midnight(day), midnight(day.plusDays(1))));
    }
    return days;
  }

  private Instant midnight(LocalDate day) {
    return day.atStartOfDay(plant.zone()).toInstant();
  }

  private static List<AlarmSpan> shifts(ShiftBook book, AlarmSpan period) {
    return book.within(period.from(), period.to()).stream()
        .map(shift -> new AlarmSpan(shift.from(), shift.to()))
        .toList();
  }

  /** Lines in the order of their names, so many to a person. */
  private static List<List<String>> positions(Tables tables, String line, int each) {
    if (!line.isEmpty()) {
      return List.of(List.of(line));
    }
    List<String> lines =
        tables.samples().productions().stream()
            .map(SampleTable.Production::line)
            .distinct()
            .sorted()
            .toList();
    List<List<String>> positions = new ArrayList<>();
    for (int from = 0; from < lines.size(); from += each) {
      positions.add(lines.subList(from, Math.min(lines.size(), from + each)));
    }
    return positions.isEmpty() ? List.of(List.of()) : positions;
  }
}
