package dev.filmward.intake;

/**
 * Something in a file that could not be used, kept so that a person can see it and submit it again.
 * Immutable.
 *
 * @param file name of the file
 * @param line number of the row's first line; the header's is 1
 * @param column heading of the column at fault; empty where the whole row is
 * @param value what stands there; cut if long
 * @param reason in words: what is wrong and what should be there instead
 * @param raw the row as it stands in the file, without its line end; cut after 64 KiB, which it
 *     then says
 * @param readings how many readings it costs, at least 1
 */
public record Rejection(
    String file, long line, String column, String value, String reason, String raw, int readings) {

  public Rejection {
    if (!(line >= 1)) {
      throw new IllegalArgumentException("lines count from 1, not " + line);
    }
    if (!(readings >= 1)) {
      throw new IllegalArgumentException("a rejection costs a reading, not " + readings);
    }
  }

  /** The same, that many lines further down. */
  public Rejection lower(long lines) {
    return new Rejection(file, line + lines, column, value, reason, raw, readings);
  }

  /** Where, what, and what instead, on one line. */
  public String sentence() {
    String place = column.isEmpty() ? "" : " (" + column + ")";
    return file + ", line " + line + place + ": " + reason;
  }
}
