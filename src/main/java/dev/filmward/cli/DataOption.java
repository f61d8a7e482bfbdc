package dev.filmward.cli;

import dev.filmward.store.Store;
import dev.filmward.store.StoreLook;
import java.nio.file.Path;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/** Where data are kept, for commands that touch them. */
final class DataOption {
  @Option(
      scope = ScopeType.INHERIT,
      names = "--data",
      paramLabel = "DIR",
      description = "The data folder; filmward-data in the current folder unless given.")
  Path folder = Path.of("filmward-data");

  @Mixin DatabaseOption database = new DatabaseOption();

  Store open() {
    return database.open(folder);
  }

  StoreLook look() {
    return StoreLook.at(folder, database.url());
  }
}
