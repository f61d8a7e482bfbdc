package dev.filmward.report.paper;

import java.util.OptionalDouble;

/**
 * What stands in one place of a table: the text that people read, and, where it is a number, the
 * number behind it in full for the workbook. Immutable.
 *
 * @param decimals shown
 * @param link id of the heading that it leads to; empty where it leads nowhere
 */
record Cell(String text, OptionalDouble number, int decimals, Tone tone, String link) {
  /** How a cell is set. */
  enum Tone {
    PLAIN,
    STRONG,
    SOFT,
    /** A person must act; set with a shape beside the word. */
    ACT
  }

  static Cell text(String text) {
    return new Cell(text, OptionalDouble.empty(), 0, Tone.PLAIN, "");
  }

  static Cell number(double value, int decimals, Texts texts) {
    return new Cell(
        texts.number(value, decimals), OptionalDouble.of(value), decimals, Tone.PLAIN, "");
  }

  /** A dash where there is nothing. */
  static Cell number(OptionalDouble value, int decimals, Texts texts) {
    return new Cell(texts.number(value, decimals), value, decimals, Tone.PLAIN, "");
  }

  Cell toned(Tone other) {
    return new Cell(text, number, decimals, other, link);
  }

  Cell leadingTo(String heading) {
    return new Cell(text, number, decimals, tone, heading);
  }
}
