package dev.filmward.intake;

import java.util.Arrays;

/**
 * One row of a file, split into fields whose surrounding spaces are left out. Filled anew for each
 * row by its {@link RowReader}, so it is only good until the next one; one owner, one thread.
 *
 * <p>Field i is {@code bytes[from + start[i]]} up to before {@code bytes[from + end[i]]}, in UTF-8.
 * Of a row with more fields than the header, the first one too many is kept and the others are only
 * counted.
 */
final class Row {
  final int[] start;
  final int[] end;

  /** Where the separator after a field stands, counted from the start of the row in the file. */
  final int[] stop;

  byte[] bytes = {};
  int from;
  int count;

  /** How many fields at the start are, byte for byte, those of the row before. */
  int unchanged;

  /** Number of the row's first line. */
  long line;

  /** What keeps the row from being split into fields; empty if nothing does. */
  String fault = "";

  private final Text text;

  Row(int columns, Text text) {
    this.start = new int[columns + 1];
    this.end = new int[columns + 1];
    this.stop = new int[columns + 1];
    this.text = text;
  }

  /** How many fields are kept. */
  int kept() {
    return Math.min(count, start.length);
  }

  boolean isEmpty(int field) {
    return start[field] == end[field];
  }

  String text(int field) {
    return text.of(bytes, from + start[field], from + end[field]);
  }

  /** Whether a field holds exactly these bytes. */
  boolean holds(int field, byte[] wanted, int length) {
    return Arrays.equals(bytes, from + start[field], from + end[field], wanted, 0, length);
  }

  /** Adds a field; places are relative to {@code from}. */
  void add(int fieldStart, int fieldEnd, int separator) {
    if (count < start.length) {
      start[count] = fieldStart;
      end[count] = fieldEnd;
      stop[count] = separator;
    }
    count++;
  }
}
