package dev.filmward.intake;

/** Takes the rows of a file in their order, each exactly once. */
interface RowTaker {
  void take(Row row);
}
