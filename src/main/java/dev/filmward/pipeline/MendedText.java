package dev.filmward.pipeline;

/**
 * What is submitted in the place of a row in quarantine. Immutable.
 *
 * @param rowId of the row
 * @param text the whole row, without its line end
 */
public record MendedText(long rowId, String text) {
  private static final int LONGEST = 64 * 1024;

  public MendedText {
    text = text.strip();
    if (text.isEmpty()) {
      throw new IllegalArgumentException(
          "an empty row cannot be submitted; one without a value stays in quarantine");
    }
    if (text.length() > LONGEST) {
      throw new IllegalArgumentException("a mended row is longer than 65536 characters");
    }
  }
}
