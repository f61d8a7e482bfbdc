package dev.filmward.intake;

import java.io.IOException;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/** One reading of a mapped file. One owner, one thread. */
final class MappedRun implements RowRun {
  private final Dialect dialect;
  private final Row row;
  private final RowReader reader;
  private final MappedRows rows;
  private final Supplier<FileCount> count;

  MappedRun(
      Dialect dialect, Row row, RowReader reader, MappedRows rows, Supplier<FileCount> count) {
    this.dialect = dialect;
    this.row = row;
    this.reader = reader;
    this.rows = rows;
    this.count = count;
  }

  @Override
  public Dialect dialect() {
    return dialect;
  }

  @Override
  public boolean next() throws IOException {
    return reader.next();
  }

  @Override
  public void take() {
    rows.take(row);
  }

  @Override
  public List<String> cells() {
    return IntStream.range(0, row.kept()).mapToObj(row::text).toList();
  }

  @Override
  public FileCount count() {
    return count.get();
  }
}
