package dev.filmward.cli;

import dev.filmward.intake.FileRefused;
import dev.filmward.intake.MappingFault;
import dev.filmward.intake.StructuresFault;
import java.io.PrintWriter;
import java.nio.file.NoSuchFileException;
import org.slf4j.LoggerFactory;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParseResult;

/** Says on standard error what went wrong, and gives the exit status by its kind. */
final class Failures implements IExecutionExceptionHandler {
  @Override
  public int handleExecutionException(Exception e, CommandLine line, ParseResult arguments) {
    return status(e, line.getErr());
  }

  /** Says what went wrong, and gives the exit status. */
  static int status(Exception e, PrintWriter err) {
    if (e instanceof FileRefused || e instanceof StructuresFault || e instanceof MappingFault) {
      err.println(e.getMessage());
      return ExitStatus.REFUSED;
    }
    if (e instanceof NoSuchFileException missing) {
      err.println("There is no file " + missing.getFile() + ". Check its name and folder.");
      return ExitStatus.REFUSED;
    }
    err.println("filmward: " + (e.getMessage() == null ? e.toString() : e.getMessage()));
    // asked for only now, since a log costs more to set up than most commands take
    LoggerFactory.getLogger(Failures.class).debug("The command failed", e);
    return ExitStatus.FAILED;
  }
}
