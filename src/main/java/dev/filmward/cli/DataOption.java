package dev.filmward.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;

/** Where data are kept, for commands that touch them. */
final class DataOption {
  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "The data folder; filmward-data in the current folder unless given.")
  Path folder = Path.of("filmward-data");
}
