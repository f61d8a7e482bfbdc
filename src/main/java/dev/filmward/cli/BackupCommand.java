package dev.filmward.cli;

import dev.filmward.pipeline.StoredCheck;
import dev.filmward.store.Backup;
import dev.filmward.store.StoreLook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Copies the database into one file and checks the copy. */
@Command(
    name = "backup",
    description =
        "Copies the database into one file, also while it is in use, and checks the copy.",
    mixinStandardHelpOptions = true)
final class BackupCommand implements Callable<Integer> {
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmmss", Locale.ROOT);

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "The copy; filmward-backup-TIME.db in the current folder unless given.")
  private @Nullable Path out;

  @Mixin private DataOption data = new DataOption();
  @Mixin private ZoneOption zone = new ZoneOption();

  @Override
  public Integer call() throws IOException {
    String stamp = STAMP.format(LocalDateTime.now(zone.zone));
    Path target = out == null ? Path.of("filmward-backup-" + stamp + ".db") : out;
    Backup.write(data.folder, data.database.url(), target);
    System.out.println(target + ", " + Files.size(target) + " bytes");
    try (StoreLook look = StoreLook.ofFile(target)) {
      return VerifyCommand.tell(StoredCheck.of(look));
    }
  }
}
