package dev.filmward.cli;

import dev.filmward.intake.FileRefused;
import dev.filmward.intake.StructuresFault;
import java.io.PrintWriter;
import java.nio.file.NoSuchFileException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParseResult;

/** Says on standard error what went wrong, and gives the exit status by its kind. */
final class Failures implements IExecutionExceptionHandler {
  private static final Logger LOG = LoggerFactory.getLogger(Failures.class);

  @Override
  public int handleExecutionException(Exception e, CommandLine line, ParseResult arguments) {
    PrintWriter err = line.getErr();
    if (e instanceof FileRefused || e instanceof StructuresFault) {
      err.println(e.getMessage());
      return ExitStatus.REFUSED;
    }
    if (e instanceof NoSuchFileException missing) {
      err.println("There is no file " + missing.getFile() + ". Check its name and folder.");
      return ExitStatus.REFUSED;
    }
    err.println("filmward: " + (e.getMessage() == null ? e.toString() : e.getMessage()));
    LOG.debug("The command failed", e);
    return ExitStatus.FAILED;
  }
}
