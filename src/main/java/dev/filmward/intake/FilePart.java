package dev.filmward.intake;

/**
 * The rows of a file that start from one place on up to before another, in bytes from the start of
 * the file. Immutable.
 *
 * @param opensAt where the stream begins: at the start, or one byte before it where it is not known
 *     whether a line starts there
 * @param lineByLineUntil up to here a quoted field ends with its line at the latest
 */
public record FilePart(long opensAt, long start, long stop, long lineByLineUntil) {

  public FilePart {
    if (!(opensAt >= 0 && opensAt <= start && start <= stop)) {
      throw new IllegalArgumentException(
          "no part of a file: " + opensAt + ", " + start + "-" + stop);
    }
  }

  /** The part with the first row that starts at or after a place where no line need start. */
  public static FilePart somewhere(long start, long stop) {
    return new FilePart(start - 1, start, stop, 0);
  }

  /** The part from the start of a row on. */
  public static FilePart fromRow(long start, long stop) {
    return new FilePart(start, start, stop, 0);
  }

  /** The part that follows this one, whose next row starts where {@code next} says. */
  FilePart after(long next, long lineByLine) {
    return new FilePart(next, next, Long.MAX_VALUE, lineByLine > next ? lineByLine : 0);
  }

  /** The same part, ending elsewhere. */
  public FilePart until(long end) {
    return new FilePart(opensAt, start, Math.max(start, end), lineByLineUntil);
  }

  /** Whether what was read of another part from there on is what this one holds. */
  boolean startsPlainlyAt(long place) {
    return start == place && lineByLineUntil == 0;
  }
}
