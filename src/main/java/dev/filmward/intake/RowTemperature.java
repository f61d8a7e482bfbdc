package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import java.util.OptionalDouble;

/**
 * Reads the film's temperature in a row, where the file has a column of it, and hands it on with
 * each of the row's places. One owner, one thread.
 */
final class RowTemperature {
  private static final int NO_COLUMN = -1;

  private final Dialect dialect;
  private final int field;
  private final Tally tally;
  private final Celsius celsius = new Celsius(".,");
  private OptionalDouble degrees = OptionalDouble.empty();

  RowTemperature(Dialect dialect, Tally tally) {
    this.dialect = dialect;
    this.field =
        dialect.has(Field.TEMPERATURE_C) ? dialect.indexOf(Field.TEMPERATURE_C) : NO_COLUMN;
    this.tally = tally;
  }

  /** Whether the row can be used; if not, it has been rejected. */
  boolean read(Row row) {
    if (field == NO_COLUMN) {
      return true;
    }
    boolean isUsable = celsius.read(row.text(field));
    degrees = celsius.degrees();
    if (!isUsable) {
      tally.rejectRow(row, dialect.columns().get(field), celsius.reason());
    }
    return isUsable;
  }

  /** After a place of the row was handed on. */
  void give(ReadingSink sink, RowHead head) {
    if (degrees.isPresent()) {
      sink.temperature(
          head.giveKey(), head.takenAt(), head.structure(), head.lane(), degrees.getAsDouble());
    }
  }
}
