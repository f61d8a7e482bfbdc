package dev.filmward.intake;

import java.io.IOException;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/** One reading of one file, row by row. One owner, one thread. */
final class FileRun {
  private final Dialect dialect;
  private final Row row;
  private final RowReader reader;
  private final RowTaker taker;
  private final Supplier<FileCount> count;

  FileRun(Dialect dialect, Row row, RowReader reader, RowTaker taker, Supplier<FileCount> count) {
    this.dialect = dialect;
    this.row = row;
    this.reader = reader;
    this.taker = taker;
    this.count = count;
  }

  Dialect dialect() {
    return dialect;
  }

  /** Goes to the next row; false at the end of the file. */
  boolean next() throws IOException {
    return reader.next();
  }

  /** Hands on what the row says. */
  void take() {
    taker.take(row);
  }

  /** The row's fields; of a row with more than the header, the first one too many is the last. */
  List<String> cells() {
    return IntStream.range(0, row.kept()).mapToObj(row::text).toList();
  }

  /** Of the rows taken so far. */
  FileCount count() {
    return count.get();
  }
}
