package dev.filmward.cli;

import dev.filmward.pipeline.StoredCheck;
import dev.filmward.store.Backup;
import dev.filmward.store.StoreLook;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Puts a backup into an empty data folder and checks it. */
@Command(
    name = "restore",
    description = "Puts a backup into a data folder that has no database yet, and checks it.",
    mixinStandardHelpOptions = true)
final class RestoreCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "What backup wrote.")
  private Path file = Path.of("");

  @Mixin private DataOption data = new DataOption();

  @Override
  public Integer call() throws IOException {
    Backup.restore(file, data.folder, data.database.url());
    System.out.println("restored");
    try (StoreLook look = data.look()) {
      return VerifyCommand.tell(StoredCheck.of(look));
    }
  }
}
