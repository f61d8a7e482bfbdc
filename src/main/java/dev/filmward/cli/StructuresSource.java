package dev.filmward.cli;

import dev.filmward.film.Structures;
import dev.filmward.intake.StructuresFault;
import dev.filmward.intake.StructuresFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Finds the structures that files of readings are about. */
final class StructuresSource {
  private StructuresSource() {}

  /** The file that was named, or else {@code structures.yaml} beside the readings. */
  static Optional<Path> file(@Nullable Path named, Path readings) {
    if (named != null) {
      return Optional.of(named);
    }
    Path beside = readings.resolveSibling("structures.yaml");
    return Files.isRegularFile(beside) ? Optional.of(beside) : Optional.empty();
  }

  static Structures read(Path file) throws IOException, StructuresFault {
    try (InputStream in = Files.newInputStream(file)) {
      return StructuresFile.read(in, file.toString());
    }
  }
}
