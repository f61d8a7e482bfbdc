package dev.filmward.telling;

/**
 * Texts that came from files or people, made fit for one line of a message: line ends and other
 * control characters, and those that turn the direction of writing, become blanks.
 */
final class Plain {
  private Plain() {}

  static String line(String text) {
    StringBuilder line = new StringBuilder(text.length());
    text.codePoints().forEach(point -> line.appendCodePoint(isUnfit(point) ? ' ' : point));
    return line.toString().strip();
  }

  /** The same, with an ellipsis where it would be longer. */
  static String line(String text, int longest) {
    String line = line(text);
    int end = line.offsetByCodePoints(0, Math.min(line.codePointCount(0, line.length()), longest));
    return end == line.length() ? line : line.substring(0, end) + "\u2026";
  }

  private static boolean isUnfit(int point) {
    return switch (Character.getType(point)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SURROGATE,
          Character.UNASSIGNED ->
          true;
      default -> false;
    };
  }
}
