package dev.filmward.store;

/**
 * Takes rows for one table, value by value in the order of its columns, and hands them to the
 * database many at a time; the last of them when it is closed. For one thread, within one
 * transaction.
 */
interface RowInsert extends AutoCloseable {
  RowInsert number(long value);

  RowInsert text(String value);

  RowInsert bytes(byte[] value);

  void endRow();

  @Override
  void close();
}
