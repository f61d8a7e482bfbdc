package dev.filmward.intake;

import java.util.function.Consumer;

/**
 * Counts what becomes of the places for readings in a file, and passes rejections on. One owner,
 * one thread.
 */
final class Tally {
  private final String file;
  private final RowReader reader;
  private final int placesInRow;
  private final Consumer<Rejection> rejections;
  private long rows;
  private long readings;
  private long missing;
  private long quarantined;

  /**
   * @param placesInRow for readings: 1, or the number of layer columns
   */
  Tally(String file, RowReader reader, int placesInRow, Consumer<Rejection> rejections) {
    this.file = file;
    this.reader = reader;
    this.placesInRow = placesInRow;
    this.rejections = rejections;
  }

  void row() {
    rows++;
  }

  /** Rows all of whose places were measured. */
  void measured(long wholeRows) {
    rows += wholeRows;
    readings += wholeRows * placesInRow;
  }

  void reading() {
    readings++;
  }

  void missing() {
    missing++;
  }

  /** One place cannot be used. */
  void rejectCell(Row row, Column column, String reason) {
    reject(row, new Fault(column.heading(), row.text(column.number() - 1), reason), 1);
  }

  /** No place of the row can be used, because of one column. */
  void rejectRow(Row row, Column column, String reason) {
    reject(row, new Fault(column.heading(), row.text(column.number() - 1), reason), placesInRow);
  }

  /** No place of the row can be used. */
  void rejectRow(Row row, String reason) {
    reject(row, new Fault("", "", reason), placesInRow);
  }

  /** What was counted so far. */
  Counts counts() {
    if (rows * placesInRow != readings + missing + quarantined) {
      throw new IllegalStateException(
          file + ": " + rows + " rows of " + placesInRow + " do not give the places counted");
    }
    return new Counts(rows, readings, missing, quarantined);
  }

  private void reject(Row row, Fault fault, int readingsLost) {
    quarantined += readingsLost;
    rejections.accept(
        new Rejection(
            file,
            row.line,
            fault.column,
            Words.cut(fault.value),
            fault.reason,
            reader.raw(),
            readingsLost));
  }

  /** Rows, and what became of their places. */
  record Counts(long rows, long readings, long missing, long quarantined) {
    static final Counts NONE = new Counts(0, 0, 0, 0);

    Counts plus(Counts more) {
      return new Counts(
          rows + more.rows,
          readings + more.readings,
          missing + more.missing,
          quarantined + more.quarantined);
    }
  }

  private record Fault(String column, String value, String reason) {}
}
