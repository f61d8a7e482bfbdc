package dev.filmward.tables;

/**
 * A text from a file as a cell that no spreadsheet takes for a formula: what begins with a sign
 * that could start one is led by an apostrophe. Numbers are not texts and stay as they are.
 *
 * <p>Source: OWASP, CSV Injection.
 */
final class SpreadsheetText {
  private static final String STARTS = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

  private SpreadsheetText() {}

  static String of(String text) {
    return !text.isEmpty() && STARTS.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
  }
}
