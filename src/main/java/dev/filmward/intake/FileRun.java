package dev.filmward.intake;

import java.io.IOException;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/** One reading of one file or of a part of it, row by row or all at once. One owner, one thread. */
final class FileRun {
  private final Dialect dialect;
  private final Row row;
  private final RowReader reader;
  private final Tally tally;
  private final FileSteps steps;
  private final RowTaker taker;
  private final SwiftRows swift;

  FileRun(FileSteps steps, RowTaker taker, SwiftRows swift) {
    this.steps = steps;
    this.dialect = steps.dialect();
    this.row = steps.row();
    this.reader = steps.reader();
    this.tally = steps.tally();
    this.taker = taker;
    this.swift = swift;
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

  /** Hands on what all rows say that are left. */
  void takeAll() throws IOException {
    while (reader.next()) {
      taker.take(row);
      swift.learn(row);
      reader.leave();
      swift.takeAlike();
    }
  }

  /** The row's fields; of a row with more than the header, the first one too many is the last. */
  List<String> cells() {
    return IntStream.range(0, row.kept()).mapToObj(row::text).toList();
  }

  /** Of the rows taken so far. */
  Tally.Counts counts() {
    return tally.counts();
  }

  /** Seen in the rows taken so far. */
  Set<Oddity> oddities() {
    return steps.oddities();
  }
}
