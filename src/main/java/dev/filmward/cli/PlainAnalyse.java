package dev.filmward.cli;

import dev.filmward.cli.AnalyseCommand.Format;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Understands {@code analyse FILE...} with no more than {@code --structures}, {@code --format} and
 * {@code --zone}, each once and written out, so that what is typed or scheduled most starts in a
 * third of the time that the command line library takes to set up. Anything else, and anything
 * wrong, is for the library. One owner, one thread.
 */
final class PlainAnalyse {
  private final List<Path> files = new ArrayList<>();
  private @Nullable Path structures;
  private @Nullable Format format;
  private @Nullable ZoneId zone;

  private PlainAnalyse() {}

  /** The command that the arguments ask for; empty where they are for the library. */
  static Optional<AnalyseCommand> of(String... args) {
    if (args.length < 2 || !args[0].equals("analyse")) {
      return Optional.empty();
    }
    PlainAnalyse plain = new PlainAnalyse();
    try {
      return plain.takeAll(args) ? plain.command() : Optional.empty();
    } catch (InvalidPathException | DateTimeException e) {
      return Optional.empty();
    }
  }

  private boolean takeAll(String... args) {
    for (int i = 1; i < args.length; i++) {
      boolean isOption = args[i].startsWith("-") || args[i].startsWith("@");
      if (args[i].isEmpty() || (isOption && (++i == args.length || !take(args[i - 1], args[i])))) {
        return false;
      }
      if (!isOption) {
        files.add(Path.of(args[i]));
      }
    }
    return !files.isEmpty();
  }

  private boolean take(String name, String value) {
    if (value.isEmpty() || value.startsWith("-") || value.startsWith("\"")) {
      return false;
    }
    switch (name) {
      case "--structures" -> {
        boolean isFirst = structures == null;
        structures = Path.of(value);
        return isFirst;
      }
      case "--format" -> {
        boolean isFirst = format == null;
        format = format(value);
        return isFirst && format != null;
      }
      case "--zone" -> {
        boolean isFirst = zone == null;
        zone = ZoneId.of(value);
        return isFirst;
      }
      default -> {
        return false;
      }
    }
  }

  private static @Nullable Format format(String value) {
    for (Format candidate : Format.values()) {
      if (candidate.name().toLowerCase(Locale.ROOT).equals(value)) {
        return candidate;
      }
    }
    return null;
  }

  private Optional<AnalyseCommand> command() {
    Path beside = files.get(0).toAbsolutePath().resolveSibling("structures.yaml");
    Path known = structures == null ? beside : structures;
    if (structures == null && !Files.isRegularFile(beside)) {
      return Optional.empty();
    }
    ZoneOption option = new ZoneOption();
    option.zone = zone == null ? option.zone : zone;
    return Optional.of(
        AnalyseCommand.of(files, known, format == null ? Format.TEXT : format, option));
  }
}
