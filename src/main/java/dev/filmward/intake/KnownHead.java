package dev.filmward.intake;

import java.util.Arrays;

/**
 * Remembers the bytes with which a row starts, up to its lane and the separator after it, so that a
 * row that starts with the same bytes is known to be of the same sample. One owner, one thread.
 */
final class KnownHead {
  static final int UNLIKE = -1;

  private static final int LONGEST = 4096;
  private static final int LONGEST_LANE = 16;
  private static final int LARGEST_LANE = 99_999;

  private final byte separator;
  private final int laneField;
  private final NextSample next;
  private byte[] bytes = new byte[256];

  /** Up to the lane; 0 where nothing is known. */
  private int headLength;

  /** Up to the field after the lane; 0 where the lane is not known. */
  private int length;

  private int lane;

  KnownHead(Dialect dialect) {
    this.separator = (byte) dialect.separator().sign();
    this.laneField = dialect.indexOf(Field.LANE);
    this.next = new NextSample(dialect);
  }

  /** Learns a row that lies in the blocks on one line. */
  void learn(byte[] raw, int from, Row row) {
    int stop = row.stop[laneField - 1] + 1;
    if (stop > LONGEST) {
      forget();
      return;
    }
    if (stop + LONGEST_LANE > bytes.length) {
      bytes = new byte[LONGEST + LONGEST_LANE];
    }
    System.arraycopy(raw, from, bytes, 0, stop);
    headLength = stop;
    length = 0;
    if (row.bytes == raw) {
      next.learn(row, stop);
    } else {
      next.forget();
    }
  }

  /**
   * Whether a row starts alike but for its time and sample; if so, it is the known one now.
   *
   * @param head told of the new sample
   */
  boolean goesOn(byte[] row, int from, int limit, RowHead head) {
    if (!next.startsLike(bytes, row, from, limit) || !head.goOn(row, from, next)) {
      return false;
    }
    System.arraycopy(row, from, bytes, 0, headLength);
    length = 0;
    return true;
  }

  void forget() {
    headLength = 0;
    next.forget();
  }

  boolean isKnown() {
    return headLength > 0;
  }

  /** The lane of the row that was looked at last. */
  int lane() {
    return lane;
  }

  /** Where in a row that starts alike the field after the lane begins, or UNLIKE. */
  int after(byte[] row, int from, int limit) {
    int compared = Math.max(length, headLength);
    int end = from + compared;
    if (end > limit) {
      return UNLIKE;
    }
    int differing = Arrays.mismatch(bytes, 0, compared, row, from, end);
    if (differing < 0 && compared == length) {
      return end;
    }
    return differing < 0 || differing >= headLength ? anotherLane(row, from) : UNLIKE;
  }

  private int anotherLane(byte[] row, int from) {
    int start = from + headLength;
    int quotes = row[start] == '"' ? 1 : 0;
    int i = start + quotes;
    int value = 0;
    for (int digit = row[i] - '0'; digit >= 0 && digit <= 9; digit = row[i] - '0') {
      value = value * 10 + digit;
      i++;
      if (value > LARGEST_LANE || i - start > LONGEST_LANE / 2) {
        return UNLIKE;
      }
    }
    boolean isDigits = i > start + quotes;
    if (!isDigits || (quotes > 0 && row[i++] != '"') || row[i] != separator) {
      return UNLIKE;
    }
    return learnLane(row, from, i + 1, value);
  }

  private int learnLane(byte[] row, int from, int end, int value) {
    length = end - from;
    System.arraycopy(row, from + headLength, bytes, headLength, length - headLength);
    lane = value;
    return end;
  }
}
