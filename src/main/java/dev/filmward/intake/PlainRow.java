package dev.filmward.intake;

import java.util.Arrays;

/**
 * Splits a row without quoted fields where it lies in the blocks.
 *
 * <p>Rows of a sample start alike, so what a row shares with the start of the row before is not
 * searched again for separators. One owner, one thread.
 */
final class PlainRow {
  /** A field starts with a quotation mark: the row is one for {@link QuotedRow}. */
  static final int QUOTED = -1;

  /** The blocks end before the row does. */
  static final int RAN_OUT = -2;

  private static final int NONE = -1;

  private final byte separator;
  private final byte otherBlank;
  private byte[] bytes = {};
  private int start;

  /** The row before in the blocks, if the next one may be compared with it. */
  private int startBefore = NONE;

  private int endBefore;

  PlainRow(byte separator, byte otherBlank) {
    this.separator = separator;
    this.otherBlank = otherBlank;
  }

  /** Says that the row before was no plain one, or is no longer where it was. */
  void forget() {
    startBefore = NONE;
  }

  /**
   * Splits the row that starts where the blocks are.
   *
   * @return where its line feed stands, or {@link #QUOTED}, or {@link #RAN_OUT}
   */
  int split(ByteBlocks blocks, Row row) {
    bytes = blocks.bytes;
    start = blocks.from;
    row.bytes = bytes;
    row.from = start;
    row.unchanged = startBefore == NONE ? 0 : sharedFields(blocks.limit, row);
    row.count = row.unchanged;
    int end = splitFrom(row.count == 0 ? start : start + row.stop[row.count - 1] + 1, row);
    if (end == blocks.limit && !blocks.ended) {
      return RAN_OUT;
    }
    startBefore = end < 0 ? NONE : start;
    endBefore = end;
    return end;
  }

  /** How many fields at the start, each with its separator, are those of the row before. */
  private int sharedFields(int limit, Row row) {
    int length = endBefore - startBefore;
    int end = Math.min(limit, start + length);
    int differing = Arrays.mismatch(bytes, startBefore, endBefore, bytes, start, end);
    int common = differing < 0 ? length : differing;
    int fields = Math.min(row.unchanged, row.kept());
    while (fields > 0 && row.stop[fields - 1] >= common) {
      fields--;
    }
    while (fields < row.kept() && row.stop[fields] < common) {
      fields++;
    }
    return fields;
  }

  private int splitFrom(int index, Row row) {
    int i = index;
    for (; ; ) {
      while (isBlank(bytes[i])) {
        i++;
      }
      int fieldStart = i;
      byte sign = bytes[i];
      if (sign == '"') {
        return QUOTED;
      }
      while (sign != separator && sign != '\n') {
        sign = bytes[++i];
      }
      boolean endsLine = sign == '\n';
      boolean hasReturn = endsLine && i > fieldStart && bytes[i - 1] == '\r';
      int end = trimmed(fieldStart, hasReturn ? i - 1 : i);
      row.add(fieldStart - start, end - start, i - start);
      if (endsLine) {
        return i;
      }
      i++;
    }
  }

  private int trimmed(int fieldStart, int fieldEnd) {
    int end = fieldEnd;
    while (end > fieldStart && isBlank(bytes[end - 1])) {
      end--;
    }
    return end;
  }

  private boolean isBlank(byte sign) {
    return sign == ' ' || sign == otherBlank;
  }
}
