package dev.filmward.cli;

import java.time.ZoneId;
import picocli.CommandLine.Option;

/** The plant's time zone, for commands that read or show times. */
final class ZoneOption {
  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      description =
          "The plant's time zone, for times without an offset and for what is shown;"
              + " this machine's unless given. For example Europe/Berlin.")
  ZoneId zone = ZoneId.systemDefault();
}
