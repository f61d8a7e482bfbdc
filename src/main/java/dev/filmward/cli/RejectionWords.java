package dev.filmward.cli;

import dev.filmward.intake.Rejection;

/** Says where a row is at fault, and in what. */
final class RejectionWords {
  private RejectionWords() {}

  static String of(Rejection rejection) {
    String where =
        rejection.column().isEmpty()
            ? "line " + rejection.line()
            : "line " + rejection.line() + " (" + rejection.column() + ")";
    return printable(rejection.file() + ", " + where + ": " + rejection.reason());
  }

  /** Control characters from a file must not steer a terminal. */
  private static String printable(String text) {
    return text.replaceAll("\\p{Cntrl}", "\uFFFD");
  }
}
