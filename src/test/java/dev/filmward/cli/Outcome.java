package dev.filmward.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/**
 * What a command did.
 *
 * @param out what it wrote to standard output
 * @param err what it wrote to standard error
 */
record Outcome(int status, String out, String err) {

  /** Runs a command within this process. Not for tests that run side by side. */
  static Outcome of(String... arguments) {
    PrintStream out = System.out;
    PrintStream err = System.err;
    ByteArrayOutputStream caughtOut = new ByteArrayOutputStream();
    ByteArrayOutputStream caughtErr = new ByteArrayOutputStream();
    try {
      System.setOut(new PrintStream(caughtOut, true, StandardCharsets.UTF_8));
      System.setErr(new PrintStream(caughtErr, true, StandardCharsets.UTF_8));
      int status = Main.run(arguments);
      return new Outcome(
          status,
          caughtOut.toString(StandardCharsets.UTF_8),
          caughtErr.toString(StandardCharsets.UTF_8));
    } finally {
      System.setOut(out);
      System.setErr(err);
    }
  }
}
