package dev.filmward.intake;

import java.io.IOException;
import java.util.List;

/** One reading of one file, row by row. One owner, one thread. */
interface RowRun {
  Dialect dialect();

  /** Goes to the next row; false at the end of the file. */
  boolean next() throws IOException;

  /** Hands on what the row says. */
  void take();

  /** The row's fields; of a row with more than the header, the first one too many is the last. */
  List<String> cells();

  /** Of the rows taken so far. */
  FileCount count();
}
