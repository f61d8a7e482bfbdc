package dev.filmward.cli;

import dev.filmward.intake.Rejection;

/** Says where a row is at fault, and in what. */
final class RejectionWords {
  private RejectionWords() {}

  static String of(Rejection rejection) {
    return printable(rejection.sentence());
  }

  /** Control characters from a file must not steer a terminal. */
  private static String printable(String text) {
    return text.replaceAll("\\p{Cntrl}", "\uFFFD");
  }
}
