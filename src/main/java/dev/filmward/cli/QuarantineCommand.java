package dev.filmward.cli;

import dev.filmward.intake.FileRefused;
import dev.filmward.store.FileEntry;
import dev.filmward.store.HeldRow;
import dev.filmward.store.HeldRowTable.Head;
import dev.filmward.store.QuarantinedRow;
import dev.filmward.store.StoreLook;
import dev.filmward.store.Tables;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Prints the open rows of a file's quarantine as a file that a person can mend. */
@Command(
    name = "quarantine",
    description =
        "Prints the rows of a file that could not be used, under its header, for mending; the"
            + " reasons go to standard error. Also while in use.",
    mixinStandardHelpOptions = true)
final class QuarantineCommand implements Callable<Integer> {
  /** So many rows are printed, and taken back, at once. */
  static final int MOST_ROWS = 100_000;

  @Parameters(paramLabel = "FILE_ID", description = "Number of the file, as the summary says it.")
  private long fileId;

  @Mixin private DataOption data = new DataOption();

  @Override
  public Integer call() throws FileRefused {
    try (StoreLook look = data.look()) {
      print(look.read(this::quarantine));
    }
    return ExitStatus.DONE;
  }

  private record Quarantine(Optional<FileEntry> entry, Optional<Head> head, List<HeldRow> rows) {}

  private Quarantine quarantine(Tables tables) {
    return new Quarantine(
        tables.files().find(fileId),
        tables.heldRows().head(fileId),
        tables.heldRows().open(fileId, MOST_ROWS));
  }

  private void print(Quarantine quarantine) throws FileRefused {
    FileEntry entry =
        quarantine.entry().orElseThrow(() -> new FileRefused("There is no file " + fileId + "."));
    if (quarantine.rows().isEmpty()) {
      System.err.println("No row of file " + fileId + ", " + entry.name() + ", is open.");
      return;
    }
    Head head =
        quarantine
            .head()
            .orElseThrow(
                () ->
                    new FileRefused(
                        "What stands above the rows of file "
                            + fileId
                            + " was not kept; mend "
                            + entry.name()
                            + " itself and import it again."));
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    out.println(head.text());
    long printed = 0;
    for (HeldRow row : quarantine.rows()) {
      if (row.row().line() != printed) {
        out.println(row.row().raw());
      }
      printed = row.row().line();
      System.err.println(reason(row.row()));
    }
  }

  private static String reason(QuarantinedRow row) {
    String column = row.column().isEmpty() ? "" : ", " + row.column();
    return "line " + row.line() + column + ": " + row.reason();
  }
}
