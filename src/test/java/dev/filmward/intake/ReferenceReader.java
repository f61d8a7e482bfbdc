package dev.filmward.intake;

import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The plainest possible reader of the files that {@link RandomCsv} writes: it knows their values
 * and never looks at bytes. Gives an event for each place, as {@link Seen} does, but of a rejection
 * only the column and the value.
 */
final class ReferenceReader {

  record Rejected(String column, String value, int readings) {}

  private final List<String> header;
  private final List<Object> events = new ArrayList<>();

  private ReferenceReader(List<String> header) {
    this.header = header;
  }

  static List<Object> read(List<List<String>> rows) {
    ReferenceReader reader = new ReferenceReader(rows.get(0));
    rows.subList(1, rows.size()).forEach(reader::row);
    return reader.events;
  }

  private void row(List<String> row) {
    int places = header.contains("layer") ? 1 : header.size() - 6;
    if (row.size() != header.size()) {
      events.add(new Rejected("", "", places));
      return;
    }
    Optional<Instant> time = time(row.get(0));
    Optional<Structure> structure = Film.BOTH.find(row.get(2));
    boolean lane = row.get(5).matches("[0-9]{1,5}");
    if (time.isEmpty()) {
      events.add(new Rejected("taken_at", row.get(0), places));
    } else if (structure.isEmpty()) {
      events.add(new Rejected("structure", row.get(2), places));
    } else if (!lane) {
      events.add(new Rejected("lane", row.get(5), places));
    } else {
      places(row, time.get(), structure.get());
    }
  }

  private void places(List<String> row, Instant time, Structure structure) {
    if (header.contains("layer")) {
      int position = position(row.get(6), structure);
      if (position == 0) {
        events.add(new Rejected("layer", row.get(6), 1));
      } else {
        place(row, 7, time, structure, position);
      }
      return;
    }
    for (int column = 6; column < row.size(); column++) {
      place(row, column, time, structure, column - 5);
    }
  }

  private void place(
      List<String> row, int column, Instant time, Structure structure, int position) {
    String cell = row.get(column);
    boolean isMissing = List.of("", "-", "–", "nan").contains(cell.toLowerCase());
    boolean isStray = position > structure.reported().size();
    Optional<Double> um = isStray ? Optional.empty() : um(cell, header.get(column));
    if (isMissing && isStray) {
      events.add("missing");
    } else if (isMissing || um.isPresent()) {
      events.add(
          new Seen.Place(
              new SampleKey(row.get(1), row.get(2), row.get(3), row.get(4)),
              time,
              structure.code(),
              position,
              Integer.parseInt(row.get(5)),
              um.orElse(Double.NaN)));
    } else {
      events.add(new Rejected(header.get(column), cell, 1));
    }
  }

  private static int position(String layer, Structure structure) {
    for (int position = 1; position <= structure.reported().size(); position++) {
      String name = structure.reported().get(position - 1).name();
      if (layer.equals(name) || layer.equals(Integer.toString(position))) {
        return position;
      }
    }
    return 0;
  }

  private static Optional<Double> um(String cell, String heading) {
    try {
      double value = new BigDecimal(cell.replace(',', '.')).doubleValue();
      double um = value * (heading.endsWith("mil") ? 25.4 : heading.endsWith("mm") ? 1000 : 1);
      return Optional.of(um).filter(u -> u > 0 && u < Double.POSITIVE_INFINITY);
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }

  private static Optional<Instant> time(String text) {
    String iso = text.replace(' ', 'T');
    try {
      return Optional.of(OffsetDateTime.parse(iso).toInstant());
    } catch (DateTimeParseException e) {
      return localTime(iso);
    }
  }

  private static Optional<Instant> localTime(String iso) {
    try {
      LocalDateTime local = LocalDateTime.parse(iso);
      ZonedDateTime there = local.atZone(Seen.PLANT).withEarlierOffsetAtOverlap();
      return Optional.of(there)
          .filter(time -> time.toLocalDateTime().equals(local))
          .map(ZonedDateTime::toInstant);
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }
}
