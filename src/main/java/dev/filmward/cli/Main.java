package dev.filmward.cli;

import java.util.Map;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The entry: {@code java -jar filmward.jar COMMAND}. */
@Command(
    name = "filmward",
    description = "Statistical process control for the layers of coextruded film.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    subcommands = {
      DemoCommand.class,
      ServeCommand.class,
      PreviewCommand.class,
      AnalyseCommand.class,
      ImportCommand.class,
      BackupCommand.class,
      RestoreCommand.class,
      VerifyCommand.class
    })
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    int status = run(args);
    if (status != ExitStatus.DONE) {
      System.exit(status);
    }
  }

  /** Every command by its name. */
  public static Map<String, CommandLine> commands() {
    return new CommandLine(new Main()).getSubcommands();
  }

  /** Runs a command and gives its exit status; commands that serve return when they are stopped. */
  static int run(String... args) {
    CommandLine line = new CommandLine(new Main());
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setExecutionExceptionHandler(new Failures());
    return line.execute(args);
  }
}
