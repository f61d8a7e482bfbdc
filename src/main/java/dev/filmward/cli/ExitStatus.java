package dev.filmward.cli;

/** What a command says by its exit status; 2, for wrong use, is given by the command line. */
final class ExitStatus {
  static final int DONE = 0;
  static final int FAILED = 1;
  static final int REFUSED = 3;

  private ExitStatus() {}
}
