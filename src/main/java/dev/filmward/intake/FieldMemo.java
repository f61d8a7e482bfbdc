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
    if (length >= 0 && row.holds(field, bytes, length)) {
      return false;
    }
    length = row.end[field] - row.start[field];
    if (length > bytes.length) {
      bytes = Arrays.copyOf(bytes, length);
    }
    System.arraycopy(row.bytes, row.from + row.start[field], bytes, 0, length);
    textIsOld = true;
    return true;
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
