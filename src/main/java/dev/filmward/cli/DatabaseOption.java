package dev.filmward.cli;

import dev.filmward.store.Store;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/** In which database, for commands that touch stored data. */
final class DatabaseOption {
  @Option(
      scope = ScopeType.INHERIT,
      names = "--db",
      paramLabel = "URL",
      description =
          "A PostgreSQL database in place of the data folder's own:"
              + " jdbc:postgresql://HOST/DATABASE?user=NAME.")
  private @Nullable String url;

  boolean isGiven() {
    return url != null;
  }

  Optional<String> url() {
    return Optional.ofNullable(url);
  }

  Store open(Path folder) {
    return Store.open(folder, url());
  }
}
