package dev.filmward.intake;

import java.util.Arrays;

/** Remembers the bytes of a field of an earlier row, and their text. One owner, one thread. */
final class FieldMemo {
  private final int field;
  private byte[] bytes = new byte[64];
  private int length = -1;
  private String text = "";
  private boolean textIsOld;

  FieldMemo(int field) {
    this.field = field;
  }

  int field() {
    return field;
  }

  /** Whether a row's field differs from the one remembered, which it then replaces. */
  boolean changes(Row row) {
    return changes(row.bytes, row.from + row.start[field], row.from + row.end[field]);
  }

  /** The same for a field that lies anywhere. */
  boolean changes(byte[] from, int start, int end) {
    if (length >= 0 && Arrays.equals(from, start, end, bytes, 0, length)) {
      return false;
    }
    remember(from, start, end);
    return true;
  }

  void remember(byte[] from, int start, int end) {
    length = end - start;
    if (length > bytes.length) {
      bytes = Arrays.copyOf(bytes, length);
    }
    System.arraycopy(from, start, bytes, 0, length);
    textIsOld = true;
  }

  /** The field as text. */
  String text(Row row) {
    if (textIsOld) {
      text = row.text(field);
      textIsOld = false;
    }
    return text;
  }
}
