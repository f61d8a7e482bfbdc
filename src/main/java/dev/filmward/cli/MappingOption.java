package dev.filmward.cli;

import dev.filmward.intake.Mapping;
import dev.filmward.intake.MappingFault;
import dev.filmward.intake.MappingFile;
import dev.filmward.intake.Mappings;
import dev.filmward.pipeline.MappingBook;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** Mappings for files with headings of their own, for commands that read files. */
final class MappingOption {
  @Option(
      names = "--mapping",
      paramLabel = "FILE",
      description =
          "A mapping (YAML) for files with headings of their own; may be given several times."
              + " preview proposes one.")
  private List<Path> files = new ArrayList<>();

  Mappings read() throws IOException, MappingFault {
    List<Mapping> mappings = new ArrayList<>();
    for (Path file : files) {
      try (InputStream in = Files.newInputStream(file)) {
        mappings.add(MappingFile.read(in, file.toString()));
      }
    }
    return new Mappings(mappings);
  }

  /** The mappings of a data folder, or those named instead. */
  MappingBook book(Path dataFolder) throws IOException, MappingFault {
    return MappingBook.in(dataFolder.resolve("mappings")).only(read());
  }
}
