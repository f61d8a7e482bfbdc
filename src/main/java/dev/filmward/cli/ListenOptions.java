package dev.filmward.cli;

import picocli.CommandLine.Option;

/** Where the dashboard listens. */
final class ListenOptions {
  @Option(
      names = "--port",
      paramLabel = "PORT",
      description = "The port of the dashboard, 0 for any free one; 8090 unless given.")
  int port = 8090;

  @Option(
      names = "--host",
      paramLabel = "HOST",
      description =
          "The address to listen on; 127.0.0.1 unless given, which only this machine reaches.")
  String host = "127.0.0.1";
}
