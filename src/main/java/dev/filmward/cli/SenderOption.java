package dev.filmward.cli;

import dev.filmward.store.FileEntry.Sender;
import picocli.CommandLine.Option;

/** Who brings files in, and why. */
final class SenderOption {
  @Option(
      names = "--by",
      paramLabel = "NAME",
      description = "Who brings the files in; kept with each reading that they correct.")
  private String by = "";

  @Option(
      names = "--why",
      paramLabel = "TEXT",
      description = "Why; kept with each reading that they correct.")
  private String why = "";

  Sender sender() {
    return Sender.of(by, why);
  }
}
