package dev.filmward.cli;

import dev.filmward.intake.FileRefused;
import dev.filmward.intake.MappingFault;
import dev.filmward.intake.StructuresFault;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
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
      GaugeStudyCommand.class,
      QuarantineCommand.class,
      MendCommand.class,
      BackupCommand.class,
      RestoreCommand.class,
      ThinCommand.class,
      UserCommand.class,
      VerifyCommand.class,
      AuditCommand.class,
      ReportCommand.class
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
    Optional<AnalyseCommand> plain = PlainAnalyse.of(args);
    return plain.isPresent() ? run(plain.get()) : runAny(args);
  }

  private static int run(AnalyseCommand command) {
    Rehearsal.start();
    try {
      return command.call();
    } catch (IOException | FileRefused | MappingFault | StructuresFault | RuntimeException e) {
      return Failures.status(e, AnalyseCommand.standardError());
    }
  }

  private static int runAny(String... args) {
    CommandLine line = new CommandLine(new Main());
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setExecutionExceptionHandler(new Failures());
    return line.execute(args);
  }
}
