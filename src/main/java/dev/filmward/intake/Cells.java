package dev.filmward.intake;

import dev.filmward.film.ReadingSink;

/**
 * Reads the thickness in one cell of a usable row and hands it on: as a reading, as missing, or as
 * rejected. One owner, one thread.
 */
final class Cells {
  /** Squares and sums of anything larger might not be finite; a plain number never is. */
  private static final double LARGEST_UM = 1e100;

  private final Decimals decimals = new Decimals();
  private final RowHead head;
  private final ReadingSink sink;
  private final Tally tally;
  private final RowTemperature temperature;

  Cells(RowHead head, ReadingSink sink, Tally tally, RowTemperature temperature) {
    this.head = head;
    this.sink = sink;
    this.tally = tally;
    this.temperature = temperature;
  }

  /** Reads a cell of a reported layer that the row's structure has. */
  void take(Row row, ThicknessColumn column, int position) {
    int field = column.field();
    double number =
        decimals.plain(row.bytes, row.from + row.start[field], row.from + row.end[field]);
    if (number > 0) {
      give(position, number * column.micrometres());
    } else if (row.isEmpty(field)) {
      skip(position);
    } else {
      lookAgain(row, column, position);
    }
  }

  /** Whether a cell says that nothing was measured. */
  boolean isMissing(Row row, ThicknessColumn column) {
    return row.isEmpty(column.field())
        || decimals.read(row.text(column.field())) == Decimals.Kind.MISSING;
  }

  Decimals decimals() {
    return decimals;
  }

  private void give(int position, double um) {
    tally.reading();
    sink.reading(head.giveKey(), head.takenAt(), head.structure(), position, head.lane(), um);
    temperature.give(sink, head);
  }

  private void skip(int position) {
    tally.missing();
    sink.missing(head.giveKey(), head.takenAt(), head.structure(), position, head.lane());
    temperature.give(sink, head);
  }

  private void lookAgain(Row row, ThicknessColumn column, int position) {
    String value = row.text(column.field());
    switch (decimals.read(value)) {
      case MISSING -> skip(position);
      case NO_NUMBER -> tally.rejectCell(row, column.column(), Reasons.noNumber(value));
      case NOT_FINITE -> tally.rejectCell(row, column.column(), Reasons.notFinite(value));
      case NUMBER -> {
        double um = decimals.value() * column.micrometres();
        if (!(um > 0)) {
          tally.rejectCell(row, column.column(), Reasons.notAboveZero(value));
        } else if (Double.isInfinite(um)) {
          tally.rejectCell(row, column.column(), Reasons.notFinite(value));
        } else if (um > LARGEST_UM) {
          tally.rejectCell(row, column.column(), Reasons.tooLarge(value));
        } else {
          give(position, um);
        }
      }
    }
  }
}
