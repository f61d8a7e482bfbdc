package dev.filmward.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;

/** Where the dashboard listens. */
final class ListenOptions {
  private static final int GREATEST_PORT = 65_535;

  @Spec(Target.MIXEE)
  private @Nullable CommandSpec command;

  int port = 8090;

  @Option(
      names = "--host",
      paramLabel = "HOST",
      description =
          "The address to listen on; 127.0.0.1 unless given, which only this machine reaches.")
  String host = "127.0.0.1";

  @Option(
      names = "--port",
      paramLabel = "PORT",
      description = "The port of the dashboard, 0 for any free one; 8090 unless given.")
  void setPort(int given) {
    if (!(given >= 0 && given <= GREATEST_PORT) && command != null) {
      throw new ParameterException(
          command.commandLine(),
          "Invalid value for option '--port': " + given + " is not from 0 to " + GREATEST_PORT);
    }
    port = given;
  }
}
