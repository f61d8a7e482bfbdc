package dev.filmward.intake;

/**
 * Tells whether a row starts as a known one but for the figures of its time and the name of its
 * sample, of the same lengths. One owner, one thread.
 */
final class NextSample {
  private final byte separator;
  private final int takenAtField;
  private final int sampleField;
  private int length;

  /** Where the time and the sample begin and end, whichever stands first. */
  private int firstStart;

  private int firstEnd;
  private int secondStart;
  private int secondEnd;
  private int sampleStart;
  private int sampleEnd;

  NextSample(Dialect dialect) {
    this.separator = (byte) dialect.separator().sign();
    this.takenAtField = dialect.indexOf(Field.TAKEN_AT);
    this.sampleField = dialect.indexOf(Field.SAMPLE);
  }

  /** Learns a row without quotation marks, up to its lane. */
  void learn(Row row, int headLength) {
    boolean timeIsFirst = takenAtField < sampleField;
    int first = timeIsFirst ? takenAtField : sampleField;
    int second = timeIsFirst ? sampleField : takenAtField;
    firstStart = start(row, first);
    firstEnd = row.stop[first];
    secondStart = start(row, second);
    secondEnd = row.stop[second];
    sampleStart = start(row, sampleField);
    sampleEnd = row.stop[sampleField];
    length = isTight(row, takenAtField) && isTight(row, sampleField) ? headLength : 0;
  }

  void forget() {
    length = 0;
  }

  /** Whether a row starts like the known one; its time must still be read. */
  boolean startsLike(byte[] known, byte[] row, int from, int limit) {
    if (length == 0 || from + length > limit) {
      return false;
    }
    for (int i = 0; i < length; i++) {
      if (known[i] != row[from + i] && !mayDiffer(i)) {
        return false;
      }
    }
    return isPlainName(row, from + sampleStart, from + sampleEnd);
  }

  private boolean mayDiffer(int at) {
    return (at >= firstStart && at < firstEnd) || (at >= secondStart && at < secondEnd);
  }

  private boolean isPlainName(byte[] row, int start, int end) {
    for (int i = start; i < end; i++) {
      byte sign = row[i];
      if (sign <= ' ' || sign == separator || sign == '"' || sign == 0x7F) {
        return false;
      }
    }
    return true;
  }

  int timeStart() {
    return sampleStart == firstStart ? secondStart : firstStart;
  }

  int timeEnd() {
    return sampleStart == firstStart ? secondEnd : firstEnd;
  }

  int sampleStart() {
    return sampleStart;
  }

  int sampleEnd() {
    return sampleEnd;
  }

  private static int start(Row row, int field) {
    return field == 0 ? 0 : row.stop[field - 1] + 1;
  }

  /** Whether no spaces were left out around a field. */
  private static boolean isTight(Row row, int field) {
    return row.start[field] == start(row, field) && row.end[field] == row.stop[field];
  }
}
